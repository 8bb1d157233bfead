package kit

import (
	"sort"
	"testing"

	"pgregory.net/rapid"
)

// Places are spread best when moving any run of neighbours together by a little
// either breaks the gap or costs more.
func TestSpreadKeepsTheGapWithTheLeastMoving(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 9).Draw(t, "places")
		sort.Float64s(places)
		gap := rapid.Float64Range(0.5, 8).Draw(t, "gap")
		out := Spread(places, gap, -1000, 1000)
		const step, fuzz = 0.01, 1e-9
		for i := 1; i < len(out); i++ {
			if out[i]-out[i-1] < gap-fuzz {
				t.Fatalf("%v are closer than %v", out, gap)
			}
		}
		for from := range out {
			for to := from + 1; to <= len(out); to++ {
				for _, by := range []float64{-step, step} {
					if crowds(out, from, to, by, gap) {
						continue
					}
					change := 0.0
					for i := from; i < to; i++ {
						change += (out[i]+by-places[i])*(out[i]+by-places[i]) - (out[i]-places[i])*(out[i]-places[i])
					}
					if change < -fuzz {
						t.Fatalf("moving %d to %d of %v by %v would be better", from, to, out, by)
					}
				}
			}
		}
	})
}

// crowds says whether moving a run breaks the gap to its neighbours.
func crowds(out []float64, from, to int, by, gap float64) bool {
	if from > 0 && out[from]+by-out[from-1] < gap {
		return true
	}
	return to < len(out) && out[to]-out[to-1]-by < gap
}

func TestSpreadStaysBetweenTheEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.SliceOfN(rapid.Float64Range(-20, 120), 1, 10).Draw(t, "places")
		sort.Float64s(places)
		for _, at := range Spread(places, 5, 0, 100) {
			if at < 0 || at > 100+1e-9 {
				t.Fatalf("%v leaves the sheet", at)
			}
		}
	})
}
