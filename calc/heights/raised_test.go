package heights_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fieldtest"
	"pierbook/calc/measure"
)

func TestRaisingEveryReadingByTheSameChangesNothing(t *testing.T) {
	plain := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	rapid.Check(t, func(t *rapid.T) {
		j := fieldtest.SampleJob()
		for i := range j.Ground.SetUps {
			by := measure.Length(rapid.IntRange(-300, 300).Draw(t, "raise")) * measure.Sixteenth
			j.Ground.SetUps[i] = slices.Clone(j.Ground.SetUps[i])
			for k := range j.Ground.SetUps[i] {
				j.Ground.SetUps[i][k].Reading += by
			}
		}
		raised := fieldtest.Work(t, j, fieldtest.SampleFrame())
		for i, p := range plain.Piers {
			require.Equal(t, *p.Level, *raised.Piers[i].Level)
			require.Equal(t, *p.Hole, *raised.Piers[i].Hole)
		}
		require.Equal(t, *plain.Floor, *raised.Floor)
	})
}

func TestRaisingTheBenchMarkRaisesEverything(t *testing.T) {
	plain := fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame())
	j := fieldtest.SampleJob()
	j.Ground.BenchMark.Height = 10 * measure.Foot
	j.Platform.Floor.RoundUp = fieldtest.In(0.25)
	raised := fieldtest.Work(t, j, fieldtest.SampleFrame())
	assert.Equal(t, plain.Floor.Height+10*measure.Foot, raised.Floor.Height)
	for i, p := range plain.Piers {
		assert.Equal(t, p.Hole.Post, raised.Piers[i].Hole.Post)
		assert.Equal(t, p.Hole.Seat+10*measure.Foot, raised.Piers[i].Hole.Seat)
	}
}

// Once the blocks are set, raising the floor by x lengthens every post by x.
func TestRaisingTheFloorLengthensEveryPostWhileTheBlocksStay(t *testing.T) {
	var plain *fieldtest.Worked
	base := fieldtest.SeatsRead(t, nil)
	plain = fieldtest.Work(t, base, fieldtest.SampleFrame())
	rapid.Check(t, func(t *rapid.T) {
		by := measure.Length(rapid.IntRange(0, 96).Draw(t, "raise")) * measure.Sixteenth
		j := *base
		j.Platform.Floor.Height += by
		raised := fieldtest.Work(t, &j, fieldtest.SampleFrame())
		for i, p := range plain.Piers {
			require.Equal(t, p.Hole.Post+by, raised.Piers[i].Hole.Post)
			require.Equal(t, p.Hole.Seat, raised.Piers[i].Hole.Seat)
		}
	})
}
