package cutting

import "math"

// task is one question to the search: the least total weight of sticks that
// yield all pieces, within limits on the sticks taken.
type task struct {
	*model
	weight  []int64 // of one stick from each stock length
	limits  []limit // on all the sticks together
	tallies []limit // whole numbers to branch on before the sticks of a stock length
	reserve int     // the piece that stands for the offcut to be kept, or -1
	holds   []bool  // stock lengths whose sticks may hold the reserve
	target  int64   // a plan is wanted at this weight or below
	floor   int64   // no plan is below this; at it the search is over
}

// limit is Σ coefficient · sticks ≤ most.
type limit struct {
	coefficient []int64
	most        int64
}

// pattern is what one stick of a stock length yields.
type pattern struct {
	stock int32
	parts []part
	used  int64
}

type part struct{ piece, count int32 }

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
		total += int64(l.times[i]) * each[p.stock]
	}
	return total
}

// fits keeps plans of the quick rules out that take more sticks than there are.
func (t *task) fits(l *layout) bool {
	taken := make([]int, len(t.stocks))
	for i, p := range l.patterns {
		taken[p.stock] += l.times[i]
	}
	for j, n := range taken {
		if n > t.stocks[j].most {
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

// mostOf returns how many of a piece a stick of a stock length may yield at all.
func (t *task) mostOf(i, j int) int {
	if i == t.reserve && !t.holds[j] {
		return 0
	}
	return int(min(int64(t.pieces[i].need), t.stocks[j].room/t.pieces[i].uses))
}

// mostSticks returns a number of sticks of a stock length that no plan within the
// target passes.
func (t *task) mostSticks(j int) int64 {
	pieces := int64(0)
	for _, k := range t.pieces {
		pieces += int64(k.need)
	}
	most := min(int64(t.stocks[j].most), pieces)
	if t.weight[j] > 0 && t.target < math.MaxInt64 {
		most = min(most, max(0, t.target)/t.weight[j])
	}
	return most
}
