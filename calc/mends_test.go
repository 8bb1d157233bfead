package calc_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// bank is a workshop on ground that falls so much along its lines, in inches.
func bank(t *testing.T, fall float64, more string) *calc.Plan {
	t.Helper()
	at := func(inches float64) string { return fmt.Sprintf("%.4f in", 48+inches) }
	text := fmt.Sprintf(`name: Workshop on the bank
platform: {length: 16', width: 12', use: garden_room}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
frame: {beams: {lines: 3}, piers: {per_line: 4}}
ground:
  sights:
    - [bench_mark: 4' 2", A1: %s, A4: %s, B2: %s, B3: %s, C1: %s, C4: %s, bench_mark: 4' 2"]
%s`, at(0), at(fall), at(fall/3-1), at(2*fall/3-1), at(-2), at(fall-2), more)
	j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
	require.NoError(t, faults.Err(), text)
	return worked(t, j)
}

func mendNamed(p *calc.Plan, words string) *calc.Mend {
	for i := range p.Mends {
		if strings.Contains(p.Mends[i].Words, words) {
			return &p.Mends[i]
		}
	}
	return nil
}

// A longer post frees the heights, and stands higher than the 36 in at which an
// engineer takes over: by hand 5 in of block and the 32 1/2 in of post.
func TestLongerPostBeyondTheLimitIsNoWayOut(t *testing.T) {
	p := bank(t, 30, "")
	require.NotNil(t, p.Heights.Clash)
	require.Len(t, p.Heights.Clash.Ways, 1)
	assert.Equal(t, "frame.posts.longest", p.Heights.Clash.Ways[0].Path)
	assert.Greater(t, p.Heights.Clash.Ways[0].To+p.Job.Block.SeatHeight, 36*measure.Inch)
	m := mendNamed(p, "longest post")
	require.NotNil(t, m)
	assert.False(t, m.Mends())
	assert.Contains(t, m.Lacks, "height of block and post")
	assert.Empty(t, m.Costs)
	assert.NotContains(t, p.ClashSentence(), "longest post")
}

// What is offered as the line to write frees the job when it is written, with no
// check that fails, and a mark less does not.
func TestCutThatIsOfferedFreesTheJobWhenItIsWritten(t *testing.T) {
	byDepth := 0
	for _, fall := range []float64{23, 24, 25, 26, 27, 30, 38} {
		p := bank(t, fall, "")
		if p.Heights.Clash == nil {
			continue
		}
		m := mendNamed(p, "cut the ground")
		require.NotNil(t, m)
		require.True(t, m.Mends(), m.Lacks)
		assert.Contains(t, m.Costs, "of one person")
		name, value, _ := strings.Cut(strings.TrimPrefix(m.Write, "ground.cut."), ": ")
		again := bank(t, fall, "  cut:\n    "+name+": "+value+"\n")
		assert.Empty(t, again.Stop(), m.Write)
		assert.Positive(t, float64(again.Earthwork.Spoil.Cut))
		c := again.Job.Ground.Cuts[name]
		if c.To == nil {
			byDepth++
			less := fmt.Sprintf("%d/16 in", int64((c.By-measure.Sixteenth)/measure.Sixteenth))
			short := bank(t, fall, "  cut:\n    "+name+": "+strings.Replace(value, "by: "+c.By.Print(p.Style), "by: "+less, 1)+"\n")
			assert.NotNil(t, short.Heights.Clash, "%v would do: %s", less, m.Write)
		}
	}
	assert.GreaterOrEqual(t, byDepth, 2)
}

// By hand: firm ground 30 in down takes a hole that deep, 12 in of stone leave its
// top 18 in under the ground, and the seat, 5 in over it, must stand 1/2 in over the
// ground: 13 1/2 in too deep. So much off the ground there, and the hole is right.
func TestCutBringsFirmGroundNearer(t *testing.T) {
	p := bank(t, 6, "  probes: {B2: {depth: 30 in, found: firm}}\ndig: {deepest: 36 in}\nstone: {above_ground: 1/2 in, most: 12 in}\nblock: {seat_height: 5 in, height: 5 in}\n")
	require.NotNil(t, p.Heights.Clash)
	assert.Equal(t, heights.OnePier, p.Heights.Clash.Kind)
	assert.Equal(t, 27*measure.Inch/2, p.Heights.Clash.Amount)
	m := mendNamed(p, "cut the ground")
	require.NotNil(t, m)
	require.True(t, m.Mends(), m.Lacks)
	assert.Contains(t, m.Write, (27 * measure.Inch / 2).Print(p.Style))
	assert.Contains(t, m.Write, "B2")
}

// Where checks fail whatever the heights, nothing is said to hold them all.
func TestWaysOutDoNotPromiseChecksThatFailAnyway(t *testing.T) {
	p := bank(t, 30, "design: {stone_bearing: 500 psf}\n")
	require.NotNil(t, p.Heights.Clash)
	require.Positive(t, p.Strength.Failing())
	require.True(t, p.Mends[0].Mends())
	assert.Contains(t, p.ClashSentence(), "no check failing that does not fail without it")
	assert.NotContains(t, p.ClashSentence(), "with every check")
}

// Every way said to mend the heights leaves none of the checks failing, and what
// does not says why.
func TestEveryWayOutIsCostedOrSaysWhatItLacks(t *testing.T) {
	p := bank(t, 27, "")
	require.NotNil(t, p.Heights.Clash)
	mended := false
	for _, m := range p.Mends {
		assert.NotEqual(t, m.Costs == "", m.Lacks == "", m.Words)
		mended = mended || m.Mends()
	}
	assert.True(t, mended)
	assert.True(t, p.Mends[0].Mends())
	last := p.Mends[len(p.Mends)-1]
	assert.Contains(t, last.Lacks, "licensed engineer")
	assert.Nil(t, bank(t, 6, "").Mends, "nothing is tried where nothing clashes")
}
