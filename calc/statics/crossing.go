package statics

// Crossing is one metre of floor, or one joist, as it crosses the beam lines:
// joists on the beams run on over all of them, joists between beams are simple
// spans, and what lies outside the outer beams then rests on those.
type Crossing struct{ Gauge *Gauge }

// Across returns what one newton per metre from one place to another, or one
// newton at a place, does to the floor's run.
func (x *Crossing) Across(from, to float64) Effect { return x.Gauge.placedAt(from, to) }

// Share returns what each line gets of one newton at y.
func (x *Crossing) Share(y float64) []float64 { return x.Across(y, y).Reactions }

// Edges returns what the floor outside the run puts on its ends, for one newton
// per square metre: nothing when joists lie on the beams.
func (x *Crossing) Edges(width float64) (near, far float64) {
	return x.Gauge.Run.Start, width - x.Gauge.Run.End
}
