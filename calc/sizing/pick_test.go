package sizing

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/strength"
)

// allOpen leaves everything that can be picked to the program.
func allOpen(j *job.Job) *job.Job {
	j.Frame.Joists.Section = job.Section{Pick: true}
	j.Frame.Joists.Spacing = 0
	j.Frame.Rims = job.Section{Pick: true}
	j.Frame.Beams.Section = job.Section{Pick: true}
	j.Frame.Beams.Lines, j.Frame.Piers.PerLine = 0, 0
	return j
}

// priced gives the shed's yard prices by the stick; invented.
func priced(j *job.Job) *job.Job {
	j.Yard.Currency = "$"
	j.Yard.Prices = map[string]measure.Money{"block": 14, "cap": 9}
	j.Yard.Stock = map[string][]job.StockLength{}
	for size, foot := range map[string]measure.Money{"2x6": 0.9, "2x8": 1.25, "2x10": 1.7, "4x6": 2.6, "4x8": 3.6, "4x4": 1.5} {
		for _, feet := range []measure.Length{8, 12, 16} {
			price := foot * measure.Money(feet)
			j.Yard.Stock[size] = append(j.Yard.Stock[size], job.StockLength{Length: feet * ft, Price: &price})
		}
	}
	return j
}

func TestPickedFramePassesAndRunnersUpCostMore(t *testing.T) {
	for name, j := range map[string]*job.Job{"by volume": allOpen(sample.Shed()), "by price": allOpen(priced(sample.Shed()))} {
		p, faults := Pick(strength.Input{Job: j})
		require.NoError(t, faults.Err(), name)
		require.Len(t, p.RunnersUp, 3, name)
		s := work(t, p.Job)
		assert.Zero(t, s.Failing(), name)
		last := p.Chosen.Cost
		for _, r := range p.RunnersUp {
			assert.GreaterOrEqual(t, r.Cost.size(), last.size(), name)
			last = r.Cost
			assert.Zero(t, work(t, r.with(j)).Failing(), name)
		}
		t.Logf("%s: %s, %s; %d considered, %d worked", name, p.Chosen.Name(j.Style()), p.Chosen.Cost.Print(j.Style()), p.Considered, p.Checked)
		for _, d := range p.Decides {
			t.Log(d)
		}
	}
}

// everything returns all frames within the bounds with their costs, those too that
// a search rules out at a glance.
func everything(s *search) []Choice {
	b := bounds(s.in.Job)
	b.joists, b.beams = s.withValues(b.joists, "frame.joists", nil), s.withValues(b.beams, "frame.beams", nil)
	p := pricesOf(s.in.Job)
	var all []Choice
	b.each(func(_, _ int, c Choice) {
		probe := c
		probe.Beam = widestOf(b.beams)
		if s.price(p, &c, s.joistLength(probe)) {
			all = append(all, c)
		}
	})
	return all
}

// TestNothingCheaperPasses works every cheaper frame through without any of the
// search's short cuts: the second, slower way.
func TestNothingCheaperPasses(t *testing.T) {
	inset := allOpen(priced(sample.Deck()))
	inset.Frame.Beams.Inset = 12 * in
	for name, j := range map[string]*job.Job{"shed": allOpen(priced(sample.Shed())), "deck": allOpen(sample.Deck()), "inset": inset} {
		p, faults := Pick(strength.Input{Job: j})
		require.NoError(t, faults.Err(), name)
		s := newSearch(strength.Input{Job: j})
		worked := 0
		for _, c := range everything(s) {
			if c.Cost.size() >= p.Chosen.Cost.size() {
				continue
			}
			laid := c.with(j)
			f, bad := frame.Skeleton(laid)
			if !bad.Empty() {
				continue
			}
			worked++
			if worked%5 != 0 && worked > 500 { // every one of the first 500, then one in five
				continue
			}
			k := strength.NewTrial(strength.Input{Job: laid, Frame: f}, s.store, strength.RatiosOnly)
			require.True(t, k.Run())
			require.True(t, k.Failed, "%s: %s passes and costs less", name, c.Name(j.Style()))
		}
		t.Logf("%s: %d cheaper frames laid out, %d choices before, picked after working %d", name, worked, p.Considered, p.Checked)
	}
}

