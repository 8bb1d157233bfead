package cutting

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// packs puts the pieces, given one by one, into the rooms in the plainest way, by trying
// every piece in every room.
func packs(takes, rooms []int64) bool {
	if len(takes) == 0 {
		return true
	}
	for j := range rooms {
		if slices.Index(rooms, rooms[j]) == j && rooms[j] >= takes[0] {
			rooms[j] -= takes[0]
			ok := packs(takes[1:], rooms)
			rooms[j] += takes[0]
			if ok {
				return true
			}
		}
	}
	return false
}

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

// few draws a model of up to nine pieces.
func few(t *rapid.T) *model {
	p := drawn(t)
	left := 9
	for i := range p.Pieces {
		p.Pieces[i].Count = min(p.Pieces[i].Count, left)
		left -= p.Pieces[i].Count
	}
	return p.build()
}

// everyCombination calls do with every number of sticks of each stock length up to the
// weight, all sticks on hand taken as the search takes them.
func everyCombination(t *task, sticks []int, j int, weight int64, do func(sticks []int)) {
	if j == len(t.stocks) {
		do(sticks)
		return
	}
	if t.free(j) {
		sticks[j] = t.stocks[j].most
		everyCombination(t, sticks, j+1, weight, do)
		return
	}
	for n := 0; int64(n)*t.weight[j] <= weight; n++ {
		sticks[j] = n
		everyCombination(t, sticks, j+1, weight-int64(n)*t.weight[j], do)
	}
}

// TestCombinationsLeaveOutNoneThatPacks goes through all numbers of sticks within
// the target: those that pack are on the list, and the search of one on the list
// tells the same as trying every piece in every stick.
func TestCombinationsLeaveOutNoneThatPacks(t *testing.T) {
	packed := 0
	rapid.Check(t, func(t *rapid.T) {
		task := few(t).start()
		if task == nil || len(task.stocks) == 1 {
			return
		}
		var takes []int64
		for _, k := range task.pieces {
			takes = append(takes, slices.Repeat([]int64{k.uses}, k.need)...)
		}
		list, whole := task.combinations()
		require.True(t, whole)
		everyCombination(task, make([]int, len(task.stocks)), 0, task.target, func(sticks []int) {
			var rooms []int64
			for j, n := range sticks {
				rooms = append(rooms, slices.Repeat([]int64{task.stocks[j].room}, n)...)
			}
			want := packs(takes, rooms)
			at := slices.IndexFunc(list, func(c combination) bool { return slices.Equal(c.sticks, sticks) })
			if at < 0 {
				require.False(t, want, "%v packs and is not on the list", sticks)
				return
			}
			one := *task
			one.target, one.floor = list[at].weight, list[at].weight
			c := &combining{search: &search{task: &one, weight: math.MaxInt64}}
			require.True(t, c.yieldsAll(&list[at], 10*longList*stepsOfPattern))
			require.Equal(t, want, c.best != nil, "%v", sticks)
			if want {
				packed++
				yields := make([]int, len(task.pieces))
				for i, q := range c.best.patterns {
					require.LessOrEqual(t, q.used, task.stocks[q.stock].room)
					for _, r := range q.parts {
						yields[r.piece] += int(r.count) * c.best.times[i]
					}
				}
				for i, k := range task.pieces {
					require.Equal(t, k.need, yields[i])
				}
			}
		})
	})
	require.NotZero(t, packed)
}

// start returns the task of the least cost with a quick plan as its target, or
// nil when there is none.
func (m *model) start() *task {
	if len(m.pieces) == 0 {
		return nil
	}
	t := m.task(m.prices())
	l := t.start()
	if l == nil {
		return nil
	}
	t.target = l.weighs(t.weight)
	return t
}

func TestACombinationCoversThoseOfShorterSticks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		task := few(t).start()
		if task == nil {
			return
		}
		list, _ := task.combinations()
		for _, a := range list {
			for _, b := range list {
				if !a.covers(&b, task) {
					continue
				}
				// Each stick of b has one of a, as long or longer, for itself.
				left := slices.Clone(a.sticks)
				for j := len(left) - 1; j >= 0; j-- {
					for range b.sticks[j] {
						at := len(left) - 1
						for at >= j && left[at] == 0 {
							at--
						}
						require.GreaterOrEqual(t, at, j, "%v covers %v", a.sticks, b.sticks)
						left[at]--
					}
				}
			}
		}
	})
}
