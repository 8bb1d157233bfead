package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
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
		{"wall off the platform", func(_ *job.Job, in *Input) { in.Walls = []Wall{{Name: "porch", Y1: 13 * ft, X2: 4 * ft, Y2: 13 * ft}} }, "building.walls.porch", "stands off the platform", "keep it within"},
		{"slanting wall", func(_ *job.Job, in *Input) { in.Walls = []Wall{{Name: "bay", X2: 4 * ft, Y2: 3 * ft}} }, "building.walls.bay", "neither along nor across", "one x or one y"},
		{"patch off the platform", func(_ *job.Job, in *Input) {
			in.Patches = []Patch{{Name: "tank", X: 15 * ft, Length: 2 * ft, Width: ft, Load: 1}}
		}, "platform.loads.tank", "stands off", "keep it within"},
		{"negative patch", func(_ *job.Job, in *Input) { in.Patches = []Patch{{Name: "tank", Length: ft, Width: ft, Load: -5}} }, "platform.loads.tank", "is none", "above 0"},
	} {
		j := shed()
		input := Input{Job: j, Frame: frameOf(t, j)}
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

// TestSectionsWithoutValues checks sizes that no table knows.
func TestSectionsWithoutValues(t *testing.T) {
	timber := job.Timber{Species: "hem_fir", Grade: "No.2"}
	for _, c := range []struct {
		section job.Section
		want    string
	}{
		{job.Section{Size: "6x12", Width: 11 * in / 2, Depth: 23 * in / 2, Plies: 1}, "beam-and-stringer"},
		{job.Section{Size: "1x4", Width: in, Depth: 7 * in / 2, Plies: 1}, "under 1 1/4 in"},
		{job.Section{Size: "?"}, "no width and depth"},
	} {
		_, err := LookUp(timber, c.section)
		require.ErrorContains(t, err, c.want)
	}
	_, err := LookUp(job.Timber{Species: "southern_pine", Grade: "No.2"}, job.Section{Size: "2x14", Width: 3 * in / 2, Depth: 53 * in / 4, Plies: 1})
	require.ErrorContains(t, err, "in the size 2x14")
}

// TestGivenValuesAreNotRaised checks that no factor of one standard raises a value
// of another.
func TestGivenValuesAreNotRaised(t *testing.T) {
	ref := Reference{Class: GivenWith, Bending: 10e6, Shear: 1e6, BearingAcross: 2e6, Compression: 8e6, Elastic: 9e9, ElasticMin: 6e9}
	section, ok := SectionOf("45x145 mm", 1)
	require.True(t, ok)
	dry := Adjust(ref, section, Service{Repetitive: true})
	assert.Equal(t, ref.Bending, dry.Bending)
	wet := Adjust(ref, section, Service{Repetitive: true, Wet: true, Incised: true})
	assert.InEpsilon(t, float64(ref.Bending)*.85*.8, float64(wet.Bending), 1e-9)
}

// TestBracingAndHeight checks posts above 24 in and piers above 36 in.
func TestBracingAndHeight(t *testing.T) {
	j := shed()
	f := frameOf(t, j)
	h := heights(f, 9*in)
	h["A1"] = Height{Post: 30 * in, Stone: 6 * in}
	h["C1"] = Height{Post: 32 * in, Stone: 6 * in}
	s, faults := Work(Input{Job: j, Frame: f, Heights: h})
	require.NoError(t, faults.Err())
	braced, _ := s.Find("pier.A1.bracing")
	assert.False(t, braced.Fails())
	assert.Contains(t, braced.Needs, "bracing both ways")
	low, _ := s.Find("pier.A2.bracing")
	assert.Empty(t, low.Needs)
	tall, _ := s.Find("pier.C1.height")
	assert.True(t, tall.Fails(), "5 in + 32 in is above 36 in")
	fine, _ := s.Find("pier.A1.height")
	assert.True(t, fine.Holds())
}
