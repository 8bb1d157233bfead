package terrain_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// A tape along a slope, common in handbooks as rise² / 2L: in 20 ft 0.075 in for
// 6 in of rise and 0.30 in for 1 ft.
func TestSlopeErrorOfTapedLines(t *testing.T) {
	f := fieldtest.GridFrame(20*measure.Foot+fieldtest.In(3.5), 10*measure.Foot, 2, 2)
	for _, row := range []struct{ rise, want float64 }{{6, 0.075}, {12, 0.30}} {
		j := fieldtest.TermsJob()
		j.Ground.SetUps = [][]job.Sight{fieldtest.Sights("bench_mark", 60.0, "A1", 60.0, "A2", 60.0-row.rise, "B1", 60.0, "B2", 60.0-row.rise)}
		lines := fieldtest.Work(t, j, f).TapedLines(f)
		require.Len(t, lines, 6)
		assert.Equal(t, 20*measure.Foot, lines[0].Level)
		assert.InDelta(t, row.want, lines[0].TooLong.Inches(), 0.001)
		assert.Zero(t, lines[1].TooLong, "across the slope")
	}
}

func TestDropsBesideTheFloor(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
	g := fieldtest.Work(t, j, f)
	drops := g.Heights.Drops
	require.Len(t, drops, 4)
	// The ground falls along the lines by 2 in 100 and rises across by 3: the
	// lowest place within 36 in of the floor is off the far end of line A.
	worst := terrain.WorstDrop(drops)
	assert.False(t, worst.Read)
	ends := g.Floor.Height - (-f.Length.Scale(0.02) - fieldtest.In(36).Scale(0.02))
	assert.InDelta(t, ends.Inches(), drops[1].Drop.Inches(), 0.001)

	j.Ground.Spots["pit"] = job.Spot{X: fieldtest.In(96), Y: fieldtest.In(-36)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "pit", Reading: fieldtest.In(60 + 25)})
	pit := fieldtest.Work(t, j, f).Heights.Drops[0]
	assert.True(t, pit.Read)
	assert.Equal(t, fieldtest.In(-25), pit.Ground)
}

func TestHumpsBetweenThePiersAreFound(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
	assert.Empty(t, fieldtest.Work(t, j, f).Heights.Humps)
	// A mound half-way between A1 and A2, read just outside the beam.
	j.Ground.Spots["mound"] = job.Spot{X: fieldtest.In(24), Y: fieldtest.In(-1)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "mound", Reading: fieldtest.In(60 - 14)})
	j.Platform.Floor = job.Floor{Height: fieldtest.In(24)}
	humps := fieldtest.Work(t, j, f).Heights.Humps
	require.NotEmpty(t, humps)
	assert.Equal(t, "beam A", humps[0].Under)
	assert.Equal(t, fieldtest.In(24), humps[0].X)
	assert.Positive(t, humps[0].Lower)
}

// Between two lines the ground is looked at all the way across, and not in the
// middle alone: what is found comes near the worst of a far closer look.
func TestTheWorstHumpBetweenTwoLinesIsFound(t *testing.T) {
	f := fieldtest.SampleFrame()
	j := fieldtest.AllRead()
	j.Platform.Floor = job.Floor{Height: fieldtest.In(22)}
	// A knoll just outside the frame, near the corner of line A, lifts the ground
	// beside that line more than half-way to the next.
	j.Ground.Spots["knoll"] = job.Spot{X: fieldtest.In(-2), Y: f.Lines[0].Y + fieldtest.In(14)}
	j.Ground.SetUps[0] = append(j.Ground.SetUps[0], job.Sight{Point: "knoll", Reading: fieldtest.In(60 - 24)})
	g := fieldtest.Work(t, j, f)
	humps := g.Heights.Humps
	i := slices.IndexFunc(humps, func(h terrain.Hump) bool { return h.Under == "the joists between A and B" })
	require.GreaterOrEqual(t, i, 0)
	underside := g.Floor.Height - f.BuildUp.Surface - f.BuildUp.Joist
	var worst, middle measure.Length
	for x := measure.Length(0); x <= f.Length; x += measure.Inch {
		for y := f.Lines[0].Y; y <= f.Lines[1].Y; y += measure.Inch {
			worst = max(worst, g.Surface.At(x, y)+j.Frame.Clear-underside)
		}
		middle = max(middle, g.Surface.At(x, f.Lines[0].Y+(f.Lines[1].Y-f.Lines[0].Y)/2)+j.Frame.Clear-underside)
	}
	assert.Greater(t, worst, middle+fieldtest.In(2), "the middle alone would not show it")
	assert.Greater(t, humps[i].Lower, worst-fieldtest.In(1.75))
}

func TestFallOfThePlane(t *testing.T) {
	f := fieldtest.SampleFrame()
	fall := fieldtest.Work(t, fieldtest.AllRead(), f).Fall(f)
	assert.InDelta(t, -0.02, float64(fall.SlopeX), 1e-9)
	assert.InDelta(t, 0.03, float64(fall.SlopeY), 1e-9)
	assert.InDelta(t, (f.Length.Scale(0.02) + f.Width.Scale(0.03)).Inches(), fall.Difference.Inches(), 1e-6)
	assert.False(t, fall.WaterGathers)
}
