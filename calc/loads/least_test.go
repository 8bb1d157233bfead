package loads_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
)

func acting(t *testing.T, j *job.Job) *loads.Acting {
	t.Helper()
	a, faults := loads.Gather(loads.Input{Job: j, Frame: sample.Frame(j), Timber: loads.TimberWeight{Density: 450}, RiskCategory: "II",
		Shares: func(measure.Length) []float64 { return make([]float64, 3) }})
	require.True(t, faults.Empty(), "%v", faults)
	return a
}

// ASCE 7-16 27.1.5: at least 16 psf on the walls and 8 psf on the roof as it stands
// upright. Walls of 7 ft by 16 ft and a rise of 3 ft: 16 · 112 + 8 · 48 = 2,176 lb;
// the frame below them, 23/32 + 5 1/2 + 5 1/2 in deep, adds 16 · 16 · 0.9766 =
// 250 lb. At 85 mph in B the walls compute some 10 psf, so the least holds; at 115
// mph in C some 27 psf, so it does not.
func TestTheLeastWindIsAFloorUnderTheWhole(t *testing.T) {
	pounds := func(f measure.Force) float64 { return float64(f / measure.PoundForce) }
	j := sample.Shed()
	j.Building.Roof.Overhang = 0
	j.Site.Wind = job.Wind{Speed: 85 * measure.MilePerHour, Exposure: "B"}
	w := acting(t, j).Wind
	assert.InDelta(t, 2176+250, pounds(w.Across.Force), 0.5)
	assert.InDelta(t, 2426*0.6, pounds(w.Across.Force)*float64(w.Factor), 0.5)
	// along the beams a gable of half the rise: 16 · 12 · 7.9766 + 8 · 18 = 1,675.5
	assert.InDelta(t, 1675.5, pounds(w.Along.Force), 0.5)

	j.Site.Wind = job.Wind{Speed: 115 * measure.MilePerHour, Exposure: "C"}
	w = acting(t, j).Wind
	assert.InDelta(t, 27.1, float64(w.Wall/measure.PoundPerSquareFt), 0.3)
	assert.InDelta(t, float64(w.Wall.On(w.Across.Area)), float64(w.Across.Force), 1)

	// a service pressure counts in full, so the least of it is 0.6 of 2,426 lb
	j.Site.Wind = job.Wind{Pressure: 3 * measure.PoundPerSquareFt}
	w = acting(t, j).Wind
	assert.InDelta(t, 0.6*2426, pounds(w.Across.Force)*float64(w.Factor), 0.5)
}

// ASCE 7-16 27.3.3, from memory: under a windward overhang 0.8 presses up and no
// internal pressure counts. At q 24.46 psf: roof 0.85 · 0.9 + 0.18 = 0.945, 23.12
// psf; eaves 0.85 · (0.9 + 0.8) = 1.445, 35.35 psf, 1.529 times the field.
func TestWindwardEavesLiftMoreThanTheRoof(t *testing.T) {
	j := sample.Shed()
	j.Building.WallHeight, j.Building.Roof = measure.Foot, job.Roof{Shape: "flat", Eaves: "along_length", Overhang: 6 * measure.Inch}
	j.Site.Wind = job.Wind{Pressure: measure.Stress(24.46) * measure.PoundPerSquareFt}
	w := acting(t, j).Wind
	psf := func(p measure.Stress) float64 { return float64(p / measure.PoundPerSquareFt) }
	assert.InDelta(t, 23.12, psf(w.Uplift), 0.01)
	assert.InDelta(t, 35.35, psf(w.Uplift+w.Eaves), 0.01)
	assert.InDelta(t, 1.529, float64((w.Uplift+w.Eaves)/w.Uplift), 0.001)
	// 17 by 13 ft of roof and 0.5 by 17 ft of eaves: 23.12 · 221 + 12.23 · 8.5 = 5,213 lb
	assert.InDelta(t, 5213, float64(w.Up/measure.PoundForce), 2)
	// the eaves' 104 lb stand 6 1/4 ft from the middle: 650 lb-ft more to turn over
	bare := sample.Shed()
	bare.Building.WallHeight, bare.Building.Roof = measure.Foot, job.Roof{Shape: "flat", Eaves: "along_length"}
	bare.Site.Wind = j.Site.Wind
	without := acting(t, bare).Wind
	turns := func(w *loads.WindLoad) float64 {
		return float64(w.Across.Force/measure.PoundForce) * w.Across.Arm.Feet()
	}
	assert.InDelta(t, 103.95*6.25, turns(w)-turns(without), 1)

	j.Building.Enclosure = "open"
	assert.Zero(t, acting(t, j).Wind.Eaves, "no wall that stops the wind below")
}

// ASCE 7-16 2.4.1, combinations 1 to 6. A name has the loads that are there.
func TestCombinationsHaveTheLoadsThatAreThere(t *testing.T) {
	names := func(kinds ...loads.Case) []string {
		present := [loads.CaseCount]bool{}
		for _, k := range kinds {
			present[k] = true
		}
		var all []string
		for _, c := range loads.Relevant(present, true) {
			all = append(all, c.Name)
		}
		return all
	}
	const own, building, live, snow, roof, wind = loads.DeadCase, loads.BuildingCase, loads.LiveCase, loads.SnowCase, loads.RoofCase, loads.WindCase
	assert.Equal(t, []string{"D", "D + L"}, names(own, live))
	assert.Equal(t, []string{"D", "D + L", "D + S", "D + 0.75L + 0.75S"}, names(own, live, snow))
	assert.Equal(t, []string{"D", "D + L", "D + Lr", "D + 0.75L + 0.75Lr", "D + 0.6W", "D + 0.75L + 0.75(0.6W)", "D + 0.75L + 0.75Lr + 0.75(0.6W)"}, names(own, building, live, roof, wind))
	assert.Len(t, names(own, building, live, snow, roof, wind), len(loads.Combinations))

	// one pier by hand: 71 + 331 + 0.75 · 521 + 0.75 · 614 + 0.75 · 252 = 1,442 lb
	pier := map[loads.Case]float64{own: 71, building: 331, live: 521, roof: 614, wind: 252}
	most, governs := 0.0, ""
	for _, c := range loads.Relevant([loads.CaseCount]bool{own: true, live: true, roof: true, wind: true}, true) {
		sum := 0.0
		for kind, load := range pier {
			sum += c.Factors[kind] * load
		}
		if sum > most {
			most, governs = sum, c.Name
		}
	}
	assert.InDelta(t, 1442, most, 0.5)
	assert.Equal(t, "D + 0.75L + 0.75Lr + 0.75(0.6W)", governs)
}
