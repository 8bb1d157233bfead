package cutting

import (
	"cmp"
	"math"
	"slices"

	"pierbook/calc/measure"
)

// kind is one length of piece in the whole-number model: what it takes from a
// stick, kerf included, and how many are needed.
type kind struct {
	take int64
	need int
}

// shelf is one length of stick: its room with one kerf added, since the last
// cut may fall off the end, its price, and how many there are.
type shelf struct {
	room   int64
	price  int64
	most   int // unlimited when any number can be bought
	bought bool
	length measure.Length // of the stick before it is trimmed
	names  []string       // of the sticks on hand
}

// model is a problem in whole numbers without a common divisor, the longest
// kind first and the shortest shelf first.
type model struct {
	*budget
	kinds   []kind
	shelves []shelf
	unit    int64 // nanometres in one unit of length
	coin    int64 // hundredths, or nanometres bought, in one unit of price
}

// unlimited is the number of sticks on a shelf of the yard.
const unlimited = math.MaxInt32

// build turns the problem into a model. Shelves that no piece fits, and those
// that another beats in length and price alike, are left out.
func (p *Problem) build() *model {
	m := &model{budget: newBudget(p.budget()), kinds: p.kinds(), shelves: p.shelves()}
	if len(m.kinds) == 0 {
		return m
	}
	least := m.kinds[len(m.kinds)-1].take
	m.shelves = slices.DeleteFunc(m.shelves, func(s shelf) bool { return s.room < least })
	m.shelves = undominated(m.shelves)
	m.divide(int64(p.Kerf))
	return m
}

func (p *Problem) kinds() []kind {
	var kinds []kind
	for _, piece := range p.Pieces {
		if piece.Count > 0 {
			kinds = append(kinds, kind{take: int64(piece.Length + p.Kerf), need: piece.Count})
		}
	}
	slices.SortFunc(kinds, func(a, b kind) int { return cmp.Compare(b.take, a.take) })
	merged := kinds[:0]
	for _, k := range kinds {
		if last := len(merged) - 1; last >= 0 && merged[last].take == k.take {
			merged[last].need += k.need
		} else {
			merged = append(merged, k)
		}
	}
	return merged
}

func (p *Problem) shelves() []shelf {
	var shelves []shelf
	priced := p.priced()
	for _, s := range p.Stock {
		price := int64(s.Length)
		if priced {
			price = s.Price
		}
		most := unlimited
		if s.Sticks > 0 {
			most = s.Sticks
		}
		shelves = append(shelves, shelf{room: int64(p.usable(s.Length) + p.Kerf), price: price, most: most, bought: true, length: s.Length})
	}
	for _, s := range p.OnHand {
		if s.Count > 0 {
			shelves = append(shelves, shelf{
				room: int64(p.usable(s.Length) + p.Kerf), most: s.Count, length: s.Length, names: slices.Repeat([]string{s.Name}, s.Count),
			})
		}
	}
	slices.SortFunc(shelves, func(a, b shelf) int {
		return cmp.Or(cmp.Compare(a.room, b.room), cmp.Compare(b.price, a.price))
	})
	return mergeOnHand(shelves)
}

// mergeOnHand puts sticks on hand of one length on one shelf.
func mergeOnHand(shelves []shelf) []shelf {
	var merged []shelf
	for _, s := range shelves {
		last := len(merged) - 1
		if last >= 0 && !s.bought && !merged[last].bought && merged[last].room == s.room {
			merged[last].most += s.most
			merged[last].names = append(merged[last].names, s.names...)
		} else {
			merged = append(merged, s)
		}
	}
	return merged
}

// undominated leaves out each bought length for which a longer or equal one, of
// which there are enough, costs no more: a plan that takes the longer one instead
// is no worse by any of the first three aims.
func undominated(shelves []shelf) []shelf {
	var kept []shelf
	cheapest := int64(math.MaxInt64)
	for _, s := range slices.Backward(shelves) {
		if s.bought && s.price >= cheapest {
			continue
		}
		if s.bought && s.most == unlimited {
			cheapest = s.price
		}
		kept = append(kept, s)
	}
	slices.Reverse(kept)
	return kept
}

// divide takes the common divisors out of lengths, the kerf with them, and of
// prices.
func (m *model) divide(kerf int64) {
	m.unit, m.coin = kerf, 0
	for _, k := range m.kinds {
		m.unit = divisor(m.unit, k.take)
	}
	for _, s := range m.shelves {
		m.unit = divisor(m.unit, s.room)
		m.coin = divisor(m.coin, s.price)
	}
	m.unit, m.coin = max(m.unit, 1), max(m.coin, 1)
	for i := range m.kinds {
		m.kinds[i].take /= m.unit
	}
	for i := range m.shelves {
		m.shelves[i].room /= m.unit
		m.shelves[i].price /= m.coin
	}
}

// divisor returns the greatest common divisor.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
