package blocks

import (
	"math"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
	"pierbook/content"
)

// remedyTable lists the changes that mend a failing frame, cheapest first.
func remedyTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Change"), words("In the job file"), number("Cost"), number("Worst then"), words("Mends")}}
	for _, r := range p.Strength.Remedies {
		mends := "in part: " + strings.Join(r.Helps, ", ")
		if r.Mends {
			mends = "all"
		}
		t.Rows = append(t.Rows, []content.Cell{head(r.Words), text(r.Change), text(r.Cost), text(ratioText(r.Worst)), text(mends)})
	}
	return t
}

// conventionTable is the second check, by the convention behind the published
// deck-beam tables.
func conventionTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Check"), number("Span"), number("Allowed"), number("Ratio"), words("Convention")}, Size: content.Fine}
	for _, check := range p.Strength.Conventions {
		t.Rows = append(t.Rows, []content.Cell{head(check.What), c.quantity(check.Demand), c.quantity(check.Capacity), text(ratioText(check.Ratio)), remembered(check.Clause, check.Memory)})
	}
	return t
}

// pickTable shows the frame that was chosen and the next three.
func pickTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Frame"), number("Piers"), number("Cost"), number("Worst"), words("What decides")}}
	if p.Picked == nil {
		return t
	}
	c := of(p)
	cost := func(i int) content.Cell {
		k := p.Picked.Chosen.Cost
		if i >= 0 {
			k = p.Picked.RunnersUp[i].Cost
		}
		if k.Priced {
			return c.quantity(k.Money)
		}
		return text(k.Timber.Print(p.Style) + " of timber")
	}
	best := p.Picked.Chosen
	t.Rows = append(t.Rows, []content.Cell{head(best.Name(p.Style)), count(best.Cost.Piers), cost(-1), text(ratioText(best.Worst)), text("chosen")})
	for i, r := range p.Picked.RunnersUp {
		t.Rows = append(t.Rows, []content.Cell{head(r.Name(p.Style)), count(r.Cost.Piers), cost(i), text(ratioText(r.Worst)), text(p.Picked.Decides[i])})
	}
	t.Note = p.Picked.Proof
	return t
}

// sameTies are piers whose joints want the same.
type sameTies struct {
	tie   strength.Tie
	piers []string
}

func tiesAlike(ties []strength.Tie) []sameTies {
	var groups []sameTies
	for _, tie := range ties {
		at := slices.IndexFunc(groups, func(g sameTies) bool {
			return g.tie.Joint == tie.Joint && near(g.tie.Up, tie.Up) && near(g.tie.Level, tie.Level)
		})
		if at < 0 {
			at, groups = len(groups), append(groups, sameTies{tie: tie})
		}
		groups[at].piers = append(groups[at].piers, tie.Pier)
	}
	return groups
}

// near says whether two forces print alike: to the newton.
func near(a, b measure.Force) bool { return math.Abs(float64(a-b)) < 1 }

// tieTable lists the anchorage that the wind wants: places and forces; what
// holds them is by others.
func tieTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Piers"), words("Joint"), number("Hold down, each"), number("Hold sideways"), words("Held by")}}
	for _, group := range tiesAlike(p.Strength.Ties) {
		tie := group.tie
		t.Rows = append(t.Rows, []content.Cell{head(content.InRuns(group.piers)), text(tie.Joint), c.quantity(tie.Up), c.quantity(tie.Level), blank("what holds it, and whose design")})
	}
	return t
}

// uncheckedTable says what was left unchecked, and why.
func uncheckedTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Not checked"), words("Settled by")}}
	for _, what := range p.Strength.Unchecked {
		t.Rows = append(t.Rows, []content.Cell{text(what), blank("who settled it, and when")})
	}
	return t
}
