package cutting

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// knapsack finds the stick worth most when every piece has a value, exactly
// and in whole numbers. It first searches depth first under the fractional
// bound, which is quick when few pieces go into a stick, and falls back on a
// table over all rooms.
type knapsack struct {
	items []item
	least []int64 // shortest take from each item on
	count []int32
	found []int32 // counts of the best stick so far
	best  int64
	// passed is what no stick is worth more than, where the search of the best was
	// not closed; 0 where it was.
	passed int64
	steps  int
	table  table
	rough  table // over rooms in whole grains, for a bound where the exact table would be too large
	grain  int64 // 0 when the rough table is not in use
}

// item is a piece with its value, in the order of value for length.
type item struct {
	uses, value, most int64
	piece             int32
}

// share returns ⌊room · value / take⌋, also where the product passes int64.
func share(room, value, take int64) int64 {
	if room < 1<<22 && value < 1<<40 {
		return room * value / take
	}
	hi, lo := bits.Mul64(uint64(room), uint64(value))
	if hi >= uint64(take) {
		return math.MaxInt64
	}
	quotient, _ := bits.Div64(hi, lo, uint64(take))
	return int64(min(quotient, math.MaxInt64))
}

// denser compares two items by value for length.
func denser(a, b item) int {
	high, low := bits.Mul64(uint64(b.value), uint64(a.uses))
	otherHigh, otherLow := bits.Mul64(uint64(a.value), uint64(b.uses))
	return cmp.Or(cmp.Compare(high, otherHigh), cmp.Compare(low, otherLow), cmp.Compare(a.piece, b.piece))
}

// sort takes the pieces that have a value into the order of the search.
func (k *knapsack) sort(t *task, value []int64) {
	k.items = k.items[:0]
	for i, piece := range t.pieces {
		if value[i] > 0 {
			k.items = append(k.items, item{uses: piece.uses, value: value[i], piece: int32(i)})
		}
	}
	slices.SortFunc(k.items, denser)
	k.least = slices.Grow(k.least[:0], len(k.items)+1)[:len(k.items)+1]
	k.least[len(k.items)] = 1 << 62
	for i := len(k.items) - 1; i >= 0; i-- {
		k.least[i] = min(k.least[i+1], k.items[i].uses)
	}
	k.count = slices.Grow(k.count[:0], len(k.items))[:len(k.items)]
	k.found = slices.Grow(k.found[:0], len(k.items))[:len(k.items)]
}

// search looks for the best stick of the room worth more than above, within a
// number of steps, and is false when they ran out.
func (k *knapsack) search(room, above int64, most func(piece int) int, steps int) bool {
	for i := range k.items {
		k.items[i].most = int64(most(int(k.items[i].piece)))
	}
	clear(k.count)
	clear(k.found)
	k.best, k.passed, k.steps = above, 0, steps
	k.descend(0, room, 0)
	return k.steps > 0
}

func (k *knapsack) descend(i int, room, value int64) {
	if k.steps--; k.steps <= 0 {
		return
	}
	if value > k.best {
		k.best = value
		copy(k.found, k.count)
	}
	for ; i < len(k.items); i++ {
		it := &k.items[i]
		if room < k.least[i] || value+share(room, it.value, it.uses) <= k.best {
			return
		}
		if k.grain > 0 && value+k.rough.rows[i][room/k.grain] <= k.best {
			return
		}
		n := min(it.most, room/it.uses)
		for ; n > 0; n-- {
			k.count[i] = int32(n)
			k.descend(i+1, room-n*it.uses, value+n*it.value)
		}
		k.count[i] = 0
	}
}

// roughRooms is the number of grains in the room of the rough table.
const roughRooms = 8_192

// searchAll looks for the best stick, bounded by a table in which every piece and
// every room is rounded down to whole grains: pieces that fit exactly also fit
// there. It returns the steps that it took, in steps of the budget.
func (k *knapsack) searchAll(room, above int64, most func(piece int) int, steps int) int {
	k.grain = room/roughRooms + 1
	pieces := make([]piece, len(k.items))
	value := make([]int64, len(k.items))
	for i, it := range k.items {
		pieces[i], value[i] = piece{uses: it.uses / k.grain}, it.value
	}
	work := k.rough.fill(pieces, value, room/k.grain, func(i int) int {
		return min(most(int(k.items[i].piece)), int(room/k.items[i].uses))
	})
	steps = max(steps, 1)
	if !k.search(room, above, most, steps) && len(k.items) > 0 {
		k.passed = min(k.rough.rows[0][room/k.grain], share(room, k.items[0].value, k.items[0].uses))
	}
	k.grain = 0
	return work + stepsOfScan*(steps-k.steps)
}

// parts returns the stick found as parts in rising order of pieces.
func (k *knapsack) parts() []part {
	var parts []part
	for i, n := range k.found {
		if n > 0 {
			parts = append(parts, part{k.items[i].piece, n})
		}
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.piece, b.piece) })
	return parts
}

// table holds, for each piece on and each room, the most that the pieces from
// there on can be worth together.
type table struct {
	rows [][]int64
	most []int
}

// tableLimit is the largest number of entries a table may have.
const tableLimit = 6_000_000

// fits keeps a table from taking more memory than it is worth.
func (t *table) fits(pieces int, room int64) bool { return int64(pieces+1)*(room+1) <= tableLimit }

// fill works the table out for all rooms up to the one given, and returns the
// steps that it took.
//
//	row[i][c] = max over n ≤ most[i] of n · value[i] + row[i+1][c − n · take[i]]
func (t *table) fill(pieces []piece, value []int64, room int64, most func(piece int) int) (steps int) {
	n := len(pieces)
	if len(t.rows) != n+1 || int64(len(t.rows[0])) < room+1 {
		t.rows = make([][]int64, n+1)
		all := make([]int64, int64(n+1)*(room+1))
		for i := range t.rows {
			t.rows[i], all = all[:room+1:room+1], all[room+1:]
		}
	}
	t.most = t.most[:0]
	for i := range pieces {
		t.most = append(t.most, most(i))
	}
	clear(t.rows[n][:room+1])
	for i := n - 1; i >= 0; i-- {
		row := t.rows[i][:room+1]
		copy(row, t.rows[i+1])
		steps += int(room)
		if value[i] <= 0 {
			continue
		}
		// Bundles of 1, 2, 4 … pieces make every number up to the most.
		for left, bundle := t.most[i], 1; left > 0; bundle *= 2 {
			bundle = min(bundle, left)
			left -= bundle
			steps += int(room)
			improve(row, pieces[i].uses*int64(bundle), value[i]*int64(bundle))
		}
	}
	return steps
}

// improve offers every room one bundle more.
func improve(row []int64, take, value int64) {
	if take >= int64(len(row)) {
		return
	}
	for c, from := len(row)-1, len(row)-1-int(take); from >= 0; c, from = c-1, from-1 {
		if v := row[from] + value; v > row[c] {
			row[c] = v
		}
	}
}

// parts returns a stick of the room that is worth what the table says.
func (t *table) parts(pieces []piece, value []int64, room int64) []part {
	var parts []part
	for i, k := range pieces {
		n, c := 0, room
		for t.rows[i][room] != t.rows[i+1][c]+int64(n)*value[i] {
			n++
			c -= k.uses
		}
		if n > 0 && value[i] > 0 {
			parts = append(parts, part{int32(i), int32(n)})
		}
		room = c
	}
	return parts
}
