package ground

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Progress says how far the job has come, by what its file holds.
type Progress string

// The four stages. Their words are printed on every sheet.
const (
	Planned   Progress = "planned"
	Surveyed  Progress = "surveyed"
	SeatsRead Progress = "seats read"
	AsBuilt   Progress = "as built"
)

// Ground is what the readings say. Before there are any, Book, Surface, Floor,
// Clash, Stone and Spoil are nil and so are the Level and Hole of each pier.
// Heights that cannot be met leave Floor, Stone, Spoil and the holes nil and say
// why in Clash.
type Ground struct {
	Progress Progress
	Book     *levelling.Book
	Surface  *Surface
	Spots    []Spot // the positioned spots that were read, in the order read
	Piers    []Pier // in the order of the frame
	Floor    *Floor
	Clash    *Clash
	Stone    *Stone
	Spoil    *Spoil
	Seats    *Seats         // nil until a seat is read
	Lines    []LinePosts    // post tops by beam line, nil without a floor
	Posts    []Post         // in the order of the piers, nil without a floor or all seats under a given one
	AsBuilt  *FinishedFloor // nil until the finished floor is read

	terms  terms
	places []place // the piers as they are to be built
	index  map[string]int
	frame  *frame.Frame
}

// Pier is one pier with what is known of it.
type Pier struct {
	Name  string
	X, Y  measure.Length
	Level *Level
	Hole  *Hole // as it is to be built, with all that was measured
	// Planned is the hole as it was before anything was measured on it; nil
	// when no floor was possible then.
	Planned *Hole
}

// Level is the height of the ground at a pier.
type Level struct {
	Height measure.Length
	Read   bool           // else it is estimated from the surface
	Error  measure.Length // standard error of an estimate, 0 when read
	Rough  bool           // too few readings to say how good the estimate is
	Beyond bool           // more than half a bay outside the readings: read it before anything is cut
	Sights int
	Spread measure.Length // of the sights, 0 when there is one
}

// Spot is a positioned spot with its height.
type Spot struct {
	Name   string
	X, Y   measure.Length
	Height measure.Length
	Inside bool // within the frame's outside faces
}

// Pier returns the pier with the name and whether there is one.
func (g *Ground) Pier(name string) (Pier, bool) {
	i, ok := g.index[name]
	if !ok {
		return Pier{}, false
	}
	return g.Piers[i], true
}

// Work turns the readings of a job into heights for the piers of its frame.
//
// It reports a fault for a reading, probe or exception at a place that is
// neither a pier nor a spot, for a set-up that starts from a place without a
// height, for a book that misses the bench mark by more than its limit, and for
// fewer than three readings that do not lie in a line. A job without readings
// is no fault: it is planned. Seats without them are, unless every seat is read
// and the height of the floor is given: the posts are then known, and Posts,
// Lines and Seats hold them, without a Floor or a Hole.
func Work(j *job.Job, f *frame.Frame) (*Ground, fault.List) {
	var faults fault.List
	g := &Ground{Progress: progress(j), terms: termsOf(j, f), index: map[string]int{}, frame: f}
	for i, p := range f.Piers {
		g.index[p.Name] = i
		g.Piers = append(g.Piers, Pier{Name: p.Name, X: p.X, Y: p.Y})
	}
	if !anySights(j) {
		faults.Join(g.withoutSurvey(j, f))
		return g, faults
	}
	if !faults.Empty() {
		return g, faults
	}
	book, bad := levelling.Reduce(j)
	faults.Join(bad)
	if !bad.Empty() {
		return g, faults
	}
	g.Book = book
	g.Spots = spots(j, f, book)
	faults.Join(g.level(j, f))
	if !faults.Empty() {
		return g, faults
	}
	seats, bad := readSeats(j, f)
	g.Seats = seats
	faults.Join(bad)
	faults.Join(g.heights(j, f))
	return g, faults
}

// heights chooses the floor and works out the holes, the stone, the spoil and
// the posts; then how level the floor came out.
func (g *Ground) heights(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	g.plan(j)
	places := g.used(j, f)
	g.places = places
	floor, clash := g.terms.floor(places, g.insideSpots())
	if locked, bad := g.locked(j); bad {
		faults.Add(locked)
		return faults
	}
	if clash != nil {
		g.Clash = clash
		return faults
	}
	g.Floor = floor
	for i, p := range places {
		hole := g.terms.bounds(p).hole(floor.Height-p.buildUp, g.terms.Shortest, g.terms.Longest)
		g.Piers[i].Hole = &hole
	}
	g.setSeats(j, f)
	g.Lines = g.lines(j, f, floor.Height)
	g.Posts = g.posts(j)
	g.Stone = stoneOf(j, g.Piers)
	g.Spoil = spoilOf(j, g.Piers)
	g.Spoil.spread(g.gridUnder(f))
	g.AsBuilt, faults = readFinished(j, f, floor.Height)
	return faults
}

// plan works out the holes as they stood before anything was measured on them.
func (g *Ground) plan(j *job.Job) {
	places := g.planned(j)
	floor, clash := g.terms.floor(places, g.insideSpots())
	if clash != nil {
		return
	}
	for i, p := range places {
		hole := g.terms.bounds(p).hole(floor.PostTops, g.terms.Shortest, g.terms.Longest)
		g.Piers[i].Planned = &hole
	}
}

// progress reads the stage off what the job holds.
func progress(j *job.Job) Progress {
	switch {
	case len(j.Measured.Finished) > 0:
		return AsBuilt
	case anySeat(j):
		return SeatsRead
	case anySights(j):
		return Surveyed
	}
	return Planned
}

// anySeat says whether a seat was read, and not only the bench mark.
func anySeat(j *job.Job) bool {
	for name := range j.Measured.Seats {
		if name != levelling.BenchMark && name != levelling.Closing {
			return true
		}
	}
	return false
}

func anySights(j *job.Job) bool {
	for _, sights := range j.Ground.SetUps {
		if len(sights) > 0 {
			return true
		}
	}
	return false
}

// spots returns the positioned spots that were read, in the order read.
func spots(j *job.Job, f *frame.Frame, book *levelling.Book) []Spot {
	var list []Spot
	for _, p := range book.Points {
		spot, ok := j.Ground.Spots[p.Name]
		if !ok || !spot.InPlan() {
			continue
		}
		inside := spot.X >= 0 && spot.X <= f.Length && spot.Y >= 0 && spot.Y <= f.Width
		list = append(list, Spot{Name: p.Name, X: spot.X, Y: spot.Y, Height: p.Height, Inside: inside})
	}
	return list
}
