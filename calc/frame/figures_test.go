package frame_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
)

func registry(t *testing.T, j *job.Job) *figure.Registry { return registryOf(lay(t, j), j) }

func registryOf(f *frame.Frame, j *job.Job) *figure.Registry {
	var r figure.Registry
	r.Add(f.Figures(j)...)
	return &r
}

func text(t *testing.T, r *figure.Registry, j *job.Job, key string) string {
	f, ok := r.Get(key)
	require.True(t, ok, key)
	require.NotNil(t, f.Value, key)
	return plain(f.Value.Print(j.Style()))
}

func TestFiguresOfTheShed(t *testing.T) {
	j := shed()
	r := registry(t, j)
	for key, want := range map[string]string{
		"frame.length": `16′ 0″`, "frame.width": `12′ 0″`, "frame.diagonal": `20′ 0″`,
		"frame.lines": "3", "frame.per_line": "5", "frame.piers": "15",
		"piers.length": `15′ 8 1/2″`, "piers.width": `11′ 8 1/2″`,
		"pier.A1.x": `1 3/4″`, "pier.A2.x": `4′ 0 7/8″`, "pier.C5.y": `11′ 10 1/4″`, "line.B.y": `6′ 0″`,
		"build_up": `11 13/16″`, "build_up.cap": `1/16″`,
		"joist.count": "13", "joist.length": `11′ 9″`, "joist.first_mark": `15 1/4″`, "joist.3.mark": `2′ 7 1/4″`, "joist.13.mark": `15′ 10 1/2″`,
		"joist.sit": "on beams", "joist.section": "2x6", "rim.length": `16′ 0″`, "rim.count": "2",
		"beam.length": `16′ 0″`, "beam.plies": "1", "beam.pieces": "3", "post.section": "4x4", "post.shortest": `3″`,
		"surface.rows": "4", "surface.sheets": "8", "surface.last_row": `2′ 0 5/16″`, "panel.face_width": `3′ 11 1/2″`,
	} {
		assert.Equal(t, want, text(t, r, j, key), key)
	}
}

// Common practice, no source: 12, 16 and 20 are the 3-4-5 triangle four times
// over, so a frame of 12 by 16 ft has diagonals of 240 in.
func TestDiagonalOfFourTimesThreeFourFive(t *testing.T) {
	f, _ := registry(t, shed()).Get("frame.diagonal")
	mm, unit := f.Value.Base()
	require.Equal(t, "mm", unit)
	assert.InDelta(t, 240*25.4, mm, 1e-6)
}

// Whatever a computed figure names as its origin is a figure, or a path of the
// job file; figures with numbers in their rule show their working.
func TestFiguresNameWhereTheyComeFrom(t *testing.T) {
	for _, j := range []*job.Job{shed(), summerhouse()} {
		r := registry(t, j)
		for _, f := range r.All() {
			assert.NotEmpty(t, f.Means, f.Key)
			if f.Origin == figure.Given {
				assert.NotEmpty(t, f.From, f.Key) // two where width and depth stand in place of a size
				continue
			}
			assert.NotEmpty(t, f.Formula, f.Key)
			for _, key := range f.From {
				_, ok := r.Get(key)
				assert.True(t, ok || strings.HasPrefix(key, "frame.piers."), "%s comes from %s, which is no figure", f.Key, key)
			}
		}
	}
}

// A page that asks for a key must not fail on the next job: but for the counted
// things, both kinds of floor and both kinds of frame have the same keys.
func TestKeysDoNotDependOnTheKindOfFrame(t *testing.T) {
	keys := func(j *job.Job) []string {
		var all []string
		for _, f := range registry(t, j).All() {
			if !counted(f.Key) {
				all = append(all, f.Key)
			}
		}
		slices.Sort(all)
		return all
	}
	flush := shed()
	flush.Frame.Joists.Sit = "between_beams"
	panels, boards, rimless := keys(shed()), keys(summerhouse()), keys(flush)
	assert.Equal(t, panels, rimless)
	assert.Equal(t, panels, boards)
}

func counted(key string) bool {
	return strings.HasPrefix(key, "pier.") || strings.HasPrefix(key, "line.") || strings.HasPrefix(key, "row.") ||
		strings.HasPrefix(key, "joist.") && strings.HasSuffix(key, ".mark")
}

// The areas that the piers carry, as printed in figures.json, add up to the
// platform's.
func TestAreaFiguresAddUp(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, f *frame.Frame) {
		sum, area := 0.0, 0.0
		for _, figure := range f.Figures(j) {
			v := 0.0
			if figure.Value != nil {
				v, _ = figure.Value.Base()
			}
			switch {
			case figure.Key == "frame.area":
				area = v
			case strings.HasSuffix(figure.Key, ".tributary"):
				sum += v
			}
		}
		require.Less(t, math.Abs(sum-area), 1e-9)
	})
}
