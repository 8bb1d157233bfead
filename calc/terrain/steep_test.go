package terrain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/fieldtest"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// IRC 2021 R403.1.7 begins at slopes steeper than 1 in 3, 33.3 per cent: ground that
// rises 30 in 100 across the lines is gentler, 40 in 100 is steeper at every pier,
// and a bank beside the floor is steep at the piers near it alone. By hand, from A1
// 1.75 in out: 24 in lower on 42.25 by 37.75 in, a run of 56.7 in, is 42.4 per cent.
func TestGroundSteeperThanOneInThree(t *testing.T) {
	f := fieldtest.SampleFrame()
	steep := func(rise float64, spot *job.Sight) map[string]measure.Percent {
		j := fieldtest.AllRead()
		setUp := fieldtest.Sights("bench_mark", 60.0)
		for _, p := range f.Piers {
			setUp = append(setUp, job.Sight{Point: p.Name, Reading: fieldtest.In(60) - p.Y.Scale(rise)})
		}
		if spot != nil {
			j.Ground.Spots["bank"] = job.Spot{X: fieldtest.In(-40.5), Y: fieldtest.In(-36)}
			setUp = append(setUp, *spot)
		}
		j.Ground.SetUps = [][]job.Sight{setUp}
		return fieldtest.Work(t, j, f).Ground.Steep(f)
	}
	assert.Empty(t, steep(0.30, nil))
	all := steep(0.40, nil)
	assert.Len(t, all, len(f.Piers))
	assert.InDelta(t, 0.40, float64(all["B3"]), 1e-6)

	bank := steep(0, &job.Sight{Point: "bank", Reading: fieldtest.In(84)})
	assert.InDelta(t, 0.424, float64(bank["A1"]), 0.001)
	assert.NotContains(t, bank, "C5")
}
