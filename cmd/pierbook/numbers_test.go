package main

import (
	"encoding/json"
	"io/fs"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/content"
)

// jobsFolder holds the jobs that several tests share.
const jobsFolder = "../../testdata/jobs"

// savedFigures is figures.json as another program would read it.
type savedFigures struct {
	Progress string
	Figures  map[string]struct {
		Value any
		Unit  string
		Text  string
	}
}

// boundFiles makes the files of a binder in memory; the sample's when name is "".
func boundFiles(t testing.TB, name string) map[string][]byte {
	t.Helper()
	var files fs.FS = os.DirFS(jobsFolder)
	if name == "" {
		files, name = content.Sample, content.SampleJob
	}
	plan, faults := work(files, name)
	require.NoError(t, faults.Err())
	made, faults, err := bind(plan, files, newLibrary())
	require.NoError(t, err)
	require.NoError(t, faults.Err())
	return made
}

func figuresOfJob(t testing.TB, name string) savedFigures {
	t.Helper()
	var saved savedFigures
	require.NoError(t, json.Unmarshal(boundFiles(t, name)[figuresFile], &saved))
	return saved
}

// TestFiguresAgreeWithWorkingByHand compares figures.json with a second working
// that shares nothing with the program, to a thousandth of a millimetre.
func TestFiguresAgreeWithWorkingByHand(t *testing.T) {
	for name, byHand := range handJobs {
		t.Run(orSample(name), func(t *testing.T) {
			compare(t, handFigures(byHand), figuresOfJob(t, name), "")
		})
	}
}

// compare holds saved figures to those worked by hand. Lengths are in
// millimetres, to a thousandth; volumes in cubic metres, where a cube of 1 mm
// is 1e-9.
func compare(t assert.TestingT, byHand map[string]any, saved savedFigures, about string) {
	for key, want := range byHand {
		got, known := saved.Figures[key]
		if !assert.Truef(t, known, "no figure %s\n%s", key, about) {
			continue
		}
		if number, ok := want.(float64); ok {
			within := 0.001
			if got.Unit == "m3" {
				within = 1e-8
			}
			assert.InDeltaf(t, number, got.Value, within, "%s\n%s", key, about)
			continue
		}
		assert.Equalf(t, want, got.Value, "%s\n%s", key, about)
	}
}

func orSample(name string) string {
	if name == "" {
		return "sample"
	}
	return name
}

// The three heights of the cover add up as they are printed: nobody should be
// sent looking for a thirty-second.
func TestHeightsOnTheCoverOfTheSampleAddUp(t *testing.T) {
	figures := figuresOfJob(t, "").Figures
	printed := func(key string) measure.Length {
		length, err := measure.ParseLength(figures[key].Text)
		require.NoError(t, err, figures[key].Text)
		return length
	}
	assert.Equal(t, printed("floor.height"), printed("post_tops.height")+printed("build_up"))
}
