package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
)

// An opening that cuts joists holds only with headers that others size; one
// between two joists asks for nothing, and no other check changes for either.
func TestOpeningThatCutsJoistsWantsHeadersByOthers(t *testing.T) {
	j := sample.Shed()
	whole, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
	require.NoError(t, faults.Err())
	j.Platform.Openings = map[string]job.Opening{
		"stair":  {X: 90 * in, Y: 50 * in, Length: 30 * in, Width: 30 * in},
		"sleeve": {X: 38 * in, Y: 20 * in, Length: 4 * in, Width: 4 * in},
	}
	f, faults := frame.Lay(j)
	require.NoError(t, faults.Err())
	f.Blocking = nil // which weighs a little
	s, faults := Work(Input{Job: j, Frame: f})
	require.NoError(t, faults.Err())

	check, made := s.Find("opening.stair.headers")
	require.True(t, made)
	assert.False(t, check.Holds())
	assert.False(t, check.Fails())
	assert.Contains(t, check.Needs, "headers and trimmers")
	assert.Contains(t, check.What, "J7, J8")
	assert.True(t, check.Memory)
	// 13 joists and 2 rims, of which the stair leaves 13.
	assert.Equal(t, [2]measure.Quantity{measure.Count(15), measure.Count(13)}, [2]measure.Quantity{check.Demand, check.Capacity})
	assert.InDelta(t, 15.0/13, float64(check.Ratio), 1e-12)
	_, made = s.Find("opening.sleeve.headers")
	assert.False(t, made)
	assert.Len(t, s.Checks, len(whole.Checks)+1)
	assert.Equal(t, whole.Failing(), s.Failing())
	assert.Len(t, s.Remarks, len(whole.Remarks)+2)
}
