package frame

import (
	"strconv"

	"pierbook/calc/measure"
)

// rims lays a rim along both long sides, as long as the frame, in the fewest
// pieces that the yard's lengths allow. They meet at the middle of a joist's
// end, so that both can be nailed to it, and on another joist at the other side.
func (l *layout) rims() {
	if !l.hasRims() {
		return
	}
	f := l.frame
	stock, _ := l.stock(f.Sections.Rim)
	r := run{to: f.Length, stops: l.innerJoists(), stock: stock}
	if from, to, stuck := r.stuck(); stuck {
		l.wrong("frame.rims.size", "list longer stock in the yard, or space the joists closer",
			"no %s reaches from %s to %s, and a rim may be joined only at a joist", nameOr(f.Sections.Rim, "rim"), l.say(from), l.say(to))
		return
	}
	options := r.options(r.fewest())
	first, second := apart(options, options, 1)
	f.Rims = []Rim{
		l.rim(f.Lines[0].Name, 0, r, first),
		l.rim(f.Lines[len(f.Lines)-1].Name, f.Width, r, second),
	}
}

func (l *layout) rim(line string, y measure.Length, r run, o option) Rim {
	rim := Rim{Side: line, Y: y, Pieces: make([]Piece, len(o.joints)+1)}
	for i := range rim.Pieces {
		rim.Pieces[i] = Piece{Name: "R" + line + "-" + strconv.Itoa(i+1), From: r.at(o, i), To: r.at(o, i+1)}
	}
	return rim
}

// innerJoists returns the centres of the joists between the first and the last.
func (l *layout) innerJoists() []measure.Length {
	var centres []measure.Length
	last := l.frame.Joists[len(l.frame.Joists)-1].Number
	bay := l.frame.Joists[0].Bay
	for _, j := range l.frame.Joists {
		if j.Bay == bay && j.Number > 1 && j.Number < last {
			centres = append(centres, j.Centre)
		}
	}
	return centres
}

// apart returns an option of each list, whose joints keep at least that many stops
// apart, at the least timber bought; when none do, the pair that comes nearest to it.
func apart(options, others []option, least int) (first, second option) {
	best := pairCost{gap: -1}
	for i, a := range options {
		for k, b := range others {
			c := pairCost{gap: min(least, gapOf(a, b, least)), bought: a.bought + b.bought, spread: a.spread + b.spread, order: i*len(others) + k}
			if best.gap < 0 || c.better(best) {
				best, first, second = c, a, b
			}
		}
	}
	return first, second
}

type pairCost struct {
	gap            int
	bought, spread measure.Length
	order          int
}

func (c pairCost) better(o pairCost) bool {
	switch {
	case c.gap != o.gap:
		return c.gap > o.gap
	case c.bought != o.bought:
		return c.bought < o.bought
	case c.spread != o.spread:
		return c.spread < o.spread
	}
	return c.order < o.order
}

// gapOf returns the least distance, in stops, between joints of a and b; most
// when there is nothing to keep apart.
func gapOf(a, b option, most int) int {
	gap := most
	for _, i := range a.joints {
		for _, k := range b.joints {
			gap = min(gap, max(i-k, k-i))
		}
	}
	return gap
}
