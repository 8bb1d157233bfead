package cutting

import (
	"cmp"
	"math"
	"slices"

	"pierbook/calc/measure"
)

// piece is one length wanted in the whole-number model: what it takes from a
// stick, kerf included, and how many are needed.
type piece struct {
	uses int64
	need int
}

// stock is one length of stick: its room with one kerf added, since the last
// cut may fall off the end, its price, and how many there are.
type stock struct {
	room   int64
	price  int64
	most   int // unlimited when any number can be bought
	bought bool
	length measure.Length // of the stick before it is trimmed
	names  []string       // of the sticks on hand
}

// model is a problem in whole numbers without a common divisor, the longest
// piece first and the shortest stock length first.
type model struct {
	*budget
	pieces []piece
	stocks []stock
	unit   int64 // nanometres in one unit of length
	coin   int64 // hundredths, or nanometres bought, in one unit of price
}

// unlimited is the number of sticks of a stock length that the yard has enough of.
const unlimited = math.MaxInt32

// build turns the problem into a model. Stock lengths that no piece fits, and those
// that another beats in length and price alike, are left out.
func (p *Problem) build() *model {
	m := &model{budget: newBudget(p.budget()), pieces: p.pieces(), stocks: p.stocks()}
	if len(m.pieces) == 0 {
		return m
	}
	least := m.pieces[len(m.pieces)-1].uses
	m.stocks = slices.DeleteFunc(m.stocks, func(s stock) bool { return s.room < least })
	m.stocks = undominated(m.stocks)
	m.divide(int64(p.Kerf))
	return m
}

func (p *Problem) pieces() []piece {
	var pieces []piece
	for _, wanted := range p.Pieces {
		if wanted.Count > 0 {
			pieces = append(pieces, piece{uses: int64(wanted.Length + p.Kerf), need: wanted.Count})
		}
	}
	slices.SortFunc(pieces, func(a, b piece) int { return cmp.Compare(b.uses, a.uses) })
	merged := pieces[:0]
	for _, k := range pieces {
		if last := len(merged) - 1; last >= 0 && merged[last].uses == k.uses {
			merged[last].need += k.need
		} else {
			merged = append(merged, k)
		}
	}
	return merged
}

func (p *Problem) stocks() []stock {
	var stocks []stock
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
		stocks = append(stocks, stock{room: int64(p.usable(s.Length) + p.Kerf), price: price, most: most, bought: true, length: s.Length})
	}
	for _, s := range p.OnHand {
		if s.Count > 0 {
			stocks = append(stocks, stock{
				room: int64(p.usable(s.Length) + p.Kerf), most: s.Count, length: s.Length, names: slices.Repeat([]string{s.Name}, s.Count),
			})
		}
	}
	slices.SortFunc(stocks, func(a, b stock) int {
		return cmp.Or(cmp.Compare(a.room, b.room), cmp.Compare(b.price, a.price))
	})
	return mergeOnHand(stocks)
}

// mergeOnHand counts sticks on hand of one length together.
func mergeOnHand(stocks []stock) []stock {
	var merged []stock
	for _, s := range stocks {
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
// is no worse by any of the first three goals.
func undominated(stocks []stock) []stock {
	var kept []stock
	cheapest := int64(math.MaxInt64)
	for _, s := range slices.Backward(stocks) {
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
	for _, k := range m.pieces {
		m.unit = divisor(m.unit, k.uses)
	}
	for _, s := range m.stocks {
		m.unit = divisor(m.unit, s.room)
		m.coin = divisor(m.coin, s.price)
	}
	m.unit, m.coin = max(m.unit, 1), max(m.coin, 1)
	for i := range m.pieces {
		m.pieces[i].uses /= m.unit
	}
	for i := range m.stocks {
		m.stocks[i].room /= m.unit
		m.stocks[i].price /= m.coin
	}
}

// divisor returns the greatest common divisor.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
