package heights

import "pierbook/calc/measure"

// bayTolerance is the share of the shorter bay beside a pier by which the pier
// may stand off its place along its line: the bay that it leaves then grows by
// no more, and the end of a beam hangs over by no more. It is a simple rule,
// common practice, no source; the checks of the beam are those of the places
// planned, so that a pier which did move is to be written into the job.
const bayTolerance = 4

// Shift is how far a pier may be moved along its line, each way.
type Shift struct {
	On, Back measure.Length // towards higher numbers and towards lower ones; 0 when it may not
	Bay      measure.Length // the shorter bay beside it
	Joint    bool           // a beam joint lies over it, and keeps it where it is
}

// mayShift walks along the line in steps, up to a quarter of the bay, as long as
// the ground there, by the surface, lets the floor be as it is with an ordinary
// hole. What the digging meets there is not known: it is to be probed first.
func (h *Heights) mayShift(i int, step measure.Length) Shift {
	pier := h.frame.Piers[i]
	before, hasBefore := h.neighbour(i, -1)
	after, hasAfter := h.neighbour(i, 1)
	m := Shift{Joint: pier.Splice}
	switch {
	case hasBefore && hasAfter:
		m.Bay = min(before, after)
	default:
		m.Bay = max(before, after)
	}
	if m.Joint || h.ground.Surface == nil {
		return m
	}
	if hasAfter {
		m.On = h.walk(i, step, m.Bay/bayTolerance)
	}
	if hasBefore {
		m.Back = -h.walk(i, -step, m.Bay/bayTolerance)
	}
	return m
}

// neighbour returns the bay to the next pier on the line, one way or the other.
func (h *Heights) neighbour(i, way int) (measure.Length, bool) {
	k := i + way
	if k < 0 || k >= len(h.frame.Piers) || h.frame.Piers[k].Line != h.frame.Piers[i].Line {
		return 0, false
	}
	return (h.frame.Piers[k].X - h.frame.Piers[i].X).Abs(), true
}

// walk returns the last place, counted from the pier, up to which the limits are
// met at every step.
func (h *Heights) walk(i int, step, most measure.Length) measure.Length {
	most = most.RoundDownTo(h.terms.Mark)
	if step < 0 {
		most = -most
	}
	for at := measure.Length(0); ; at += step {
		next := at + step
		if next.Abs() >= most.Abs() {
			next = most
		}
		if !h.serveAt(i, next) {
			return at
		}
		if next == most {
			return most
		}
	}
}

// serveAt tries an ordinary hole at a place along the line.
func (h *Heights) serveAt(i int, off measure.Length) bool {
	pier := h.frame.Piers[i]
	x := pier.X + off
	if h.ground.Beyond(x, pier.Y) {
		return false
	}
	there := place{name: pier.Name, ground: h.ground.Surface.At(x, pier.Y), buildUp: h.places[i].buildUp}
	return h.terms.bounds(there).Lacks() == 0 && h.terms.serves(h.Floor.Height, []place{there}, nil)
}
