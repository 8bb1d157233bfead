package crew

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
)

// A national cost book has 1.32 craft-hours a cubic yard for piers dug by hand
// in average soil; twelve pits of 20 × 20 × 10 in hold 1.03 yd³, so about 1.4 h.
// A first-timer's diary has 9 h for digging, stone and blocks of twelve piers.
func TestTwelvePits(t *testing.T) {
	pit := measure.Volume(20*20*10) * measure.CubicFoot / 1728
	w := Work{Piers: 12, Dig: 12 * pit, Stone: 12 * pit * 0.6}
	var least, most, digging measure.Hours
	for _, s := range Plan(w, 2, nil, nil).Steps {
		switch s.Name {
		case "dig":
			digging = s.Terms[0].Hours.Least
			fallthrough
		case "stone", "blocks":
			least += s.Hours.Least
			most += s.Hours.Most
		}
	}
	assert.InDelta(t, 1.36, float64(digging), 0.01)
	assert.Less(t, float64(least), 9.0)
	assert.Greater(t, float64(most), 9.0)
}

func TestTheShopsOwnRateRules(t *testing.T) {
	w := Plan(Work{Piers: 4}, 2, map[string]measure.Hours{"dig": 6}, map[string]measure.Hours{"dig": 5})
	assert.Equal(t, Range{6, 6}, w.Steps[4].Hours)
	assert.Equal(t, measure.Hours(5), w.Steps[4].Actual)
	assert.Equal(t, "6\u00a0h", w.Steps[4].Hours.Print())
}

func TestDaysHoldEveryHourOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Work{Piers: rapid.IntRange(4, 60).Draw(t, "piers"), Posts: 15, Joists: 13, Panels: 6, Readings: 20, BeamPieces: 6,
			Dig: measure.Volume(rapid.Float64Range(0.1, 8).Draw(t, "dig")), Area: 18, JoistRun: 50 * measure.Metre, BeamRun: 15 * measure.Metre}
		people := rapid.IntRange(1, 4).Draw(t, "people")
		plan := Plan(w, people, nil, nil)
		planned := map[string]measure.Hours{}
		for _, d := range plan.Days {
			var clock measure.Hours
			for _, p := range d.Parts {
				assert.InDelta(t, float64(clock), float64(p.Start), 1e-9, "parts follow one another")
				assert.LessOrEqual(t, float64(p.End), float64(dayLong+stretch)+1e-9)
				clock = p.End
				planned[p.Step] += p.End - p.Start
			}
		}
		for _, s := range plan.Steps {
			hands := measure.Hours(max(1, min(people, s.People)))
			assert.InDelta(t, float64((s.Hours.Least+s.Hours.Most)/2/hands), float64(planned[s.Name]), 1e-9, s.Name)
		}
	})
}
