package frame_test

import (
	"cmp"
	"math/bits"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

// joining is what the choice of splices keeps least, in this order.
type joining struct {
	plies, joints, lines int
	bought, spread       Length
}

func (a joining) compare(b joining) int {
	return cmp.Or(cmp.Compare(a.plies, b.plies), cmp.Compare(a.joints, b.joints), cmp.Compare(a.lines, b.lines),
		cmp.Compare(a.bought, b.bought), cmp.Compare(a.spread, b.spread))
}

// rate judges a choice: for every line and ply the set of inner piers with a joint.
func rate(sets [][]uint, own map[uint]joining) joining {
	var all joining
	under := make([]uint, len(sets))
	for i, line := range sets {
		for k, set := range line {
			o := own[set]
			all.joints += o.joints
			all.bought += o.bought
			all.spread += o.spread
			under[i] |= set
			if k > 0 {
				all.plies += bits.OnesCount(set & line[k-1])
			}
		}
		if i > 0 {
			all.lines += bits.OnesCount(under[i] & under[i-1])
		}
	}
	return all
}

// every returns what each set of inner piers costs as joints of one ply, for the
// sets whose pieces can be bought.
func every(from, to Length, inner []Length, stock []Length) map[uint]joining {
	own := map[uint]joining{}
	for set := range uint(1) << len(inner) {
		at, fits := from, true
		cost := joining{}
		short, long := to, Length(0)
		for i := 0; i <= len(inner); i++ {
			next := to
			if i < len(inner) {
				if set>>i&1 == 0 {
					continue
				}
				next = inner[i]
				cost.joints++
			}
			piece := next - at
			taken := Length(0)
			for _, s := range stock {
				if s >= piece && taken == 0 {
					taken = s
				}
			}
			fits = fits && taken > 0
			cost.bought += taken
			short, long = min(short, piece), max(long, piece)
			at = next
		}
		cost.spread = long - short
		if fits {
			own[set] = cost
		}
	}
	return own
}

// The choice of splices against trying every choice there is.
func TestSplicesAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := shed()
		j.Platform.Length = Length(rapid.IntRange(6, 24).Draw(t, "length")) * ft
		j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, rapid.IntRange(1, 3).Draw(t, "plies")
		j.Frame.Beams.Lines = 2
		if j.Frame.Beams.Plies == 1 {
			j.Frame.Beams.Lines = rapid.IntRange(2, 4).Draw(t, "lines")
		}
		j.Frame.Beams.Inset = 3 * in
		j.Frame.Piers.PerLine = rapid.IntRange(3, 8-j.Frame.Beams.Plies).Draw(t, "piers")
		j.Frame.Piers.First = maybe(t, "first", 24*in)
		stock := rapid.SampledFrom([][]Length{{8}, {8, 12}, {6, 10}, {4, 8, 14}}).Draw(t, "stock")
		j.Yard.Stock["4x6"] = lengths(stock...)
		f, faults := frame.Skeleton(j)
		if !faults.Empty() {
			t.SkipNow()
		}
		inner := innerPiers(f)
		own := every(0, f.Length, inner, stockLengths(j))
		got := rate(setsOf(f, inner), own)
		best := tryAll(own, len(f.Lines), f.Sections.Beam.Plies)
		require.Zero(t, got.compare(best), "got %+v, best %+v", got, best)
	})
}

func stockLengths(j *job.Job) []Length {
	var all []Length
	for _, s := range j.Yard.Stock["4x6"] {
		all = append(all, s.Length)
	}
	return all
}

func innerPiers(f *frame.Frame) []Length {
	var inner []Length
	for _, p := range f.Piers[1 : f.PerLine(0)-1] {
		inner = append(inner, p.X)
	}
	return inner
}

func setsOf(f *frame.Frame, inner []Length) [][]uint {
	var sets [][]uint
	for _, line := range f.Lines {
		var plies []uint
		for _, ply := range line.Plies {
			set := uint(0)
			for _, piece := range ply.Pieces[1:] {
				for i, x := range inner {
					if x == piece.From {
						set |= 1 << i
					}
				}
			}
			plies = append(plies, set)
		}
		sets = append(sets, plies)
	}
	return sets
}

// tryAll rates every choice among the sets with the fewest joints and those with
// one more.
func tryAll(own map[uint]joining, lines, plies int) joining {
	fewest := 64
	for _, o := range own {
		fewest = min(fewest, o.joints)
	}
	var options []uint
	for set, o := range own {
		if o.joints <= fewest+1 {
			options = append(options, set)
		}
	}
	best := joining{plies: 1 << 30}
	choice := make([][]uint, lines)
	for i := range choice {
		choice[i] = make([]uint, plies)
	}
	var fill func(at int)
	fill = func(at int) {
		if at == lines*plies {
			if r := rate(choice, own); r.compare(best) < 0 {
				best = r
			}
			return
		}
		for _, set := range options {
			choice[at/plies][at%plies] = set
			fill(at + 1)
		}
	}
	fill(0)
	return best
}

// A built-up beam of two plies 16 ft long over five piers, from 8 ft and 12 ft
// sticks: the plies join over different piers and the lines take turns.
func TestPliesJoinOverDifferentPiers(t *testing.T) {
	j := shed()
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, 2
	j.Yard.Stock["4x6"] = lengths(8, 12, 14)
	f := lay(t, j)
	for _, line := range f.Lines {
		a, b := line.Plies[0].Pieces, line.Plies[1].Pieces
		require.Len(t, a, 2)
		require.Len(t, b, 2)
		assert.NotEqual(t, a[1].From, b[1].From, line.Name)
		assert.Equal(t, line.Name+"-2b", b[1].Name)
	}
}

// 16 ft of two plies over five piers from sticks of 8 ft: one ply joins over pier
// 3, the other can keep off it only with three pieces, over piers 2 and 4.
func TestPliesTakeOneMorePieceToStagger(t *testing.T) {
	j := shed()
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, 2
	j.Yard.Stock["4x6"] = lengths(8)
	for _, line := range lay(t, j).Lines {
		pieces := len(line.Plies[0].Pieces) + len(line.Plies[1].Pieces)
		assert.Equal(t, 5, pieces, line.Name)
	}
}

func TestStaggerThatCannotBeIsSaid(t *testing.T) {
	j := shed()
	j.Yard.Stock["4x6"] = lengths(8)
	assert.Contains(t, sayings(lay(t, j)), "Neighbouring beams have to join over the piers A3 and B3")
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, 2
	j.Frame.Piers.PerLine = 3
	j.Yard.Stock["4x6"] = lengths(8)
	assert.Contains(t, sayings(lay(t, j)), "have to join over the same pier (A2)")
}
