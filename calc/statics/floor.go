package statics

import (
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Floor is the floor under its loads as it crosses the beam lines: what a metre
// of it, or one joist, puts on each of them.
type Floor struct {
	Crossing
	Frame   *frame.Frame
	Loads   *loads.Acting
	Between bool // joists hang between the beams
}

// Cross prepares the floor's run across the lines. It fails with fewer than two.
func Cross(f *frame.Frame, a *loads.Acting, between bool, store *Gauges) (*Floor, error) {
	var marks []float64
	for _, s := range a.Strips {
		if s.AlongX() && !slices.Contains(marks, s.Y1) {
			marks = append(marks, s.Y1)
		}
	}
	slices.Sort(marks)
	g, err := store.Of(floorRun(f, between), marks, bordersAcross(a)...)
	if err != nil {
		return nil, err
	}
	return &Floor{Crossing: Crossing{Gauge: g}, Frame: f, Loads: a, Between: between}, nil
}

// bordersAcross returns the y where loads at a place and walls along joists begin and end.
func bordersAcross(a *loads.Acting) []float64 {
	var borders []float64
	for _, p := range a.Patches {
		borders = append(borders, p.Y.Metres(), (p.Y + p.Width).Metres())
	}
	for _, s := range a.Strips {
		if !s.AlongX() {
			borders = append(borders, s.Y1, s.Y2)
		}
	}
	return borders
}

// Shares returns a function that tells what each line gets of a load along y,
// whatever else stands on the floor; nil of a floor that stands on one line.
func Shares(f *frame.Frame, between bool) func(y measure.Length) []float64 {
	return func(y measure.Length) []float64 {
		g, err := NewGauges().Of(floorRun(f, between), nil)
		if err != nil {
			return nil
		}
		return (&Crossing{Gauge: g}).Share(y.Metres())
	}
}

func floorRun(f *frame.Frame, between bool) Run {
	r := Run{End: f.Width.Metres()}
	for _, line := range f.Lines {
		r.Supports = append(r.Supports, line.Y.Metres())
		r.Hinges = append(r.Hinges, between)
	}
	if between {
		r.Start, r.End = r.Supports[0], r.Supports[len(r.Supports)-1]
	}
	return r
}

// LiveShare returns the most, the least and the whole that each line gets of one
// newton per square metre of live load, by metre of line.
func (x *Floor) LiveShare() (most, least, whole []float64) {
	g := x.Gauge
	n := len(g.Run.Supports)
	most, least, whole = make([]float64, n), make([]float64, n), make([]float64, n)
	for _, u := range g.Unit {
		for i, r := range u.Reactions {
			most[i] += max(0, r)
			least[i] += min(0, r)
			whole[i] += r
		}
	}
	near, far := x.Edges(x.Frame.Width.Metres())
	most[0], whole[0] = most[0]+near, whole[0]+near
	most[n-1], whole[n-1] = most[n-1]+far, whole[n-1]+far
	return most, least, whole
}

// place is where joists stand along x, with the strip of floor that is theirs: those
// of several bays at one place count once.
type place struct{ at, from, to float64 }

func (p place) wide() float64 { return p.to - p.from }

// joistPlaces returns the places of the joists, rising.
func (x *Floor) joistPlaces() []place {
	var centres []float64
	for _, j := range x.Frame.Joists {
		if at := j.Centre.Metres(); !slices.Contains(centres, at) {
			centres = append(centres, at)
		}
	}
	slices.Sort(centres)
	places := make([]place, len(centres))
	for i, at := range centres {
		places[i] = place{at, 0, x.Frame.Length.Metres()}
		if i > 0 {
			places[i].from = (centres[i-1] + at) / 2
		}
		if i < len(centres)-1 {
			places[i].to = (at + centres[i+1]) / 2
		}
	}
	return places
}

// OnLine is what one beam line gets.
type OnLine struct {
	Fixed                        [loads.CaseCount][]Push
	LiveMost, LiveLeast, LiveAll float64 // N/m
	Patches                      []Push
	ByRims                       []Push // floor load that the rims bring more than joists on all lines would, at its greatest
	Moved                        []Push // the same of the whole floor load, for the sums
}

// LineLoads carries everything on the floor through the joists to the lines.
func (x *Floor) LineLoads() ([]OnLine, error) {
	f, a := x.Frame, x.Loads
	n, length := len(f.Lines), f.Length.Metres()
	lines := make([]OnLine, n)
	most, least, whole := x.LiveShare()
	p := a.Area[loads.LiveCase]
	for i := range lines {
		lines[i].LiveMost, lines[i].LiveLeast, lines[i].LiveAll = p*most[i], p*least[i], p*whole[i]
		for kind, area := range a.Area {
			if area != 0 && loads.Case(kind) != loads.LiveCase {
				lines[i].put(loads.Case(kind), Push{From: 0, To: length, Size: area * whole[i]})
			}
		}
		line := f.Lines[i]
		lines[i].put(loads.DeadCase, Push{From: line.Start.Metres(), To: line.End.Metres(), Size: a.Beam})
	}
	zones, err := x.zones()
	if err != nil {
		return nil, err
	}
	for _, s := range a.Strips {
		for _, z := range zones {
			z.carryStrip(lines, s)
		}
	}
	for _, patch := range a.Patches {
		for _, z := range zones {
			z.carryPatch(lines, patch)
		}
	}
	for _, z := range zones[1:] {
		z.moveToRims(lines, a.Area, most, whole)
	}
	return lines, nil
}

func (l *OnLine) put(kind loads.Case, p Push) {
	if p.Size != 0 {
		l.Fixed[kind] = append(l.Fixed[kind], p)
	}
}

// BeamRun returns the run of a line's beam, without its joints.
func BeamRun(f *frame.Frame, line int) Run {
	l := f.Lines[line]
	r := Run{Start: l.Start.Metres(), End: l.End.Metres()}
	for _, p := range f.Piers {
		if p.Line == line {
			r.Supports = append(r.Supports, p.X.Metres())
		}
	}
	r.Hinges = make([]bool, len(r.Supports))
	return r
}
