package strength

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
)

// TestFaultsNameTheChoicesThereAre checks what a user can put right.
func TestFaultsNameTheChoicesThereAre(t *testing.T) {
	for _, c := range []struct {
		name          string
		spoil         func(*job.Job, *Input)
		path          string
		wrong, remedy string
	}{
		{"unknown species", func(j *job.Job, _ *Input) { j.Timber.Species = "ironwood" }, "timber.species", `"ironwood" is not a species`, "hem_fir"},
		{"grade the table lacks", func(j *job.Job, _ *Input) { j.Timber.Grade = "Stud" }, "timber.grade", `no grade "Stud"`, "No.2"},
		{"own timber", func(j *job.Job, _ *Input) {
			j.Frame.Beams.Timber = &job.Timber{Species: "hem_fir", Grade: "Utility"}
		}, "frame.beams.timber.grade", `no grade "Utility"`, "Select Structural"},
		{"given values that are not whole", func(j *job.Job, _ *Input) {
			j.Timber.Values = &job.DesignValues{Bending: 24e6, Source: "EN 338"}
		}, "timber.values", "lack shear", "standard"},
		{"no soil", func(j *job.Job, _ *Input) { j.Site.Soil = job.Soil{} }, "site.soil", "no soil", "gravel"},
		{"no floor load", func(j *job.Job, _ *Input) { j.Platform.FloorLoad = 0 }, "platform.floor_load", "no floor load", "40 psf"},
		{"wall off the platform", func(_ *job.Job, in *Input) {
			in.Walls = []loads.PlacedWall{{Name: "porch", Y1: 13 * ft, X2: 4 * ft, Y2: 13 * ft}}
		}, "building.walls.porch", "stands off the platform", "keep it within"},
		{"slanting wall", func(_ *job.Job, in *Input) { in.Walls = []loads.PlacedWall{{Name: "bay", X2: 4 * ft, Y2: 3 * ft}} }, "building.walls.bay", "neither along nor across", "one x or one y"},
		{"patch off the platform", func(_ *job.Job, in *Input) {
			in.Patches = []loads.Patch{{Name: "tank", X: 15 * ft, Length: 2 * ft, Width: ft, Load: 1}}
		}, "platform.loads.tank", "stands off", "keep it within"},
		{"negative patch", func(_ *job.Job, in *Input) {
			in.Patches = []loads.Patch{{Name: "tank", Length: ft, Width: ft, Load: -5}}
		}, "platform.loads.tank", "is none", "above 0"},
	} {
		j := sample.Shed()
		input := Input{Job: j, Frame: sample.Frame(j)}
		c.spoil(j, &input)
		input.Frame.Sections.Beam.Timber = j.Frame.Beams.Timber
		s, faults := Work(input)
		require.False(t, faults.Empty(), c.name)
		assert.Nil(t, s, c.name)
		f := faults.Sorted()[0]
		assert.Equal(t, c.path, f.Path, c.name)
		assert.Contains(t, f.Wrong, c.wrong, c.name)
		assert.Contains(t, f.Remedy, c.remedy, c.name)
	}
}

// TestBracingAndHeight checks posts above 24 in and piers above 36 in.
func TestBracingAndHeight(t *testing.T) {
	j := sample.Shed()
	f := sample.Frame(j)
	h := heights(f, 9*in)
	h["A1"] = statics.Height{Post: 30 * in, Stone: 6 * in}
	h["C1"] = statics.Height{Post: 32 * in, Stone: 6 * in}
	s, faults := Work(Input{Job: j, Frame: f, Heights: h})
	require.NoError(t, faults.Err())
	braced, _ := s.Find("pier.A1.bracing")
	assert.True(t, braced.Holds(), "knee braces are sized")
	assert.Contains(t, strings.Join(braced.Working, " "), "braced both ways")
	low, _ := s.Find("pier.A2.bracing")
	assert.Empty(t, low.Needs)
	tall, _ := s.Find("pier.C1.height")
	assert.True(t, tall.Fails(), "5 in + 32 in is above 36 in")
	fine, _ := s.Find("pier.A1.height")
	assert.True(t, fine.Holds())
}
