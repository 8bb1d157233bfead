package levelling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Common practice, no source: a builder's level passes 3 mm in 30 m, a line laser
// 0.3 mm in a metre, which is half of the gap that it lets two marks have.
func TestInstrumentChecksAgainstTheClassOfTheTool(t *testing.T) {
	mm := func(l measure.Length) measure.Length { return l * measure.Millimetre }
	level := func(farB measure.Length) *job.Job {
		j := &job.Job{}
		j.Ground.Instrument = job.Instrument{Error: mm(3), Over: 30 * measure.Metre,
			Pegs: &job.PegReadings{MiddleA: mm(1937), MiddleB: mm(1689), NearA: mm(1724), FarB: farB, ToB: 30 * measure.Metre}}
		return j
	}
	for _, row := range []struct {
		farB    measure.Length
		error   measure.Length
		inOrder bool
	}{{mm(1476), 0, true}, {mm(1479), mm(3), true}, {mm(1473), mm(-3), true}, {mm(1480), mm(4), false}, {mm(1472), mm(-4), false}} {
		checks := levelling.InstrumentChecks(level(row.farB))
		require.Len(t, checks, 1)
		assert.Equal(t, row.error, checks[0].Error)
		assert.Equal(t, row.inOrder, checks[0].InOrder(), row.farB)
	}

	laser, across, ends := &job.Job{}, mm(5), mm(2)
	laser.Ground.Instrument = job.Instrument{Error: mm(3), Over: 10 * measure.Metre, Wall: &job.WallMarks{Distance: 6 * measure.Metre, Gap: 3600 * measure.Micrometre, Across: &across}, Ends: &ends}
	checks := levelling.InstrumentChecks(laser)
	require.Len(t, checks, 3)
	assert.Equal(t, 1800*measure.Micrometre, checks[0].Limit)
	assert.True(t, checks[0].InOrder())
	assert.False(t, checks[1].InOrder(), "one axis may be out while the other is right")
	assert.True(t, checks[2].InOrder(), "water: the error of the class, whatever the distance")
}
