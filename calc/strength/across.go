package strength

// crossing is one metre of floor, or one joist, as it crosses the beam lines:
// joists on the beams run on over all of them, joists between beams are simple
// spans, and what lies outside the outer beams then rests on those.
type crossing struct{ gauge *gauge }

// across returns what one newton per metre from one place to another, or one
// newton at a place, does to the floor's run. It is worked once for each layout.
func (x *crossing) across(from, to float64) field {
	g, key := x.gauge, [2]float64{from, to}
	if known, ok := g.placed[key]; ok {
		return known
	}
	f := newField(len(g.stations), len(g.run.supports))
	if err := g.read(f, g.run.inside(push{from, to, 1})); err != nil {
		panic(err.Error()) // the run was solved when it was prepared
	}
	g.placed[key] = f
	return f
}

// share returns what each line gets of one newton at y.
func (x *crossing) share(y float64) []float64 { return x.across(y, y).reactions }

// edges returns what the floor outside the run puts on its ends, for one newton
// per square metre: nothing when joists lie on the beams.
func (x *crossing) edges(width float64) (near, far float64) {
	return x.gauge.run.start, width - x.gauge.run.end
}
