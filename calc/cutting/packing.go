package cutting

import (
	"cmp"
	"math/bits"
	"slices"
)

// packer asks whether the pieces can be packed into given sticks, by filling
// one stick after another with a piece of the longest kind left and what goes
// beside it. The waste of all sticks together is known, so that only sticks
// filled within what is left of it come into question; where it is small these
// are few. States that failed are remembered.
//
// Source: filling one bin after another, R.E. Korf, IJCAI (2003) 1252–1258,
// from memory.
type packer struct {
	*task
	best   [][]int32 // by kind and room: the most that the kinds from there on can fill of it
	fills  []int64   // the most that pieces can fill of a stick of each shelf
	radix  []uint64
	need   []int32
	sticks []int
	failed map[[2]uint64]struct{}
	steps  int
	capped bool // some ways to fill a stick were left out
	plan   []pattern
}

// Limits of the packing.
const (
	packingTable = 2_000_000
	packingWays  = 400
)

// fullest returns the most that pieces can fill of a stick of each shelf, or
// nil when that cannot be told in a table.
func (t *task) fullest() []int64 {
	best := t.fillings()
	if best == nil {
		return nil
	}
	fills := make([]int64, len(t.shelves))
	for j, s := range t.shelves {
		fills[j] = int64(best[0][s.room])
		if t.reserve >= 0 && !t.holds[j] {
			fills[j] = min(fills[j], s.room)
		}
	}
	return fills
}

// fillings works out, for each kind and room, the most that the kinds from
// there on can fill of the room.
func (t *task) fillings() [][]int32 {
	room, n := t.widest(), len(t.kinds)
	if int64(n+1)*(room+1) > packingTable {
		return nil
	}
	best := make([][]int32, n+1)
	best[n] = make([]int32, room+1)
	for i := n - 1; i >= 0; i-- {
		k := t.kinds[i]
		row := slices.Clone(best[i+1])
		for left, bundle := min(int64(k.need), room/k.take), int64(1); left > 0; bundle *= 2 {
			bundle = min(bundle, left)
			left -= bundle
			take := bundle * k.take
			for c := room; c >= take; c-- {
				row[c] = max(row[c], row[c-take]+int32(take))
			}
		}
		best[i] = row
	}
	return best
}

// newPacker makes a packer, or none when its states have no number.
func (t *task) newPacker() *packer {
	p := &packer{task: t, best: t.fillings(), fills: t.fullest()}
	if p.best == nil {
		return nil
	}
	return p
}

// number gives each state a number of 128 bits by the radix of each count, and
// says whether that is enough.
func (p *packer) number(sticks []int) bool {
	width := 0
	for _, k := range p.kinds {
		width += bits.Len(uint(k.need))
	}
	for _, n := range sticks {
		width += bits.Len(uint(n))
	}
	return width <= 126
}

// state returns the number of the state at hand.
func (p *packer) state() [2]uint64 {
	var s [2]uint64
	push := func(v uint64, width int) {
		s[1] = s[1]<<width | s[0]>>(64-width)
		s[0] = s[0]<<width | v
	}
	for i, n := range p.need {
		push(uint64(n), bits.Len(uint(p.kinds[i].need)))
	}
	for j, n := range p.sticks {
		if w := p.radix[j]; w > 0 {
			push(uint64(n), int(w))
		}
	}
	return s
}

// pack looks for a plan that uses the sticks of a combination, within a number
// of steps. It says whether the search was closed.
func (p *packer) pack(c *combination, steps int) (*layout, bool) {
	if !p.number(c.sticks) {
		return nil, false
	}
	p.need = p.need[:0]
	left := int64(0)
	for _, k := range p.kinds {
		p.need = append(p.need, int32(k.need))
		left += k.take * int64(k.need)
	}
	p.radix = p.radix[:0]
	for j, n := range c.sticks {
		p.radix = append(p.radix, uint64(bits.Len(uint(n))))
		left -= int64(n) * p.fills[j]
	}
	p.sticks = slices.Clone(c.sticks)
	p.failed = map[[2]uint64]struct{}{}
	p.steps, p.capped, p.plan = steps, false, p.plan[:0]
	if !p.descend(0, -left) {
		return nil, p.steps > 0 && !p.capped
	}
	l := &layout{}
	for _, q := range p.plan {
		l.add(q, 1)
	}
	return l, true
}

// way is a stick filled in one way.
type way struct {
	shelf int
	count []int32
	waste int64
}

// descend fills the sticks left when kinds before first are all packed and
// waste is what may still be lost.
func (p *packer) descend(first int, waste int64) bool {
	for first < len(p.need) && p.need[first] == 0 {
		first++
	}
	if first == len(p.need) {
		return true
	}
	p.steps--
	if p.steps <= 0 {
		return false
	}
	state := p.state()
	if _, seen := p.failed[state]; seen {
		return false
	}
	for _, w := range p.ways(first, waste) {
		p.steps--
		if p.take(w, 1); p.descend(first, waste-w.waste) {
			return true
		}
		p.take(w, -1)
		if p.steps <= 0 {
			return false
		}
	}
	p.failed[state] = struct{}{}
	return false
}

// take packs a stick, or with sign −1 takes it out again.
func (p *packer) take(w way, sign int) {
	var parts []part
	for i, n := range w.count {
		p.need[i] -= int32(sign) * n
		if n > 0 && sign > 0 {
			parts = append(parts, part{int32(i), n})
		}
	}
	p.sticks[w.shelf] -= sign
	if sign > 0 {
		p.plan = append(p.plan, p.stick(w.shelf, parts))
	} else {
		p.plan = p.plan[:len(p.plan)-1]
	}
}

// ways lists the ways to fill one of the sticks left with a piece of the first
// kind and others, so that no more goes in, the least waste first.
func (p *packer) ways(first int, waste int64) []way {
	var ways []way
	count := make([]int32, len(p.need))
	var fill func(i int, room, spare int64, j int)
	fill = func(i int, room, spare int64, j int) {
		p.steps--
		if len(ways) > packingWays {
			p.capped = true
			return
		}
		if room-int64(p.best[i][room]) > waste {
			return
		}
		for i < len(p.need) && (p.need[i] == 0 || p.kinds[i].take > room || i == p.reserve && !p.holds[j]) {
			i++
		}
		if i == len(p.need) {
			if room < spare && room <= waste {
				ways = append(ways, way{j, slices.Clone(count), room})
			}
			return
		}
		take := p.kinds[i].take
		most := min(int64(p.need[i]), room/take)
		least := int64(0)
		if i == first {
			least = 1
		}
		for n := most; n >= least; n-- {
			count[i] = int32(n)
			beside := spare
			if n < int64(p.need[i]) {
				beside = min(spare, take)
			}
			fill(i+1, room-n*take, beside, j)
		}
		count[i] = 0
	}
	for j, n := range p.sticks {
		if n > 0 && p.fills[j] >= p.kinds[first].take && (first != p.reserve || p.holds[j]) {
			fill(first, p.fills[j], p.fills[j]+1, j)
		}
	}
	slices.SortStableFunc(ways, func(a, b way) int { return cmp.Compare(a.waste, b.waste) })
	return ways
}
