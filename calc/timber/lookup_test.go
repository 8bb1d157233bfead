package timber

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/sample"
)

// TestSectionsWithoutValues checks sizes that no table knows.
func TestSectionsWithoutValues(t *testing.T) {
	timber := job.Timber{Species: "hem_fir", Grade: "No.2"}
	for _, c := range []struct {
		section job.Section
		want    string
	}{
		{job.Section{Size: "6x12", Width: 11 * in / 2, Depth: 23 * in / 2, Plies: 1}, "beam-and-stringer"},
		{job.Section{Size: "1x4", Width: in, Depth: 7 * in / 2, Plies: 1}, "under 1 1/4 in"},
		{job.Section{Size: "?"}, "no width and depth"},
	} {
		_, err := LookUp(timber, c.section)
		require.ErrorContains(t, err, c.want)
	}
	_, err := LookUp(job.Timber{Species: "southern_pine", Grade: "No.2"}, job.Section{Size: "2x14", Width: 3 * in / 2, Depth: 53 * in / 4, Plies: 1})
	require.ErrorContains(t, err, "in the size 2x14")
}

// TestGivenValuesAreNotRaised checks that no factor of one standard raises a value
// of another.
func TestGivenValuesAreNotRaised(t *testing.T) {
	ref := Reference{Class: GivenWith, Bending: 10e6, Shear: 1e6, BearingAcross: 2e6, Compression: 8e6, Elastic: 9e9, ElasticMin: 6e9}
	section, ok := sample.Section("45x145 mm", 1), true
	require.True(t, ok)
	dry := Adjust(ref, section, Service{Repetitive: true})
	assert.Equal(t, ref.Bending, dry.Bending)
	wet := Adjust(ref, section, Service{Repetitive: true, Wet: true, Incised: true})
	assert.InEpsilon(t, float64(ref.Bending)*.85*.8, float64(wet.Bending), 1e-9)
}
