package sizing

import (
	"testing"

	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/strength"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestChangesTogetherMend checks a frame that no single change mends: what is
// offered as mending all does so when it is worked anew, and what mends a part is
// offered besides, with the kinds of check that it mends.
func TestChangesTogetherMend(t *testing.T) {
	j := priced(sample.Shed())
	first := 14 * measure.Inch
	j.Frame.Piers.First, j.Frame.Piers.Last = &first, &first
	j.Block.RatedLoad, j.Site.GroundSnow = 4500*measure.PoundForce, psf(90)
	in := strength.Input{Job: j, Frame: sample.Frame(j)}
	s, faults := strength.Work(in)
	require.NoError(t, faults.Err())
	require.NotZero(t, s.Failing())
	ways := waysOut(s.Checks, in, neighbours(in))
	require.NotEmpty(t, ways)
	all, part := 0, 0
	for _, r := range ways {
		assert.NotEmpty(t, r.Cost, r.Change)
		switch {
		case r.after.Job != nil && r.Mends:
			all++
			again, faults := strength.Work(r.after)
			require.NoError(t, faults.Err())
			assert.Zero(t, again.Failing(), r.Change)
			assert.Contains(t, r.Change, "; ", "no single change mends it")
		case !r.Mends:
			part++
			assert.NotEmpty(t, r.Helps, r.Change)
		}
	}
	assert.NotZero(t, all)
	assert.NotZero(t, part)
}

// TestHeightIsNotMendedByOtherSizes checks that nothing is offered as mending a
// pier that stands too high.
func TestHeightIsNotMendedByOtherSizes(t *testing.T) {
	j := priced(sample.Shed())
	j.Platform.FloorLoad = psf(100)
	f := sample.Frame(j)
	s, faults := strength.Work(strength.Input{Job: j, Frame: f, Heights: heights(f, 34*in)})
	require.NoError(t, faults.Err())
	Mend(s, strength.Input{Job: j, Frame: f, Heights: heights(f, 34*in)})
	for _, r := range s.Remedies {
		assert.False(t, r.Mends, r.Change)
	}
}

// TestFailingFrameFailsFirstAndIsMended checks an overloaded shed.
func TestFailingFrameFailsFirstAndIsMended(t *testing.T) {
	j := priced(sample.Shed())
	j.Platform.FloorLoad = psf(100)
	in := strength.Input{Job: j, Frame: sample.Frame(j)}
	s, faults := strength.Work(in)
	require.NoError(t, faults.Err())
	Mend(s, in)
	require.NotZero(t, s.Failing())
	assert.True(t, s.Checks[0].Fails())
	assert.NotEmpty(t, s.Checks[0].Remedies, s.Checks[0].ID)
	require.NotEmpty(t, s.Remedies)
	for _, r := range s.Remedies {
		assert.True(t, r.Mends)
		assert.NotEmpty(t, r.Cost)
		t.Log(r.Change, "|", r.Words, "|", r.Cost, "|", r.Worst)
	}
	for i := 1; i < len(s.Checks); i++ {
		assert.False(t, s.Checks[i].Fails() && !s.Checks[i-1].Fails(), "a failing check stands behind one that holds")
	}
}
