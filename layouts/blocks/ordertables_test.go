package blocks

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/content"
	"pierbook/diagrams"
)

// orderPlan works the sample through, changed by change when that is given.
func orderPlan(t *testing.T, change func(*job.Job)) *calc.Plan {
	t.Helper()
	j, faults := job.Read(content.Sample, content.SampleJob)
	require.True(t, faults.Empty(), "%v", faults)
	if change != nil {
		change(j)
	}
	p, faults := calc.Work(j)
	require.True(t, faults.Empty(), "%v", faults)
	return p
}

// wordsIn returns all text of a table.
func wordsIn(t content.Table) string {
	var b strings.Builder
	add := func(rows [][]content.Cell) {
		for _, row := range rows {
			for _, cell := range row {
				b.WriteString(cell.Text + " | ")
			}
			b.WriteString("\n")
		}
	}
	add(t.Rows)
	for _, g := range t.Groups {
		b.WriteString(g.Name + "\n")
		add(g.Rows)
	}
	return b.String() + t.Note
}

func TestTotalsAreHonestAboutBlanks(t *testing.T) {
	some := orderPlan(t, nil)
	assert.Contains(t, wordsIn(onPaper(t, some, "order")), "8 lines with a price; what the other 14 cost comes on top")

	none := orderPlan(t, func(j *job.Job) {
		j.Yard.Prices = nil
		for _, stock := range j.Yard.Stock {
			for i := range stock {
				stock[i].Price = nil
			}
		}
	})
	assert.Contains(t, wordsIn(onPaper(t, none, "order")), "no price is known")
	assert.NotContains(t, wordsIn(onPaper(t, none, "order")), "$")

	for i := range some.Order.Lines {
		one := measure.Money(1)
		some.Order.Lines[i].Price = &one
	}
	some.Order.Blank = 0
	var said []string
	lines := some.Order.Sets()[0]
	for _, f := range lines.Figures() {
		said = append(said, f.Text(some.Style))
	}
	assert.Contains(t, strings.Join(said, "\n"), "all with a price")
}

func TestOrderSaysWhenStoneIsNotInIt(t *testing.T) {
	planned := orderPlan(t, func(j *job.Job) { j.Ground.SetUps, j.Ground.Probes = nil, nil })
	text := wordsIn(onPaper(t, planned, "order"))
	assert.Contains(t, text, "Stone is not in these sums")
	assert.Contains(t, text, "every post is counted at 24″, the longest allowed")
	assert.NotContains(t, wordsIn(onPaper(t, orderPlan(t, nil), "order")), "Stone is not in these sums")
}

func TestLoadsThatAreAlikeStandInOneRow(t *testing.T) {
	p := orderPlan(t, nil)
	table := onPaper(t, p, "trips")
	assert.Less(t, len(table.Rows), p.Order.Loads())
	assert.Contains(t, wordsIn(table), "3 to 5")
	p.Order.Trips = []order.Trip{{Goods: []order.TripGoods{{What: "beam", Count: 1}}, Over: true}}
	over := slices.IndexFunc(p.Order.Figures(p.Style), func(f figure.Figure) bool { return f.Key == "order.over_load" && f.Holds() })
	assert.GreaterOrEqual(t, over, 0, "one piece is heavier than a load")
}

// Each piece of timber and each panel has one label, and one place.
func TestALabelForEveryPiece(t *testing.T) {
	p := orderPlan(t, nil)
	seen := map[string]int{}
	for _, d := range labels(p) {
		for _, l := range d.(diagrams.Labels).Labels {
			seen[l.Name]++
			assert.NotEmpty(t, l.Place, l.Name)
			if l.Place == "post on pier "+l.Name {
				assert.Zero(t, l.Long, "no length before the seat is read")
			}
		}
	}
	pieces := len(p.Frame.Surface.Panels)
	for _, c := range p.Cuts {
		for _, piece := range c.Pieces {
			pieces += piece.Count
		}
	}
	assert.Len(t, seen, pieces)
	for name, n := range seen {
		assert.Equal(t, 1, n, name)
	}
}

// A saw is never set to a post that is only planned.
func TestNoSettingForPlannedPosts(t *testing.T) {
	assert.NotContains(t, wordsIn(onPaper(t, orderPlan(t, nil), "settings")), "posts |")
	assert.NotContains(t, wordsIn(onPaper(t, orderPlan(t, nil), "settings")), "A5")
	assert.Contains(t, wordsIn(onPaper(t, orderPlan(t, nil), "settings")), "J1 (3) to J13 (15)")
}

func TestStepNamesItsHeaviestLift(t *testing.T) {
	p := orderPlan(t, nil)
	for step, words := range map[string]string{"beams": "beam piece 4x6, 62\u00a0lb: 2 people", "surface": "68\u00a0lb: 2 people"} {
		assert.Contains(t, stepParts(p, step).Note, words)
	}
	assert.Empty(t, stepParts(p, "joists").Note)
}

func TestDaysEndWithHowTheWorkIsLeft(t *testing.T) {
	table := onPaper(t, orderPlan(t, nil), "days")
	require.NotEmpty(t, table.Groups)
	assert.Equal(t, "Sat 15 May", table.Groups[0].Name)
	for _, g := range table.Groups {
		last := g.Rows[len(g.Rows)-1]
		assert.Equal(t, "Left overnight", last[0].Text)
		assert.NotEmpty(t, last[3].Text)
	}
}
