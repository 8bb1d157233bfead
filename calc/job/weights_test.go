package job_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// STN-04: the placard on the door names people and goods together.
func TestPayloadIsThePlacardLessThePeople(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/earthwork.yaml")
	require.NoError(t, err)
	var all struct {
		Examples []struct {
			ID, Source     string
			Tolerance      float64
			Inputs, Result yaml.Node
		}
	}
	require.NoError(t, yaml.Unmarshal(text, &all))
	for _, e := range all.Examples {
		if e.ID != "STN-04" {
			continue
		}
		var in struct {
			Placard float64 `yaml:"placard_lb"`
			People  int
			Person  float64 `yaml:"person_lb"`
		}
		var want struct {
			Cargo float64 `yaml:"cargo_lb"`
		}
		require.NoError(t, e.Inputs.Decode(&in))
		require.NoError(t, e.Result.Decode(&want))
		j := read(t, "job.yaml", dozen+fmt.Sprintf("yard: {placard: %g lb, aboard: %d, person: %g lb}\n", in.Placard, in.People, in.Person))
		assert.InDelta(t, want.Cargo, float64(j.Yard.Payload/measure.Pound), e.Tolerance, e.Source)
		// 150 lb a person is also what is assumed.
		j = read(t, "job.yaml", dozen+fmt.Sprintf("yard: {placard: %g lb, aboard: %d}\n", in.Placard, in.People))
		assert.InDelta(t, want.Cargo, float64(j.Yard.Payload/measure.Pound), e.Tolerance)
		entry, _ := j.Entry("yard.payload")
		assert.Equal(t, figure.Assumed, entry.Origin)
		assert.Contains(t, entry.Source, "5 × 150")
		return
	}
	t.Fatal("no example STN-04")
}

// The weight of a stone is the same loose and tamped, so that any two of factor
// and densities make the third.
func TestTwoValuesOfAStoneMakeTheThird(t *testing.T) {
	pcf := func(d measure.Density) float64 { return float64(d / measure.PoundPerCubicFoot) }
	stone := func(values string) job.Stone { return read(t, "job.yaml", dozen+"stone: {"+values+"}\n").Stone }
	s := stone("density: 120 pcf, loose_density: 96 pcf")
	assert.InDelta(t, 1.25, float64(s.Loose), 1e-4)
	s = stone("density: 120 pcf, loose: 1.25")
	assert.InDelta(t, 96, pcf(s.LooseDensity), 0.01)
	s = stone("loose_density: 96 pcf, loose: 1.25")
	assert.InDelta(t, 120, pcf(s.Density), 0.01)
	// WSDOT Design Manual M 22-01, Exhibit 620-1: top course, and permeable ballast.
	const yard = 27
	s = stone("kind: dense_graded")
	assert.InDelta(t, 3700, pcf(s.Density)*yard, 1e-6)
	assert.InDelta(t, 2850, pcf(s.LooseDensity)*yard, 1e-6)
	s = stone("kind: open_graded")
	assert.InDelta(t, 2800, pcf(s.LooseDensity)*yard, 1e-6)
	assert.InDelta(t, float64(s.Loose), float64(s.Density.Over(s.LooseDensity)), 0.001)
}

func TestAPlacardThatCannotServeIsAFault(t *testing.T) {
	for yard, want := range map[string]string{
		"placard: 1400 lb, payload: 900 lb": "job.yaml:13:35: yard.payload: both a payload and a placard are given",
		"placard: 700 lb, aboard: 5":        "job.yaml:13:17: yard.placard: 5 people of 150 lb leave nothing of 700 lb",
		"aboard: 5":                         "job.yaml:13:16: yard.aboard: this key is for a vehicle whose placard is given",
	} {
		assert.Contains(t, strings.ReplaceAll(faultsOf(t, "job.yaml", dozen+"yard: {"+yard+"}\n"), "\u00a0", " "), want)
	}
}
