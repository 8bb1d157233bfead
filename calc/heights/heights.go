package heights

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// Heights are what the floor asks of the piers. Before the ground is read Floor
// and Clash are nil and so are the Level and Hole of each pier. Heights that
// cannot be met leave Floor and the holes nil and say why in Clash.
type Heights struct {
	Piers   []PierHeights // in the order of the frame
	Floor   *ChosenFloor
	Clash   *Clash
	Drops   []terrain.Drop // beside each side of the floor, nil without one
	Humps   []terrain.Hump // ground too near the frame, nil without a floor
	Seats   *Seats         // nil until a seat is read
	Lines   []LinePosts    // post tops by beam line, nil without a floor
	Posts   []Post         // in the order of the piers, nil without a floor or all seats under a given one
	AsBuilt *FinishedFloor // nil until the finished floor is read

	terms  terms
	places []place // the piers as they are to be built
	index  map[string]int
	frame  *frame.Frame
	ground *terrain.Ground
}

// PierHeights is one pier with what is known of it.
type PierHeights struct {
	Name  string
	X, Y  measure.Length
	Level *terrain.Level
	Hole  *Hole // as it is to be built, with all that was measured
	// Expected is the plan that the crew works to: with the holes as they were dug
	// and the beams as delivered, whatever the seat was then read at. nil without
	// a floor.
	Expected *Hole
	// Planned is the hole as it was before anything was measured on it; nil
	// when no floor was possible then. Only the depth that was wanted is told of it.
	Planned *Hole
}

// Pier returns the pier with the name and whether there is one.
func (h *Heights) Pier(name string) (PierHeights, bool) {
	i, ok := h.index[name]
	if !ok {
		return PierHeights{}, false
	}
	return h.Piers[i], true
}

// Work turns the ground of a job into heights for the piers of its frame.
//
// Ground that was not read is no fault: the job is planned. Seats without it
// are, unless every seat is read and the height of the floor is given: the posts
// are then known, and Posts, Lines and Seats hold them, without a Floor or a
// Hole. It reports a fault as well for readings on seats or on the finished
// floor that do not hang on the bench mark.
func Work(j *job.Job, f *frame.Frame, ground *terrain.Ground) (*Heights, fault.List) {
	h := &Heights{terms: termsOf(j, f), index: map[string]int{}, frame: f, ground: ground}
	for i, p := range f.Piers {
		h.index[p.Name] = i
		pier := PierHeights{Name: p.Name, X: p.X, Y: p.Y}
		if ground.Levels != nil {
			pier.Level = &ground.Levels[i]
		}
		h.Piers = append(h.Piers, pier)
	}
	if ground.Surface == nil {
		return h, h.withoutSurvey(j, f)
	}
	seats, faults := readSeats(j, f)
	h.Seats = seats
	faults.Join(h.heights(j, f))
	return h, faults
}

// FarOut returns the piers more than half a bay outside the readings whose seats
// are not set: their ground is a guess, and nothing is to be dug or cut by it.
func (h *Heights) FarOut() []string {
	var names []string
	for i, p := range h.Piers {
		if p.Level != nil && p.Level.Beyond && (h.places == nil || h.places[i].seat == nil) {
			names = append(names, p.Name)
		}
	}
	return names
}

// heights chooses the floor and works out the holes and the posts; then how level
// the floor came out.
func (h *Heights) heights(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	h.plan(j)
	places := h.used(j, f)
	h.places = places
	floor, clash := h.terms.floor(places, h.ground.Inside())
	if locked, bad := h.locked(j); bad {
		faults.Add(locked)
		return faults
	}
	if clash != nil {
		h.Clash = clash
		return faults
	}
	h.Floor = floor
	for i, p := range places {
		expected := h.terms.holeAsDelivered(p, floor.Height)
		hole := expected
		h.Piers[i].Expected, h.Piers[i].Hole = &expected, &hole
	}
	h.Lines = h.lines(j, f, floor.Height)
	if faults = h.nothingLeft(j); !faults.Empty() {
		return faults
	}
	h.Posts = h.posts(j)
	h.setSeats()
	h.Drops = h.ground.Drops(f, floor.Height, j.Units)
	h.Humps = h.ground.Humps(f, floor.Height, h.terms.Clear)
	h.AsBuilt, faults = readFinished(j, f, floor.Height)
	return faults
}

// plan works out the holes as they stood before anything was measured on them.
func (h *Heights) plan(j *job.Job) {
	places := h.planned(j)
	floor, clash := h.terms.floor(places, h.ground.Inside())
	if clash != nil {
		return
	}
	for i, p := range places {
		hole := h.terms.hole(p, floor.Height)
		h.Piers[i].Planned = &hole
	}
}
