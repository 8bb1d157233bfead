package cutting

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// result writes the best layout of the solver as sticks in the order of the
// saw: alike sticks together, those with the longest pieces first.
func (p *Problem) result(s *solver) Result {
	r := Result{ByLength: !p.priced(), Proofs: s.proofs}
	l := s.best.merged()
	slices.SortFunc(l.order, func(a, b int) int { return s.sawOrder(l.patterns[a], l.patterns[b]) })
	names := p.names()
	onHand := make([]int, len(s.stocks))
	for _, at := range l.order {
		r.Patterns++
		for range l.times[at] {
			stick := p.stick(s, l.patterns[at], onHand, names)
			stick.Number, stick.Pattern = len(r.Sticks)+1, r.Patterns
			r.Sticks = append(r.Sticks, stick)
			r.Cost += stick.Price
			if stick.Bought {
				r.Bought++
				r.Offcut = max(r.Offcut, stick.Left)
			}
		}
	}
	r.reconcile()
	return r
}

// reconcile brings the proofs in line with the plan: where an goal was not
// proven, a later one can have come upon a plan better by it.
func (r *Result) reconcile() {
	values := []int64{r.Cost, int64(r.Bought), int64(r.Offcut), int64(r.Patterns)}
	for i := range r.Proofs {
		p := &r.Proofs[i]
		p.Value = values[p.Goal-LeastCost]
		if p.Goal == LongestOffcut {
			p.Bound = max(p.Bound, p.Value)
		} else {
			p.Bound = min(p.Bound, p.Value)
		}
		p.Proven = p.Bound == p.Value
	}
}

// sawOrder compares two patterns: the longer pieces first, then the longer
// sticks.
func (s *solver) sawOrder(a, b pattern) int {
	for k := range min(len(a.parts), len(b.parts)) {
		if d := cmp.Or(cmp.Compare(a.parts[k].piece, b.parts[k].piece), cmp.Compare(b.parts[k].count, a.parts[k].count)); d != 0 {
			return d
		}
	}
	return cmp.Or(cmp.Compare(len(b.parts), len(a.parts)), cmp.Compare(b.stock, a.stock))
}

// merger is a layout in which equal patterns stand once.
type merger struct {
	layout
	order []int
}

// merged counts equal patterns together, the longest pieces of each first.
func (l *layout) merged() *merger {
	out := &merger{}
	for i, p := range l.patterns {
		p.parts = slices.Clone(p.parts)
		slices.SortFunc(p.parts, func(a, b part) int { return cmp.Compare(a.piece, b.piece) })
		at := slices.IndexFunc(out.patterns, func(q pattern) bool { return q.stock == p.stock && slices.Equal(q.parts, p.parts) })
		if at >= 0 {
			out.times[at] += l.times[i]
			continue
		}
		out.order = append(out.order, len(out.patterns))
		out.add(p, l.times[i])
	}
	return out
}

// stick writes one stick, its longest pieces at the hook end, with the running
// mark of each.
func (p *Problem) stick(s *solver, pat pattern, onHand []int, names map[measure.Length][]string) CutStick {
	stock := s.stocks[pat.stock]
	stick := CutStick{Length: stock.length, Bought: stock.bought, Price: stock.price * s.coin, Trim: p.Trim}
	if !stock.bought {
		stick.Name = stock.names[onHand[pat.stock]]
		onHand[pat.stock]++
	}
	at := measure.Length(0)
	if p.Trim > 0 {
		at = p.Trim + p.Kerf
	}
	for _, q := range pat.parts {
		length := measure.Length(s.pieces[q.piece].uses*s.unit) - p.Kerf
		for range q.count {
			stick.Cuts = append(stick.Cuts, Cut{Name: nextName(names, length), Length: length, Mark: at + length})
			at += length + p.Kerf
		}
	}
	stick.Left = max(0, stock.length-at)
	return stick
}

// names gathers the names of the pieces of each length, in the order given.
func (p *Problem) names() map[measure.Length][]string {
	names := make(map[measure.Length][]string)
	for _, piece := range p.Pieces {
		given := append(slices.Clone(piece.Names), make([]string, piece.Count-len(piece.Names))...)
		names[piece.Length] = append(names[piece.Length], given...)
	}
	return names
}

// nextName removes the first name of a length.
func nextName(names map[measure.Length][]string, length measure.Length) string {
	left := names[length]
	names[length] = left[1:]
	return left[0]
}
