package statics

import (
	"slices"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// HungEnd is one end of the floor that the beams, set back, do not reach: its
// joists hang on the rims, and the rims stand out past the beams.
type HungEnd struct {
	Joists []Bar // each from rim to rim, nothing under it between, for both ways of sharing
	Rims   []Bar // the rim that takes most by each way, over what it stands on and past its end
	Back   float64
}

// HungEnds returns the ends of a floor on beams whose joists the beams do not
// reach. A joist carries its strip of floor, the walls on it and the loads at a
// place that lie on its strip; half and half, or by the lever, goes to the rims.
// The rims carry these reactions as cantilevers, and their own weight.
func (x *Floor) HungEnds(store *Gauges) ([]HungEnd, error) {
	f := x.Frame
	if x.Between || len(f.Rims) == 0 {
		return nil, nil
	}
	start, end := f.Lines[0].Start.Metres(), f.Lines[0].End.Metres()
	half := f.Sections.Joist.Width.Metres() / 2
	all := x.joistPlaces()
	across, err := x.rimToRim(store)
	if err != nil {
		return nil, err
	}
	var ends []HungEnd
	for _, side := range []struct {
		off  func(centre float64) bool
		back float64
		past func(centre float64) float64 // how far beyond the beam's end
	}{
		{func(c float64) bool { return c+half <= start }, start, func(c float64) float64 { return start - c }},
		{func(c float64) bool { return c-half >= end }, f.Length.Metres() - end, func(c float64) float64 { return c - end }},
	} {
		h := HungEnd{Back: side.back}
		var places []float64
		for _, joist := range all {
			if side.off(joist.at) {
				places = append(places, side.past(joist.at))
			}
		}
		if len(places) == 0 {
			continue
		}
		for _, by := range []sharing{byStrip, byLever} {
			var joists []Bar
			for i, joist := range all {
				if side.off(joist.at) {
					joists = append(joists, across.loadedJoist(joist, x.standing(all, i, by), "the end joist, on the rims alone"))
				}
			}
			rim, err := x.rimPast(joists, places, side.back, store)
			if err != nil {
				return nil, err
			}
			h.Joists, h.Rims = append(h.Joists, joists...), append(h.Rims, rim)
		}
		ends = append(ends, h)
	}
	return ends, nil
}

// rimToRim returns the floor with a run that has the rims alone under it.
func (x *Floor) rimToRim(store *Gauges) (*Floor, error) {
	wide, thick := x.Frame.Width.Metres(), x.Frame.Sections.Rim.Width.Metres()
	g, err := store.Of(Run{Start: 0, End: wide, Supports: []float64{thick / 2, wide - thick/2}, Hinges: []bool{false, false}}, nil, bordersAcross(x.Loads)...)
	if err != nil {
		return nil, err
	}
	return &Floor{Crossing: Crossing{Gauge: g}, Frame: x.Frame, Loads: x.Loads}, nil
}

// rimPast returns the rim of one end under the greater of its joists' reactions.
// Over the beam it is held all along; only what stands past it bends it.
func (x *Floor) rimPast(joists []Bar, places []float64, back float64, store *Gauges) (Bar, error) {
	f := x.Frame
	held := (f.Lines[0].End - f.Lines[0].Start).Metres()
	r := Run{Start: 0, End: back + held, Supports: []float64{back, back + held}, Hinges: []bool{false, false}}
	g, err := store.Of(r, slices.Clone(places))
	if err != nil {
		return Bar{}, err
	}
	rim := newBar("rim", "a rim past the end of the beam", g, f.Sections.Rim.Width, f.Sections.Rim.Depth, f.Sections.Rim.Across(), "the joists nailed to it")
	for kind := range loads.CaseCount {
		var most [2]float64
		for _, side := range []int{0, 1} {
			for i := range joists {
				if e := joists[i].Cases[kind]; e.Most.Shear != nil {
					most[side] += e.Most.Reactions[side] * places[i]
				}
			}
		}
		worse := 0
		if most[1] > most[0] {
			worse = 1
		}
		var pushes []Push
		for i := range joists {
			if e := joists[i].Cases[kind]; e.Most.Shear != nil && e.Most.Reactions[worse] != 0 {
				at := back - places[i]
				pushes = append(pushes, Push{at, at, e.Most.Reactions[worse]})
			}
		}
		if len(pushes) == 0 {
			continue
		}
		rim.Cases[kind] = g.Empty()
		if kind == loads.LiveCase { // it may be there or not
			rim.Cases[kind].Patterned(g.Under(pushes), 1)
		} else {
			rim.Cases[kind].Always(g.Under(pushes), 1)
		}
	}
	return rim, nil
}

// Seat returns how much of the joists lies on the beam of an outer line.
func (x *Floor) Seat(line int) measure.Length {
	half := x.Frame.Sections.Beam.Across() / 2
	y, j := x.Frame.Lines[line].Y, x.Frame.Joists[0]
	return min(y+half, j.To) - max(y-half, j.From)
}
