package cutting

import "math"

// task is one question to the search: the least total weight of sticks that
// yield all kinds, within limits on the sticks taken.
type task struct {
	*model
	weight  []int64 // of one stick from each shelf
	limits  []limit // on all the sticks together
	tallies []limit // whole numbers to branch on before the sticks of a shelf
	reserve int     // the kind that stands for the offcut to be kept, or -1
	holds   []bool  // shelves whose sticks may hold the reserve
	target  int64   // a plan is wanted at this weight or below
	floor   int64   // no plan is below this; at it the search is over
}

// limit is Σ coefficient · sticks ≤ most.
type limit struct {
	coefficient []int64
	most        int64
}

// pattern is what one stick of a shelf yields.
type pattern struct {
	shelf int32
	parts []part
	used  int64
}

type part struct{ kind, count int32 }

// layout is a plan in the model: patterns, and how many sticks are cut by each.
type layout struct {
	patterns []pattern
	times    []int
}

func (l *layout) add(p pattern, times int) {
	if times > 0 {
		l.patterns = append(l.patterns, p)
		l.times = append(l.times, times)
	}
}

// weighs returns the total of one number for each stick.
func (l *layout) weighs(each []int64) int64 {
	total := int64(0)
	for i, p := range l.patterns {
		total += int64(l.times[i]) * each[p.shelf]
	}
	return total
}

// fits says whether the layout keeps to the limits and to the sticks on hand.
func (t *task) fits(l *layout) bool {
	taken := make([]int, len(t.shelves))
	for i, p := range l.patterns {
		taken[p.shelf] += l.times[i]
	}
	for j, n := range taken {
		if n > t.shelves[j].most {
			return false
		}
	}
	for _, limit := range t.limits {
		if l.weighs(limit.coefficient) > limit.most {
			return false
		}
	}
	return true
}

// mostOf returns how many of a kind a stick of a shelf may yield at all.
func (t *task) mostOf(i, j int) int {
	if i == t.reserve && !t.holds[j] {
		return 0
	}
	return int(min(int64(t.kinds[i].need), t.shelves[j].room/t.kinds[i].take))
}

// mostSticks returns a number of sticks of a shelf that no plan within the
// target passes.
func (t *task) mostSticks(j int) int64 {
	pieces := int64(0)
	for _, k := range t.kinds {
		pieces += int64(k.need)
	}
	most := min(int64(t.shelves[j].most), pieces)
	if t.weight[j] > 0 && t.target < math.MaxInt64 {
		most = min(most, max(0, t.target)/t.weight[j])
	}
	return most
}
