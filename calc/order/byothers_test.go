package order

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

// Ten piers are held to the ground: a set each, with the greatest lift and where
// it is. What cap and strap hold is no line of its own, but a word on the caps.
func TestWhatTheChecksWantHeldIsOnTheOrder(t *testing.T) {
	in := shed()
	in.Job.Yard.Prices["anchor"] = 12
	in.Holds = []Hold{
		{Joint: "beam to post and post to block", Piers: 15, Up: 200 * measure.PoundForce, Level: 90 * measure.PoundForce},
		{Joint: "block to ground", ToGround: true, Piers: 10, Up: 150 * measure.PoundForce, At: "A5", Level: 40 * measure.PoundForce},
	}
	o := Take(in)
	anchor := find(t, o, "order.anchor")
	assert.Equal(t, 10, anchor.Count)
	assert.Contains(t, anchor.Note, "at A5")
	cost, known := anchor.Cost()
	assert.True(t, known)
	assert.Equal(t, measure.Money(120), cost)
	assert.Contains(t, find(t, o, "order.cap").Note, "90\u00a0lb")
	assert.Empty(t, find(t, Take(shed()), "order.cap").Note)
}

// A strap under a 12 in block with its seat 5 in up and a 4×4 post: by hand
// 12 + 2·√(5² + 4.25²) + 2·4·0.75 = 31.12 in, 32 in bought; three nails in each end of
// fifteen are 90. To the beam it grows by twice the longest post and its cap, and the
// nails double.
func TestEveryBlockGetsItsStrap(t *testing.T) {
	in := shed()
	in.Job.Block.Base, in.Job.Block.SeatHeight = measure.Foot, 5*measure.Inch
	in.Straps = Straps{Nails: 3}
	o := Take(in)
	l := find(t, o, "order.strap")
	assert.Equal(t, len(in.Frame.Piers), l.Count)
	assert.Contains(t, l.What, measure.Length(32*measure.Inch).Print(in.Job.Style()))
	nails, _ := o.Joint("strap-nails")
	assert.Equal(t, 2*3*len(in.Frame.Piers), nails.Count)
	in.Straps.ToBeam = true
	nails, _ = Take(in).Joint("strap-nails")
	assert.Equal(t, 4*3*len(in.Frame.Piers), nails.Count)
}

// A knee brace at 45° up three quarters of a 30 in post is 31.8 in long, 35.3 in with
// the post's width: 3 ft bought; four screws in each of twelve ends are 48.
func TestTallPostsGetTwoBracesEach(t *testing.T) {
	in := shed()
	in.Braces = Braces{Posts: 3, Screws: 4, Tallest: 30 * measure.Inch, Above: 24 * measure.Inch}
	l := find(t, Take(in), "order.brace")
	assert.Equal(t, 6, l.Count)
	assert.Equal(t, 3*measure.Foot, *l.Long)
	screws, _ := Take(in).Joint("brace-screws")
	assert.Equal(t, 48, screws.Count)
	// 1 1/2 × 3 1/2 × 36 in is 0.109375 ft³, at 28 lb/ft³ 3.0625 lb.
	assert.InDelta(t, 3.0625, float64(l.Each/measure.Pound), 1e-3)
	for _, l := range Take(shed()).Lines {
		assert.NotEqual(t, "order.brace", l.Key)
	}
}
