package support

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// inPounds is a moment in pounds times inches.
func inPounds(m measure.Moment) float64 { return float64(m) / (float64(lbf) * 0.0254) }

// TestBlockTips: derived, computed here. 470 lb on a 12 in block whose post's head
// stands 28.2 in over the bed. By hand: on rigid ground 470·6/28.2 = 100.0 lb; on
// 3,000 psf the toe is 470/(3000·1) = 0.1567 ft = 1.88 in wide, 470·(12 − 1.88)/2/28.2 = 84.3 lb.
func TestBlockTips(t *testing.T) {
	b := PierBlock{Block: job.Block{Base: measure.Foot}, Rules: check.Rules{StoneBearing: psf(3000)}}
	assert.InDelta(t, 84.3, inPounds(b.Upholds(470*lbf))/28.2, .1)
	b.Rules.StoneBearing = psf(1e9)
	assert.InDelta(t, 100, inPounds(b.Upholds(470*lbf))/28.2, .1)
	for h, want := range map[float64]float64{8: 173.3, 14: 303.3, 20: 433.3, 28.2: 611} {
		assert.InDelta(t, 130, inPounds(b.Upholds(measure.Force(want)*lbf))/h, .1, "least load for 130 lb at %.1f in", h)
	}
	assert.Zero(t, b.Upholds(-5*lbf), "a block that lifts holds nothing")
}

// TestPostTipsOnItsSeat: derived, computed here: dry, 470·3.5/2/23.2 = 35.5 lb. A
// limb of 100 lb adds 100·3.5/23.2 = 15.1; a post that lifts with 60 lb keeps 100 − 30.
func TestPostTipsOnItsSeat(t *testing.T) {
	u := Upright{Side: 7 * measure.Inch / 2}
	assert.InDelta(t, 35.5, inPounds(u.OnSeat(470*lbf, 1))/23.2, .1)
	u.Limb = check.Fastening{Count: 1, One: 100 * lbf}
	assert.InDelta(t, 35.5+15.1, inPounds(u.OnSeat(470*lbf, 1))/23.2, .1)
	assert.InDelta(t, 70*3.5, inPounds(u.OnSeat(-60*lbf, 1)), .1)
	assert.Zero(t, u.OnSeat(-300*lbf, 1))
}

// TestShortPostsTakeMost: derived, computed here: posts of 3, 12 and 24 in on stiff
// bases go as 1/h³: 0.9827, 0.0154, 0.0019; on blocks that rock, as 1/h²: 0.9275, 0.0580, 0.0145.
func TestShortPostsTakeMost(t *testing.T) {
	none := []float64{9, 9, 9}
	for _, c := range []struct {
		stiff, want []float64
	}{
		{[]float64{1. / 27, 1. / 1728, 1. / 13824}, []float64{.9827, .0154, .0019}},
		{[]float64{1. / 9, 1. / 144, 1. / 576}, []float64{.9275, .0580, .0145}},
	} {
		got, over := Shed(1, c.stiff, none)
		assert.InDeltaSlice(t, c.want, got, 2e-4)
		assert.InDelta(t, 1./27, over, 1e-9)
	}
}

// TestPiersAtTheirLimitShed: derived, computed here: 600, 900 and 470 lb on 12 in
// blocks with heads at 8, 14 and 28.2 in hold 450, 385.7 and 100 lb, 935.7 together.
func TestPiersAtTheirLimitShed(t *testing.T) {
	limits, stiff := []float64{450, 385.7, 100}, []float64{1. / 64, 1. / 196, 1. / 795}
	got, over := Shed(935.7, stiff, limits)
	assert.InDeltaSlice(t, limits, got, 1e-6, "at the row's limit all rock")
	assert.InDelta(t, 1, over, 1e-9)
	got, _ = Shed(500, stiff, limits)
	assert.InDelta(t, 500, got[0]+got[1]+got[2], 1e-6)
	assert.LessOrEqual(t, got[0], 450.0)
	got, over = Shed(1871.4, stiff, limits)
	assert.InDelta(t, 2, over, 1e-6)
	assert.InDelta(t, 900, got[0], 1e-6)
	got, over = Shed(100, stiff, []float64{0, 0, 0})
	assert.InDelta(t, 99, over, 1e-6, "nothing to hold it is no pass")
	assert.InDelta(t, 100, got[0]+got[1]+got[2], 1e-6)
}

