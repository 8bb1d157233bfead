package order

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

// Four piers are lifted and pushed, all fifteen are held to the ground: a set
// each. A joint that is only pushed is no line, but a word on the caps.
func TestWhatTheChecksWantHeldIsOnTheOrder(t *testing.T) {
	in := shed()
	in.Job.Yard.Prices["anchor"] = 12
	in.Holds = []Hold{
		{Joint: "beam to post and post to block", Piers: 11, Level: 90 * measure.PoundForce},
		{Joint: "beam to post and post to block", Piers: 4, Up: 200 * measure.PoundForce, Level: 90 * measure.PoundForce},
		{Joint: "block to ground", ToGround: true, Piers: 15, Level: 40 * measure.PoundForce},
	}
	o := Take(in)
	tie, anchor := find(t, o, "order.tie"), find(t, o, "order.anchor")
	assert.Equal(t, 4, tie.Count)
	assert.Nil(t, tie.Price, "not known")
	assert.Equal(t, 15, anchor.Count)
	cost, known := anchor.Cost()
	assert.True(t, known)
	assert.Equal(t, measure.Money(180), cost)
	assert.Contains(t, find(t, o, "order.cap").Note, "90\u00a0lb")
	assert.Empty(t, find(t, Take(shed()), "order.cap").Note)
}

// A brace at 45° up the whole of a 30 in post is 42.4 in long: 4 ft bought.
func TestTallPostsGetTwoBracesEach(t *testing.T) {
	in := shed()
	in.Braces = Braces{Posts: 3, Tallest: 30 * measure.Inch, Above: 24 * measure.Inch}
	l := find(t, Take(in), "order.brace")
	assert.Equal(t, 6, l.Count)
	assert.Equal(t, 4*measure.Foot, *l.Long)
	// 1 1/2 × 3 1/2 × 48 in is 0.14583 ft³, at 28 lb/ft³ 4.083 lb.
	assert.InDelta(t, 4.0833, float64(l.Each/measure.Pound), 1e-3)
	for _, l := range Take(shed()).Lines {
		assert.NotEqual(t, "order.brace", l.Key)
	}
}