// Readings at piers were taken on a frame that had them, so that a frame which is
// left open keeps at least as many. A name that no frame can have is a mistake
// and asks for nothing.
func TestPickKeepsThePiersThatWereRead(t *testing.T) {
	plain, faults := Pick(strength.Input{Job: allOpen(sample.Shed())})
	require.NoError(t, faults.Err())
	lines, perLine := plain.Chosen.Lines, plain.Chosen.PerLine
	for name, want := range map[string][2]int{
		"A1":                                 {lines, perLine},
		fmt.Sprintf("A%d", perLine+2):        {0, perLine + 2},
		job.LineLetters[lines:lines+1] + "1": {lines + 1, 0},
		"Z1":                                 {lines, perLine},
	} {
		j := allOpen(sample.Shed())
		j.Ground.Probes = map[string]job.Probe{name: {Found: "firm"}}
		p, faults := Pick(strength.Input{Job: j})
		require.NoError(t, faults.Err(), name)
		assert.GreaterOrEqual(t, p.Chosen.Lines, want[0], name)
		assert.GreaterOrEqual(t, p.Chosen.PerLine, want[1], name)
	}
}

func TestPickIsTheSameEveryTime(t *testing.T) {
	first, _ := Pick(strength.Input{Job: allOpen(priced(sample.Shed()))})
	for range 3 {
		again, _ := Pick(strength.Input{Job: allOpen(priced(sample.Shed()))})
		require.Equal(t, first.Chosen, again.Chosen)
		require.Equal(t, first.RunnersUp, again.RunnersUp)
		require.Equal(t, first.Figures(), again.Figures())
	}
}

func TestNothingOpenPicksNothing(t *testing.T) {
	p, faults := Pick(strength.Input{Job: sample.Shed()})
	assert.Nil(t, p)
	assert.True(t, faults.Empty())
}

// TestCostFromLengthsIsTheCostOfTheFrame checks the search's sum against the
// frame as laid out.
func TestCostFromLengthsIsTheCostOfTheFrame(t *testing.T) {
	j := allOpen(priced(sample.Shed()))
	s := newSearch(strength.Input{Job: j})
	prices := pricesOf(j)
	for i := 0; i < len(s.choices); i += 97 {
		f, faults := frame.Skeleton(s.choices[i].with(j))
		if !faults.Empty() {
			continue
		}
		cost, ok := prices.of(f)
		require.True(t, ok)
		assert.InEpsilon(t, cost.size(), s.choices[i].Cost.size(), 0.002, s.choices[i].Name(j.Style()))
	}
}

func BenchmarkAllChecks(b *testing.B) {
	j := sample.Shed()
	f := sample.Frame(j)
	h := heights(f, 9*in)
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := strength.Work(strength.Input{Job: j, Frame: f, Heights: h}); !faults.Empty() {
			b.Fatal(faults.Err())
		}
	}
}

func BenchmarkPickOverAllChoices(b *testing.B) {
	j := allOpen(priced(sample.Shed()))
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := Pick(strength.Input{Job: j}); !faults.Empty() {
			b.Fatal(faults.Err())
		}
	}
}

// TestSpacedPiersAreCounted checks the cost of a line whose piers follow a
// greatest spacing, and that such a job is picked.
func TestSpacedPiersAreCounted(t *testing.T) {
	j := allOpen(priced(sample.Shed()))
	j.Frame.Piers.Spacing = 4 * ft
	p, faults := Pick(strength.Input{Job: j})
	require.NoError(t, faults.Err())
	f := sample.Frame(p.Job)
	assert.Equal(t, len(f.Piers), p.Chosen.Cost.Piers)
	assert.Zero(t, work(t, p.Job).Failing())
	assert.NotContains(t, p.Open, "frame.piers.per_line")
}

// TestMetricPick leaves a metric job with given values open.
func TestMetricPick(t *testing.T) {
	j := allOpen(sample.Summerhouse())
	p, faults := Pick(strength.Input{Job: j})
	require.NoError(t, faults.Err())
	assert.Zero(t, work(t, p.Job).Failing())
	t.Log(p.Chosen.Name(j.Style()), p.Chosen.Cost.Print(j.Style()))
}

// TestPickWithoutAWayOut checks the fault of loads that nothing within the bounds carries.
func TestPickWithoutAWayOut(t *testing.T) {
	j := allOpen(sample.Shed())
	j.Platform.FloorLoad = psf(3000)
	p, faults := Pick(strength.Input{Job: j})
	assert.Nil(t, p)
	require.False(t, faults.Empty())
	assert.Contains(t, faults.Sorted()[0].Wrong, "frames within the bounds")

	j = allOpen(sample.Shed())
	j.Timber.Species = "ironwood"
	_, faults = Pick(strength.Input{Job: j})
	require.False(t, faults.Empty())
	assert.Equal(t, "timber.species", faults.Sorted()[0].Path)
	j = allOpen(sample.Shed())
	j.Site.Soil = job.Soil{}
	_, faults = Pick(strength.Input{Job: j})
	assert.Equal(t, "site.soil", faults.Sorted()[0].Path)
}
