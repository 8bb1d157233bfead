package setout_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
)

// metric is a frame of 4000 by 3000 mm, so that its diagonal is 5000, with beams
// that stand 200 in from the sides.
const metric = `name: Metric
units: metric
platform: {length: 4000 mm, width: 3000 mm, use: shed}
site: {soil: {class: gravel}}
timber: {species: hem_fir, grade: No.2}
frame: {joists: {width: 45 mm, depth: 145 mm, spacing: 400 mm}, beams: {width: 95 mm, depth: 195 mm, lines: 2, inset: 200 mm}, piers: {per_line: 3}}
measured:
  unit: mm
`

func read(t *testing.T, text string) (*job.Job, *frame.Frame) {
	t.Helper()
	j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
	require.NoError(t, faults.Err())
	f, faults := frame.Lay(j)
	require.NoError(t, faults.Err())
	return j, f
}

func six(key string, lengths ...int) string {
	names := []string{"A1-A3", "A3-B3", "B3-B1", "B1-A1", "A1-B3", "A3-B1"}
	var parts []string
	for i, l := range lengths {
		parts = append(parts, fmt.Sprintf("%s: %d", names[i], l))
	}
	return "  " + key + ": {" + strings.Join(parts, ", ") + "}\n"
}

func work(t *testing.T, text string) (*setout.SetOut, map[string]figure.Figure) {
	t.Helper()
	j, f := read(t, text)
	s, faults := setout.Work(j, f)
	require.NoError(t, faults.Err())
	all := map[string]figure.Figure{}
	for _, fig := range s.Figures(j) {
		require.NotContains(t, all, fig.Key)
		all[fig.Key] = fig
	}
	return s, all
}

const mm = measure.Millimetre

func TestTheThreeRectangles(t *testing.T) {
	s, figures := work(t, metric)
	assert.Equal(t, 5000*mm, s.Frame.Diagonal())
	assert.Equal(t, [2]measure.Length{4000 * mm, 2600 * mm}, [2]measure.Length{s.Beams.Length, s.Beams.Width})
	// Pier centres: half a post, as wide as the beam, from the beam ends; lines half a beam in from the insets.
	assert.Equal(t, (4000-95)*mm, s.Piers.Length)
	assert.Equal(t, (3000-400-95)*mm, s.Piers.Width)
	assert.Equal(t, 4000*mm, figures["triangle.a"].Value)
	assert.Equal(t, 3000*mm, figures["triangle.b"].Value)
	assert.Equal(t, 5000*mm, figures["triangle.c"].Value)
	// 2 mm tape: √2 · 5000 · 2 / (2 · 3000) = 2.36 mm aside over the length, twice that with the triangle.
	assert.InDelta(t, 2.357, figures["diagonals.aside"].Value.(measure.Length).Metres()*1000, 0.001)
	assert.InDelta(t, 4.714, figures["triangle.aside"].Value.(measure.Length).Metres()*1000, 0.001)
	assert.InDelta(t, 2.828, figures["diagonals.target_error"].Value.(measure.Length).Metres()*1000, 0.001)
	// 0.3 + 0.2 · 5 = 1.3 mm for a class II tape; α L ΔT = 11.7e-6 · 5000 · 16.7 = 0.97 mm.
	assert.Equal(t, 1300*measure.Micrometre, figures["tape.allowance"].Value)
	assert.Equal(t, measure.Word("1.0\u00a0mm"), figures["tape.warmth"].Value)
	// √(4000² + 300²) − 4000 = 11.23 mm.
	assert.InDelta(t, 11.234, figures["tape.slope"].Value.(measure.Length).Metres()*1000, 0.001)
}

func TestAfterTheBeamsTheirOwnCornersAreMeasured(t *testing.T) {
	s, figures := work(t, metric+six("frame", 4000, 2600, 4000, 2600, 4771, 4771))
	assert.Equal(t, "beams", s.Sides.Rectangle.Name)
	assert.Equal(t, measure.Word(setout.Agree), figures["frame_measured.verdict"].Value)
	assert.Equal(t, measure.Word(setout.Square), figures["frame_measured.square"].Value)
	s, _ = work(t, metric+six("frame", 4001, 3000, 4000, 2999, 5000, 5000))
	assert.Equal(t, "frame", s.Sides.Rectangle.Name, "lengths of the frame's own faces are held to these")
}

