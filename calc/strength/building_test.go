package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/check"
	"pierbook/calc/job"
	"pierbook/calc/sample"
)

// What stands on the floor and is not counted is said before anything else.
func TestABuildingThatIsNotCountedIsSaidFirst(t *testing.T) {
	first := func(change func(*job.Job)) check.Remark {
		j := sample.Deck()
		change(j)
		s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
		require.True(t, faults.Empty(), "%v", faults)
		require.NotEmpty(t, s.Remarks)
		return s.Remarks[0]
	}
	asked := first(func(*job.Job) {})
	assert.Equal(t, check.NotCounted, asked.Standing)
	assert.Contains(t, asked.Words, "No building is counted, as the job asks, though the use garden_room has one")
	silent := first(func(j *job.Job) { j.Platform.Use, j.NoBuilding = "", false })
	assert.Contains(t, silent.Words, "names neither a use nor a building")
	usual := first(func(j *job.Job) { j.Building, j.NoBuilding = sample.Shed().Building, false; j.Building.Assumed = true })
	assert.Contains(t, usual.Words, "2000\u00a0lb at its lightest, 2600\u00a0lb at its heaviest, walls 7′\u00a00″ high, a gable roof")
	for _, nothing := range []func(*job.Job){
		func(j *job.Job) { j.Platform.Use, j.NoBuilding = "deck", false },
		func(j *job.Job) { j.Building = sample.Shed().Building },
	} {
		assert.NotContains(t, first(nothing).Words, "building's own weight")
		assert.NotContains(t, first(nothing).Words, "No building")
	}
}

// The roof's load reaches the piers in whole whatever walls carry it.
func TestRiskCategoryOneLosesNoSnow(t *testing.T) {
	j := sample.Shed()
	j.Design.RiskCategory = "I"
	s, faults := Work(Input{Job: j, Frame: sample.Frame(j)})
	require.True(t, faults.Empty(), "%v", faults)
	for _, r := range s.Remarks {
		assert.NotEqual(t, check.Fails, r.Standing, r.Words)
	}
}