// TestNothingPassesByDividing: a push a thousand times too big is told by a thousand,
// up to what ratios are cut off at, and one post that takes all alone is not let off.
func TestNothingPassesByDividing(t *testing.T) {
	u := Upright{Side: 7 * measure.Inch / 2, Knees: Knees{From: measure.Metre}, Stiffness: 2e4, Rocks: 3e4, Upholds: PierBlock{Block: job.Block{Base: measure.Foot}, Rules: check.Rules{StoneBearing: psf(3000)}}.Upholds, Anchors: "anchors", Brace: "braces"}
	piers := []statics.PierLoad{{Name: "A1", Height: statics.Height{Post: measure.Foot}}, {Name: "A2", Height: statics.Height{Post: 2 * measure.Foot}}}
	push := Push{What: "wind", Force: 10 * lbf, Duration: 1.6, Press: func(*statics.PierLoad) measure.Force { return 400 * lbf }}
	small := u.Checks(piers, []Push{push})
	push.Force *= 1000
	big := u.Checks(piers, []Push{push})
	_, _, levels := u.Holds(piers, []Push{push})
	for i := range small {
		assert.True(t, small[i].Check.Holds(), small[i].Check.ID)
		assert.Greater(t, float64(big[i].Check.Ratio), 30.0, big[i].Check.ID)
		assert.NotEmpty(t, big[i].Check.Needs)
	}
	assert.InDelta(t, 10000, float64((levels[0]+levels[1])/lbf), 1e-6)
}

// TestKneeBrace: derived, computed here. 130 lb on a post 36 in high with a leg of 18 in
// puts √2·130·36/18 = 367.7 lb in the brace; with a leg of three quarters, √2·130/0.75 = 245.1.
// The block of a braced post is pushed at its seat: 100·5 in, not 100·29.
func TestKneeBrace(t *testing.T) {
	assert.InDelta(t, 367.7*18/27, float64(Thrust(130*lbf)/lbf), .1)
	p := statics.PierLoad{Name: "A1", HeightKnown: true, Height: statics.Height{Post: 36 * measure.Inch}, Most: 100 * lbf}
	k := Knees{From: 24 * measure.Inch, Usual: 24 * measure.Inch, End: check.Fastening{Count: 4, One: 60 * lbf}, Most: 6}
	assert.InDelta(t, 130*36*240/245.1, inPounds(k.Holds(&p, 1)), 5)
	p.Most = 6500 * lbf // 2 per cent of it is 130 lb: four screws of 60 lb do not hold 245.1 lb, five do
	assert.False(t, k.Check(&p, k.From, check.Words{}).Check.Holds())
	k.End.Count = 5
	assert.True(t, k.Check(&p, k.From, check.Words{}).Check.Holds())

	u := Upright{Seat: 5 * measure.Inch, Side: 7 * measure.Inch / 2, Stiffness: 2e4, Rocks: 3e4, Knees: k,
		Upholds: PierBlock{Block: job.Block{Base: measure.Foot}, Rules: check.Rules{StoneBearing: psf(3000)}}.Upholds}
	push := Push{What: "wind", Force: 100 * lbf, Duration: 1, Press: func(*statics.PierLoad) measure.Force { return 300 * lbf }}
	for _, f := range u.Checks([]statics.PierLoad{p}, []Push{push})[1:] {
		assert.InDelta(t, 500, inPounds(f.Check.Demand.(measure.Moment)), .1)
		assert.True(t, f.Check.Holds())
	}
}

// TestLimitOfTheJobIsNamed checks that a limit that the job sets is told as such,
// with the usual one beside it.
func TestLimitOfTheJobIsNamed(t *testing.T) {
	p := statics.PierLoad{Name: "A1", HeightKnown: true, Height: statics.Height{Post: 36 * measure.Inch}}
	k := Knees{From: 60 * measure.Inch, Usual: 24 * measure.Inch}
	assert.Contains(t, k.Check(&p, k.From, check.Words{}).Check.Clause, "set by the job; the usual is 2")
	k.From = k.Usual
	assert.NotContains(t, k.Check(&p, k.From, check.Words{}).Check.Clause, "set by the job")
}
