package cutting

import "slices"

// complete lays the pieces still needed on sticks by a quick rule: the longest
// piece left goes into each length of stick in turn, filled as full as it will
// go, and the length that weighs least for what it yields is taken. taken
// counts the sticks of each stock length used up already.
func (t *task) complete(need []int, taken []int) *layout {
	need, taken = slices.Clone(need), slices.Clone(taken)
	l := &layout{}
	f := filler{task: t}
	for {
		first := slices.IndexFunc(need, func(n int) bool { return n > 0 })
		if first < 0 {
			return l
		}
		p, ok := f.choose(need, taken, first)
		if !ok {
			return nil
		}
		times := t.repeats(p, need, taken)
		for _, q := range p.parts {
			need[q.piece] -= int(q.count) * times
		}
		taken[p.stock] += times
		l.add(p, times)
	}
}

// repeats returns how often a pattern can be cut before it would yield too
// much of a piece or the stock length is empty.
func (t *task) repeats(p pattern, need, taken []int) int {
	times := t.stocks[p.stock].most - taken[p.stock]
	for _, q := range p.parts {
		times = min(times, need[q.piece]/int(q.count))
	}
	return max(times, 1)
}

// filler fills one stick at a time as full as it will go.
type filler struct {
	*task
	need  []int
	stock int
	count []int32
	best  []int32
	used  int64
	steps int
}

// choose returns the best stick that holds a piece of the first piece.
func (f *filler) choose(need, taken []int, first int) (pattern, bool) {
	left := int64(0)
	for i, n := range need {
		left += int64(n) * f.pieces[i].uses
	}
	var best pattern
	found := false
	rate, all := 0.0, false
	for j, s := range f.stocks {
		if s.most <= taken[j] || s.room < f.pieces[first].uses || f.mostOf(first, j) == 0 {
			continue
		}
		p := f.fill(need, j, first)
		whole := p.used == left
		r := float64(f.weight[j]) / float64(p.used)
		if s.most < unlimited && f.weight[j] == 0 {
			r = -float64(p.used) / float64(s.room)
		}
		if whole {
			r = float64(f.weight[j]) / float64(s.room)
		}
		if !found || (whole && (!all || f.weight[j] < f.weight[best.stock])) || (!all && r <= rate) {
			best, found, rate, all = p, true, r, all || whole
		}
	}
	return best, found
}

// fill returns the fullest stick of the stock length that holds a piece of the first
// piece and no more than needed of any.
func (f *filler) fill(need []int, j, first int) pattern {
	n := len(f.pieces)
	f.need, f.stock, f.used, f.steps = need, j, -1, 400
	f.count = slices.Grow(f.count[:0], n)[:n]
	f.best = slices.Grow(f.best[:0], n)[:n]
	clear(f.count)
	f.count[first] = 1
	f.descend(first, f.stocks[j].room-f.pieces[first].uses)
	f.task.use(stepsOfScan*(400-f.steps) + 4*n)
	var parts []part
	for i, c := range f.best {
		if c > 0 {
			parts = append(parts, part{int32(i), c})
		}
	}
	return f.stick(j, parts)
}

func (f *filler) descend(i int, room int64) {
	f.steps--
	if used := f.stocks[f.stock].room - room; used > f.used {
		f.used = used
		copy(f.best, f.count)
	}
	for ; i < len(f.pieces) && f.steps > 0 && f.used < f.stocks[f.stock].room; i++ {
		take, had := f.pieces[i].uses, f.count[i]
		if take > room || (i == f.reserve && !f.holds[f.stock]) {
			continue
		}
		n := int32(min(int64(f.need[i])-int64(had), room/take))
		for c := n; c > 0; c-- {
			f.count[i] = had + c
			f.descend(i+1, room-int64(c)*take)
		}
		f.count[i] = had
	}
}

// settle puts each stick of a layout on the lightest stock length that holds it.
func (t *task) settle(l *layout) *layout {
	taken := make([]int, len(t.stocks))
	out := &layout{}
	for i, p := range l.patterns {
		left := l.times[i]
		for left > 0 {
			j := t.lightest(p, taken)
			if j < 0 {
				return l // what came before took all the sticks that hold this one
			}
			n := min(left, t.stocks[j].most-taken[j])
			taken[j] += n
			left -= n
			p.stock = int32(j)
			out.add(p, n)
		}
	}
	return out
}

func (t *task) lightest(p pattern, taken []int) int {
	best := -1
	for j, s := range t.stocks {
		if s.room < p.used || s.most <= taken[j] || !t.mayHold(p, j) {
			continue
		}
		if best < 0 || t.weight[j] < t.weight[best] {
			best = j
		}
	}
	return best
}

// mayHold keeps the offcut that is sought on sticks bought: one of a stick on hand
// counts for nothing.
func (t *task) mayHold(p pattern, j int) bool {
	if t.reserve < 0 || t.holds[j] {
		return true
	}
	return !slices.ContainsFunc(p.parts, func(q part) bool { return int(q.piece) == t.reserve })
}

// exact takes from a layout the pieces that it yields beyond the need.
func (t *task) exact(l *layout) *layout {
	over := make([]int, len(t.pieces))
	for i, k := range t.pieces {
		over[i] = -k.need
	}
	for i, p := range l.patterns {
		for _, q := range p.parts {
			over[q.piece] += int(q.count) * l.times[i]
		}
	}
	out := &layout{}
	for i, p := range l.patterns {
		for left := l.times[i]; left > 0; {
			q, times := t.without(p, over, left)
			left -= times
			if len(q.parts) > 0 {
				out.add(q, times)
			}
		}
	}
	return out
}

// without returns the pattern less what there is too much of, and how many of
// the sticks left are cut so.
func (t *task) without(p pattern, over []int, left int) (pattern, int) {
	parts := slices.Clone(p.parts)
	changed := false
	for k := range parts {
		if extra := min(int(parts[k].count), over[parts[k].piece]); extra > 0 {
			parts[k].count -= int32(extra)
			over[parts[k].piece] -= extra
			changed = true
		}
	}
	if !changed {
		return p, left
	}
	parts = slices.DeleteFunc(parts, func(q part) bool { return q.count == 0 })
	return t.stick(int(p.stock), parts), 1
}
