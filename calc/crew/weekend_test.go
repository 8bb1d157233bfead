package crew

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Common practice, no source: 1.32 craft-hours a cubic yard for piers dug by hand
// in average soil; twelve pits of 20 × 20 × 10 in hold 1.03 yd³, so about 1.4 h.
// A first-timer takes about 9 h for digging, stone and blocks of twelve piers.
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

// Each step has at least one term, and every term belongs to a step.
func TestEveryStepHasRates(t *testing.T) {
	known := map[string]bool{}
	for _, s := range trade.Steps() {
		known[s.Name] = false
	}
	for _, r := range rates {
		_, ok := known[r.step]
		assert.True(t, ok, r.step)
		known[r.step] = true
		assert.Less(t, r.least, r.most, r.what)
		assert.NotEmpty(t, r.source, r.what)
	}
	for name, has := range known {
		assert.True(t, has, name)
	}
}

// Common practice, no source: digging of small piers 1.32 to 3.23
// craft-hours a cubic yard (1.73 h/m³), hand backfill with tamping 0.86 (1.12 h/m³),
// sleepers of 2x6 0.017 a foot.
func TestRatesOfAPractisedHand(t *testing.T) {
	metric := measure.Style{System: measure.Metric}
	imperial := measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}
	w := Work{Piers: 1, Dig: measure.CubicYard, Stone: measure.CubicYard, BeamRun: measure.Foot, BeamPieces: 1}
	for _, row := range []struct {
		step, term   string
		least        float64
		inMetric, in string
	}{
		{"dig", "digging by hand, in the bank", 1.32, "1.73 to 4.22 h/m³", "1.32 to 3.23 h/yd³"},
		{"stone", "spreading and tamping", 0.86, "1.12 to 4.5 h/m³", "0.86 to 3.44 h/yd³"},
		{"beams", "run of the plies", 0.017, "0.0558 to 0.164 h/m", "0.017 to 0.05 h/ft"},
	} {
		found := false
		for _, s := range Plan(w, 2, nil, nil).Steps {
			for _, term := range s.Terms {
				if s.Name == row.step && term.What == row.term {
					found = true
					assert.InDelta(t, row.least, float64(term.Hours.Least), 1e-9, row.term)
					assert.Contains(t, term.Working(metric), row.inMetric)
					assert.Contains(t, term.Working(imperial), row.in)
				}
			}
		}
		assert.True(t, found, row.term)
	}
}

// More of anything never takes fewer hours.
func TestMoreWorkTakesNoLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) int { return rapid.IntRange(0, 80).Draw(t, name) }
		w := Work{Piers: draw("piers"), Posts: draw("posts"), BeamPieces: draw("beams"), Joists: draw("joists"), Rims: draw("rims"), Panels: draw("panels"), Boards: draw("boards"), Readings: draw("readings"),
			Dig: measure.Volume(draw("dig")), Stone: measure.Volume(draw("stone")), Area: measure.Area(draw("area")), BeamRun: measure.Length(draw("run")) * measure.Metre}
		more := w
		more.Piers++
		more.Joists++
		more.Panels++
		more.Dig++
		before, after := Plan(w, 2, nil, nil), Plan(more, 2, nil, nil)
		for i := range before.Steps {
			if after.Steps[i].Hours.Least < before.Steps[i].Hours.Least || after.Steps[i].Hours.Most < before.Steps[i].Hours.Most {
				t.Fatalf("%s", before.Steps[i].Name)
			}
		}
	})
}

// What may not be left overnight is not begun so late that it would be.
func TestPostsAreNotLeftOvernight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Work{Piers: rapid.IntRange(4, 40).Draw(t, "piers"), Joists: 13, Readings: 20, BeamPieces: 6, Dig: measure.Volume(rapid.Float64Range(0.1, 8).Draw(t, "dig")), Area: 18, JoistRun: 50 * measure.Metre}
		w.Posts = w.Piers
		plan := Plan(w, rapid.IntRange(1, 4).Draw(t, "people"), nil, nil)
		for _, s := range plan.Steps {
			hands := measure.Hours(max(1, min(plan.Crew, s.People)))
			if s.MayWait() || s.Hours.Middle()/hands > dayLong {
				continue
			}
			days := 0
			for _, d := range plan.Days {
				for _, p := range d.Parts {
					if p.Step == s.Name {
						days++
					}
				}
			}
			if days > 1 {
				t.Fatalf("%s on %d days", s.Name, days)
			}
		}
	})
}

func TestHoursTakenAreOfferedForTheShopsFile(t *testing.T) {
	w := Plan(Work{Piers: 15, Dig: 1}, 2, nil, map[string]measure.Hours{"dig": 5.5, "set-out": 4})
	assert.Equal(t, "crew:\n  rates:\n    set-out: 4 h\n    dig: 5.5 h\n", w.Rates())
	pace, known := w.Pace()
	assert.True(t, known)
	middle := w.Steps[0].Estimated.Middle() + w.Steps[4].Estimated.Middle()
	assert.InDelta(t, 9.5/float64(middle), float64(pace), 1e-9)
	assert.Empty(t, Plan(Work{}, 2, nil, nil).Rates())
}

func BenchmarkPlan(b *testing.B) {
	w := Work{Piers: 15, Posts: 15, Joists: 13, Panels: 6, Readings: 20, BeamPieces: 3, Rims: 2, Dig: 1, Stone: 1, Area: 18, JoistRun: 47 * measure.Metre, BeamRun: 15 * measure.Metre}
	b.ReportAllocs()
	for b.Loop() {
		Plan(w, 2, nil, nil)
	}
}
