package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

const bare = "name: A\ntimber: {species: hem_fir, grade: No.2}\nsite: {soil: {class: clay}}\n"

// A use with a roof and walls has a building, whether or not the job speaks of it.
// By hand for 12 by 8 ft, 96 sq ft: 10 and 30 psf are 960 and 2,880 lb (walls of
// 6 psf and roofs to 15 psf: HUD Residential Structural Design Guide 2000, Table
// 3.2); 3 and 20 psf of a greenhouse, common practice, are 288 and 1,920 lb.
func TestAUseWithARoofHasItsBuilding(t *testing.T) {
	of := func(use, more string) *job.Job {
		return read(t, "a.yaml", bare+"platform: {length: 12', width: 8', "+use+"}\n"+more)
	}
	for use, want := range map[string][2]float64{"use: shed": {960, 2880}, "use: hen_house": {960, 2880}, "use: greenhouse": {288, 1920}} {
		b := of(use, "").Building
		require.NotNil(t, b, use)
		assert.True(t, b.Assumed, use)
		assert.InDelta(t, want[0], float64(b.WeightLeast/measure.PoundForce), 0.5, use)
		assert.InDelta(t, want[1], float64(b.WeightMost/measure.PoundForce), 0.5, use)
	}
	entry, ok := of("use: shed", "").Entry("building.weight.most")
	require.True(t, ok, "it stands on the sheet of assumptions")
	assert.Equal(t, figure.Assumed, entry.Origin)
	assert.Contains(t, entry.Source, "Table 3.2")

	for _, open := range []string{"use: deck", "use: public_terrace", "floor_load: 40 psf"} {
		assert.Nil(t, of(open, "").Building, open)
	}
	none := of("use: shed", "building: none\n")
	assert.Nil(t, none.Building)
	assert.True(t, none.NoBuilding)
	own := of("use: shed", "building: {weight: {most: 4000 lb}}\n").Building
	assert.False(t, own.Assumed)
	assert.InDelta(t, 4000, float64(own.WeightMost/measure.PoundForce), 0.5)
	assert.NotNil(t, of("use: deck", "building: {weight: {most: 4000 lb}}\n").Building, "a roof over a deck")
}

// Without a wall under the roof its weight and its snow would stand nowhere.
func TestSomeWallCarriesTheRoof(t *testing.T) {
	walls := func(roof, of string) string {
		return bare + "platform: {length: 12', width: 8', use: shed}\nbuilding:\n  roof: {shape: " + roof + "}\n  walls:\n" +
			"    front: {runs: along_length, at: 2\", from: 0, to: 12'" + of + "}\n    back: {runs: along_length, at: 7' 10\", from: 0, to: 12'}\n"
	}
	_, faults := job.Read(files("a.yaml", walls("gable", "")), "a.yaml")
	require.Equal(t, 1, faults.Len(), "%v", faults)
	assert.Equal(t, "building.walls", faults.Sorted()[0].Path)
	assert.Contains(t, faults.Sorted()[0].Wrong, "none of the walls carries the roof")
	assert.Equal(t, 7, faults.Sorted()[0].At.Line)
	for _, good := range []string{walls("gable", ", roof: yes"), walls("hip", "")} {
		_, faults := job.Read(files("a.yaml", good), "a.yaml")
		assert.True(t, faults.Empty(), "%v", faults)
	}
}
