package heights_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/fieldtest"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// One pier of the sample walked by hand, in inches over the bench mark.
//
// Set-up 1: bench mark 0, backsight 50 1/4, so the instrument stands at 50.25.
// TP1 reads 63, so it lies at 50.25 − 63 = −12.75. Set-up 2: backsight 44 on
// TP1 lifts the instrument to −12.75 + 44 = 31.25; the bench mark reads 31 1/4
// and comes out at 0: the book closes exactly and there is nothing to share.
//
// The build-up is 3/4 + 5 1/2 + 5 1/2 + 1/16 = 11.8125.
//
// Ground read: A1 −6.75, A3 −9.25, A5 −11.75, C5 −6.25, C1 −0.75. C1 is highest.
// A dug pier's seat may lie as low as its rules let it, for C1: rock at 7 1/2 with a
// bed of 2 puts the stone's top 5 1/2 under the ground, but the seat must stand 1/2
// over it: the cover is at most 5 − 1/2 = 4.5, the seat at least −0.75 + 0.5 =
// −0.25, and with a 3 in post under 11.8125 the floor at least 14.5625. The beam
// line asks for −0.75 + 1 + 11.8125 = 12.0625 only. Rounded up to 1/4 the floor
// is 14.75, the tops of the posts are at 14.75 − 11.8125 = 2.9375.
//
// At C1 the seat lies between 2.9375 − 24 and 2.9375 − 3 = −0.0625, so the cover
// is at least −0.75 + 5 + 0.0625 = 4.3125 and at most 4.5. The dig is the rock's
// 7 1/2 (more than 4.3125 + 2), the stone the greater of 2 and 7.5 − 4.5 = 3. The
// seat is −0.75 − 7.5 + 3 + 5 = −0.25 and the post 2.9375 + 0.25 = 3.1875.
//
// At A1 firm ground is 8 1/2 down. The cover lies between the embed's 2 (−6.75 + 5 +
// 0.0625 is below it) and 4.5. The dig is 8.5, the stone 6 (8.5 − 4.5 is less). The
// seat is −6.75 − 8.5 + 6 + 5 = −4.25 and the post 2.9375 + 4.25 = 7.1875.
func TestOnePierWalkedByHand(t *testing.T) {
	g := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	assert.Equal(t, job.Surveyed, g.Progress)
	assert.True(t, g.Book.Closed())
	assert.True(t, g.Book.Checks.Agree())
	assert.Equal(t, fieldtest.In(14.5625), g.Floor.Lowest)
	assert.Equal(t, fieldtest.In(14.75), g.Floor.Height)
	assert.Equal(t, fieldtest.In(2.9375), g.Floor.PostTops)
	assert.Equal(t, heights.Demand{Name: "C1", Limit: heights.SeatAboveGround, Floor: fieldtest.In(14.5625)}, g.Floor.Governs)

	for _, row := range []struct {
		name                     string
		ground, dig, stone, post float64
	}{
		{"C1", -0.75, 7.5, 3, 3.1875},
		{"A1", -6.75, 8.5, 6, 7.1875},
	} {
		p := fieldtest.Pier(t, g, row.name)
		assert.True(t, p.Level.Read, row.name)
		assert.Equal(t, fieldtest.In(row.ground), p.Level.Height, row.name)
		assert.Equal(t, fieldtest.In(row.dig), p.Hole.Dig, row.name)
		assert.Equal(t, fieldtest.In(row.stone), p.Hole.Stone, row.name)
		assert.Equal(t, fieldtest.In(row.post), p.Hole.Post, row.name)
		assert.Equal(t, g.Floor.PostTops, p.Hole.Seat+p.Hole.Post, row.name)
	}
	// A5 is dug to firm ground at 13 1/2; the stone fills up to the deepest cover, 4.5.
	assert.Equal(t, fieldtest.In(9), fieldtest.Pier(t, g, "A5").Hole.Stone)
	// The window at A1: 8 would serve were something firm met there (2 of cover
	// and 6 of stone), and 12 of stone under 4.5 of cover is the most, 16.5.
	assert.Equal(t, fieldtest.In(8), fieldtest.Pier(t, g, "A1").Hole.Least)
	assert.Equal(t, fieldtest.In(16.5), fieldtest.Pier(t, g, "A1").Hole.Most)
}

func TestPiersNotReadAreEstimatedWithAnError(t *testing.T) {
	g := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	p := fieldtest.Pier(t, g, "B3")
	assert.False(t, p.Level.Read)
	assert.Positive(t, p.Level.Error)
	assert.False(t, p.Level.Beyond)
	low, high := fieldtest.In(-12), fieldtest.In(0)
	assert.True(t, p.Level.Height > low && p.Level.Height < high, "%v", p.Level.Height)
}

func TestWithoutReadingsTheJobIsPlannedAndEveryKeyIsThere(t *testing.T) {
	planned := fieldtest.Work(t, fieldtest.TermsJob(), fieldtest.SampleFrame())
	assert.Equal(t, job.Planned, planned.Progress)
	assert.Nil(t, planned.Floor)
	surveyed := map[string]bool{}
	for _, f := range fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame()).Figures(fieldtest.SampleJob()) {
		surveyed[f.Key] = true
		assert.NotEmpty(t, f.Means, f.Key)
	}
	for _, f := range planned.Figures(fieldtest.TermsJob()) {
		assert.True(t, surveyed[f.Key], f.Key)
		if f.Key == "pier.A1.post" || f.Key == "floor.height" || f.Key == "stone.order" {
			assert.Nil(t, f.Value, f.Key)
		}
	}
}

func TestFiguresOfTheSample(t *testing.T) {
	j := fieldtest.SampleJob()
	values := map[string]measure.Quantity{}
	for _, f := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Figures(j) {
		_, twice := values[f.Key]
		assert.False(t, twice, f.Key)
		values[f.Key] = f.Value
	}
	assert.Equal(t, fieldtest.In(14.75), values["floor.height"])
	assert.Equal(t, measure.Word("C1"), values["floor.governed_by"])
	assert.Equal(t, fieldtest.In(7.1875), values["pier.A1.post"])
	assert.Equal(t, measure.Word("read"), values["pier.A1.ground_from"])
	assert.Equal(t, measure.Word("estimated"), values["pier.B3.ground_from"])
	assert.Equal(t, measure.Count(5), values["ground.read"])
	assert.Equal(t, fieldtest.In(20), values["hole.side"])
}