// Sides true, the far side slid by 20: diagonals √((4000 ± 20)² + 3000² − 20²).
func TestRackedStrings(t *testing.T) {
	s, figures := work(t, metric+six("strings", 4000, 3000, 4000, 3000, 5016, 4984))
	assert.Equal(t, setout.Agree, s.Strings.Adjustment.Verdict)
	assert.Equal(t, measure.Word(setout.OutOfTrue), figures["strings.square"].Value)
	assert.Equal(t, 32*mm, figures["strings.difference"].Value)
	assert.InDelta(t, 20, figures["strings.slide"].Value.(measure.Length).Metres()*1000, 0.01)
	assert.InDelta(t, -20, figures["strings.move_held.B3.along"].Value.(measure.Length).Metres()*1000, 0.3, "back towards the hook end")
	assert.Equal(t, measure.Length(0), figures["strings.move_held.A3.across"].Value, "it is held")
	assert.Contains(t, figures["strings.move_held.B3.along"].Working, "towards B1")
	assert.Equal(t, 4000*mm, figures["strings.side.A1-A3.measured"].Value)
	assert.Equal(t, 9, figures["strings.side.A1-A3.measured"].At.Line)
}

// Accept, unsure and stop, on both sides of each limit: 2 · 4000 · (3000/576) /
// 5000 = 8.33 allowed, and 1.96 · √2 · 2 = 5.54 that two readings may hide.
func TestThreeVerdictsOnTheDiagonals(t *testing.T) {
	for _, row := range []struct {
		first, second int
		want          setout.Squareness
	}{{5001, 4999, setout.Square}, {5001, 4998, setout.Unsure}, {5006, 4993, setout.Unsure}, {5007, 4993, setout.OutOfTrue}} {
		s, _ := work(t, metric+six("strings", 4000, 3000, 4000, 3000, row.first, row.second))
		assert.Equal(t, row.want, s.Strings.Squareness(), "%d and %d", row.first, row.second)
	}
}

// 100 mm too much in one short side: both short sides look like a tape held at
// its 100 mm mark, nothing is moved, and no inch is talked of.
func TestAMetricSlip(t *testing.T) {
	s, figures := work(t, metric+six("strings", 4000, 3100, 4000, 3000, 5000, 5000))
	assert.False(t, s.Strings.MayMove())
	assert.Equal(t, measure.Word("A3-B3, B1-A1"), figures["strings.suspects"].Value)
	for _, slip := range s.Strings.Adjustment.Slips {
		assert.NotContains(t, slip.Usual, "inch")
	}
	assert.Nil(t, figures["strings.move.A1.along"].Value)
	assert.Nil(t, figures["strings.slide"].Value)
}

func TestSetsThatCannotBeUsedAreFaults(t *testing.T) {
	for name, row := range map[string]struct{ lengths, wrong, remedy string }{
		"a diagonal is missing": {six("strings", 4000, 3000, 4000, 3000, 5000), "the length A3-B1 is missing", "A1-A3, A3-B3, B3-B1, B1-A1, A1-B3, A3-B1"},
		"they make no figure":   {six("strings", 4000, 3000, 4000, 3000, 9000, 5000), "make no four-cornered figure", "measure again"},
	} {
		t.Run(name, func(t *testing.T) {
			j, f := read(t, metric+row.lengths)
			_, faults := setout.Work(j, f)
			list := faults.Sorted()
			require.Len(t, list, 1)
			assert.Contains(t, list[0].Wrong, row.wrong)
			assert.Contains(t, list[0].Remedy, row.remedy)
			assert.Equal(t, 9, list[0].At.Line)
		})
	}
}

// The keys are there before anything was measured, so that a page may ask.
func TestKeysDoNotDependOnWhatWasMeasured(t *testing.T) {
	_, before := work(t, metric)
	_, after := work(t, metric+six("strings", 4000, 3000, 4000, 3000, 5016, 4984)+six("frame", 4000, 2600, 4000, 2600, 4771, 4771))
	for key := range after {
		assert.Contains(t, before, key)
	}
	assert.Len(t, before, len(after))
	assert.Nil(t, before["strings.verdict"].Value)
}
