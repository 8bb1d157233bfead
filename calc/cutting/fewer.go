package cutting

import "slices"

// fewer asks whether pieces can be cut in no more than so many ways, within a
// cost and a number of sticks bought. It goes through every way to cut a stick
// that holds the longest piece left, and every number of sticks cut so, and then
// the same for what is left. A last way is known without a search: all that is
// left, divided by a number of sticks that divides it.
type fewer struct {
	*model
	accept func(*layout) bool // whether a plan keeps what else must be kept
	need   []int32
	left   []int // sticks of each stock length
	cost   int64 // that may still be spent
	buy    int64 // sticks that may still be bought
	value  []int64
	yields []int64 // the most value in a stick of each stock length
	held   int     // pieces that a stick can hold at most
	steps  int
	plan   layout
	counts [][]int32 // of the stick at hand, by the ways left
}

// newFewer prepares the question for a model. Any values of the pieces serve for
// its bound; duals serve best.
func newFewer(m *model, value []int64, held int64) *fewer {
	f := &fewer{model: m, value: value, held: int(held)}
	t := m.task(m.prices())
	k := knapsack{}
	k.sort(t, value)
	for j, s := range m.stocks {
		most := func(i int) int { return t.mostOf(i, j) }
		if !k.search(s.room, 0, most, knapsackSteps) {
			// Not searched to the end: what the densest piece would yield of the whole room.
			k.best = share(s.room, k.items[0].value, k.items[0].uses)
		}
		f.yields = append(f.yields, k.best)
	}
	return f
}

// knapsackSteps is how far the most valuable stick is searched for.
const knapsackSteps = 200_000

// within asks the question for the pieces and sticks given, and returns the plan
// or nil. While steps are left the answer is certain.
func (f *fewer) within(ways int, need []int32, left []int, cost, buy int64) *layout {
	f.need, f.left, f.cost, f.buy = slices.Clone(need), slices.Clone(left), cost, buy
	f.plan = layout{}
	if f.descend(ways, 0) {
		return &f.plan
	}
	return nil
}

// descend cuts all that is left in so many ways. Pieces before first are cut.
func (f *fewer) descend(ways, first int) bool {
	for first < len(f.need) && f.need[first] == 0 {
		first++
	}
	if first == len(f.need) {
		return f.accept(&f.plan)
	}
	if f.steps--; f.steps <= 0 || ways == 0 || f.tooMany(ways) || f.tooDear() {
		return false
	}
	if ways == 1 {
		return f.alike()
	}
	for len(f.counts) <= ways {
		f.counts = append(f.counts, make([]int32, len(f.need)))
	}
	count := f.counts[ways]
	clear(count)
	for j := range slices.Backward(f.stocks) {
		if f.left[j] > 0 && f.stocks[j].price <= f.cost && f.fill(ways, first, first, j, f.stocks[j].room, count) {
			return true
		}
	}
	return false
}

// tooMany rules out by count: more lengths are left than so many ways can hold.
func (f *fewer) tooMany(ways int) bool {
	pieces := 0
	for _, n := range f.need {
		if n > 0 {
			pieces++
		}
	}
	return pieces > ways*f.held
}

// tooDear rules out by cost: what is left is worth more than the sticks on hand and
// those that may be bought can yield:
//
//	Σ value · need ≤ Σ yield of the sticks on hand + cost · greatest yield for the price
func (f *fewer) tooDear() bool {
	worth, rate, free := int64(0), 0.0, false
	for i, n := range f.need {
		worth += f.value[i] * int64(n)
	}
	for j, s := range f.stocks {
		switch {
		case !s.bought:
			worth -= f.yields[j] * int64(f.left[j])
		case s.price == 0:
			free = true
		default:
			rate = max(rate, float64(f.yields[j])/float64(s.price))
		}
	}
	return !free && float64(worth) > float64(f.cost)*rate*(1+1e-9)
}

// alike cuts all that is left in one way, on as few sticks as hold it.
func (f *fewer) alike() bool {
	common := int64(0)
	for _, n := range f.need {
		common = divisor(common, int64(n))
	}
	for times := int64(1); times <= common; times++ {
		if common%times != 0 {
			continue
		}
		used := int64(0)
		var parts []part
		for i, n := range f.need {
			if n > 0 {
				parts = append(parts, part{int32(i), n / int32(times)})
				used += int64(n) / times * f.pieces[i].uses
			}
		}
		for j, s := range f.stocks {
			if s.room >= used && f.may(j, int(times)) {
				f.plan.add(pattern{int32(j), parts, used}, int(times))
				if f.accept(&f.plan) {
					return true
				}
				f.drop()
			}
		}
	}
	return false
}

// may keeps to the sticks, the cost and the purchases that the goals before left.
func (f *fewer) may(j, times int) bool {
	s := f.stocks[j]
	return times <= f.left[j] && s.price*int64(times) <= f.cost && (!s.bought || int64(times) <= f.buy)
}

func (f *fewer) drop() {
	n := len(f.plan.patterns) - 1
	f.plan.patterns, f.plan.times = f.plan.patterns[:n], f.plan.times[:n]
}

// fill goes through the ways to cut a stick of a stock length from piece i on, the
// fullest first.
func (f *fewer) fill(ways, first, i, j int, room int64, count []int32) bool {
	if f.steps--; f.steps <= 0 {
		return false
	}
	for i < len(f.need) && (f.need[i] == 0 || f.pieces[i].uses > room) {
		i++
	}
	if i > first && count[first] == 0 {
		return false
	}
	if i == len(f.need) {
		return f.repeat(ways, first, j, count)
	}
	least := int32(0)
	if i == first {
		least = 1
	}
	for n := int32(min(int64(f.need[i]), room/f.pieces[i].uses)); n >= least; n-- {
		count[i] = n
		if f.fill(ways, first, i+1, j, room-int64(n)*f.pieces[i].uses, count) {
			return true
		}
	}
	count[i] = 0
	return false
}

// repeat cuts as many sticks alike as it can, then one fewer, and so on.
func (f *fewer) repeat(ways, first, j int, count []int32) bool {
	most := int32(f.left[j])
	var parts []part
	used := int64(0)
	for i, n := range count {
		if n > 0 {
			most = min(most, f.need[i]/n)
			parts = append(parts, part{int32(i), n})
			used += int64(n) * f.pieces[i].uses
		}
	}
	for times := most; times > 0; times-- {
		if !f.may(j, int(times)) {
			continue
		}
		f.book(j, parts, times)
		f.plan.add(pattern{int32(j), parts, used}, int(times))
		if f.descend(ways-1, first) {
			return true
		}
		f.drop()
		f.book(j, parts, -times)
	}
	return false
}

// book takes sticks and what they yield off what is left.
func (f *fewer) book(j int, parts []part, times int32) {
	for _, q := range parts {
		f.need[q.piece] -= q.count * times
	}
	f.left[j] -= int(times)
	f.cost -= f.stocks[j].price * int64(times)
	if f.stocks[j].bought {
		f.buy -= int64(times)
	}
}
