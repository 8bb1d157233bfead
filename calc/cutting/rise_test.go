package cutting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// drawn draws a problem of some twenty pieces whose prices do not quite go by
// the length.
func drawn(t *rapid.T) Problem {
	p := Problem{Kerf: measure.Length(rapid.IntRange(0, 2).Draw(t, "kerf"))}
	for range rapid.IntRange(2, 4).Draw(t, "lengths") {
		length := rapid.IntRange(60, 120).Draw(t, "stock")
		p.Stock = append(p.Stock, Stock{Length: measure.Length(length), Price: int64(length*10 + rapid.IntRange(-30, 30).Draw(t, "price")), Priced: true})
	}
	for range rapid.IntRange(2, 6).Draw(t, "pieces") {
		p.Pieces = append(p.Pieces, Piece{Length: measure.Length(rapid.IntRange(9, 58).Draw(t, "piece")), Count: rapid.IntRange(1, 6).Draw(t, "count")})
	}
	for range rapid.IntRange(0, 2).Draw(t, "sticks") {
		p.OnHand = append(p.OnHand, Stick{Length: measure.Length(rapid.IntRange(20, 70).Draw(t, "on hand")), Count: 1})
	}
	return p
}

// TestRisingFindsTheLeastCost compares the search from the bound upwards with
// that from a plan downwards, and the floor it leaves when it is cut short.
func TestRisingFindsTheLeastCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		m := p.build()
		down := m.task(m.prices()).answer(m.task(m.prices()).start(), DefaultNodes)
		require.True(t, down.closed)
		run := func(nodes int) (*search, bool) {
			task := m.task(m.prices())
			s := &search{task: task, limit: math.MaxInt, weight: math.MaxInt64}
			s.offer(task.start())
			s.seeds = nil
			task.floor = task.quickBound().bound
			closed := s.rise(nodes, func() bool { return s.explore(nil, 1) })
			return s, closed
		}
		s, closed := run(math.MaxInt / 2)
		require.True(t, closed)
		require.Equal(t, down.weight, s.weight)
		s, closed = run(rapid.IntRange(1, 60).Draw(t, "nodes"))
		if !closed {
			require.LessOrEqual(t, s.floor, down.weight, "the floor rose past the best plan")
		}
	})
}
