package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func nailOf(t *testing.T, key string) trade.Nail {
	t.Helper()
	n, known := trade.FindNail(key)
	assert.True(t, known, key)
	return n
}

// TestWithdrawalOfNails: NDS 2018 Table 12.2C, pounds per inch; seen in another's notes.
func TestWithdrawalOfNails(t *testing.T) {
	for _, c := range []struct {
		nail string
		g    measure.Ratio
		want float64
	}{{"8d-common", .5, 32}, {"10d-common", .5, 36}, {"16d-common", .42, 26}} {
		assert.InDelta(t, c.want, float64(Withdrawal(c.g, nailOf(t, c.nail), measure.Inch)/lbf), .5, c.nail)
	}
}

// TestToenailsInWithdrawal: three 8d common. By hand: pt = (2.5·0.8660 − 0.8333)/0.8660 = 1.5377 in,
// W = 1380·0.43^2.5·0.131 = 21.92 lb/in, 3·21.92·1.5377·0.67 = 67.7 lb, in wind × 1.6 = 108.4 lb.
// NDS 2018 12.2-3, C12.5.4 and 12.5.4.1: no CM, so wet or dry is the same.
func TestToenailsInWithdrawal(t *testing.T) {
	assert.InDelta(t, 1.53775, ToenailReach(nailOf(t, "8d-common")).Inches(), 2e-4)
	for _, c := range []struct {
		g           measure.Ratio
		floor, wind float64
	}{{.55, 125.4, 200.6}, {.50, 98.8, 158.0}, {.43, 67.7, 108.4}, {.42, 63.9, 102.2}} {
		m := Member{Service: Service{Wet: true}}
		m.Values.SpecificGravity = c.g
		f := m.ToenailLift()
		assert.InDelta(t, c.floor, float64(f.Holds(1)/lbf), .1)
		assert.InDelta(t, c.wind, float64(f.Holds(1.6)/lbf), .1)
	}
}

// TestFastenersThroughSteel: NDS 2018 Table 12P, 16d through 0.06 in and 8d through
// 0.134 in; Table 12M, no. 8 screws through 16 gauge, the last two computed by a
// second routine; seen in another's notes.
func TestFastenersThroughSteel(t *testing.T) {
	for _, c := range []struct {
		nail  string
		plate float64
		g     measure.Ratio
		want  float64
	}{{"16d-common", .06, .5, 138}, {"8d-common", .134, .5, 117}, {"8d-common", .036, .43, 82.4}, {"cap-screw", .06, .43, 81}, {"cap-screw", .06, .5, 92}} {
		nail := nailOf(t, c.nail)
		got := LateralSteel(c.g, nail, measure.Inch.Scale(c.plate), 10*nail.Diameter)
		assert.InDelta(t, c.want, float64(got/lbf), 1.01, "%s through %.3f in", c.nail, c.plate)
	}
}

// TestScrewBendsAtItsRoot: NDS 2018 Table 12L, no. 10 through 1/2 in at G 0.50: 90 lb.
// With the shank's diameter it would be 122.
func TestScrewBendsAtItsRoot(t *testing.T) {
	for key, want := range map[string]float64{"long-deck-screw": 90, "deck-screw": 73} {
		screw := nailOf(t, key)
		assert.InDelta(t, want, float64(Lateral(.5, screw, measure.Inch/2, 10*screw.Diameter)/lbf), .6, key)
	}
}

// TestStrap: 1 1/4 in × 20 gauge of Grade 33 (AISI S100, from memory): gross
// 33000·1.25·0.036/1.67 = 889 lb, net 45000·(1.25 − 0.1935)·0.036/2 = 856 lb. 395 lb of
// lift in wind wants three 8d nails of 82.4 lb at each end (82.4·1.6 = 131.8), five if wet.
func TestStrap(t *testing.T) {
	assert.InDelta(t, 856, float64(StrapSteel(measure.Inch.Scale(1.25), measure.Inch.Scale(.036))/lbf), 1)
	eight := check.Fastening{Count: 3, One: 82.4 * lbf, Steel: 856 * lbf}
	assert.GreaterOrEqual(t, float64(eight.Holds(1.6)/lbf), 395.0)
	eight.Factors = []check.Factor{{Symbol: "CM", Value: wetNails}}
	assert.Less(t, float64(eight.Holds(1.6)/lbf), 395.0)
	eight.Count = 4
	assert.Less(t, float64(eight.Holds(1.6)/lbf), 395.0)
	eight.Count = 5
	assert.GreaterOrEqual(t, float64(eight.Holds(1.6)/lbf), 395.0)
	eight.Count = 40
	assert.Equal(t, 856*lbf, eight.Holds(1.6))
}
