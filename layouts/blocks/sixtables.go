package blocks

import (
	"fmt"
	"strings"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
	"pierbook/content"
)

// Tables of four measured sides and two measured diagonals.

// sixTable shows the six measured lengths with what the adjustment makes of
// them and the mistake in each that alone would explain everything.
func sixTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Length"), number("Wanted"), number("Measured"), number("Adjusted"), number("Mistake, if this one is wrong"), words("Looks like")}}
	var notes []string
	for _, check := range p.SetOut.Checks() {
		g := content.Group{Name: "The " + check.Of + ": " + check.Rectangle.Title}
		a, r := check.Adjustment, check.Rectangle
		wanted := setout.Six{r.Length, r.Width, r.Length, r.Width, r.Diagonal(), r.Diagonal()}
		for i := range wanted {
			slip, like := text("–"), ""
			if a.Verdict != setout.Agree {
				slip, like = c.length(a.Slips[i].Size), a.Slips[i].Usual
				if like != "" && !a.Slips[i].Near {
					like = "perhaps " + like
				}
			}
			g.Rows = append(g.Rows, []content.Cell{head(setout.SideName(r, i)), c.length(wanted[i]), c.length(a.Measured[i]), c.length(a.Adjusted[i]), slip, text(like)})
		}
		t.Groups = append(t.Groups, g)
		notes = append(notes, sixWords(p, check))
	}
	t.Note = strings.Join(notes, " ")
	return t
}

// sixWords says what the six lengths and the diagonals among them mean, and what
// to measure again.
func sixWords(p *calc.Plan, check *setout.Check) string {
	print := func(l measure.Length) string { return l.Print(p.Style) }
	said := fmt.Sprintf("The %s: test value %.2f; %s.", check.Of, check.Adjustment.TestValue, check.Adjustment.Verdict)
	if check.MayMove() {
		said += fmt.Sprintf(" The diagonals differ by %s: %s.", print(check.Difference.Abs()), check.Squareness())
	}
	if check.Adjustment.Verdict == setout.Agree {
		said += " That the six agree means that none is mistaken, not that it is square."
	}
	switch suspects := check.Suspects(); {
	case len(suspects) > 0:
		said += " Measure again first: " + strings.Join(suspects, ", ") + "."
	case check.Adjustment.Verdict != setout.Agree:
		said += " To place the mistake, measure from a corner to the middle of the side opposite as well."
	}
	shows := check.Adjustment.Shows()
	return said + fmt.Sprintf(" A mistake under %s in a diagonal, or %s in a short side, would not have shown.", print(min(shows[4], shows[5])), print(max(shows[0], shows[1], shows[2], shows[3])))
}

// moveTable lists the corner moves for three choices of what to hold, with what
// the tape leaves open. What the tape cannot show is left out.
func moveTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Corner"), number("Along"), words("Towards"), number("Across"), words("Towards"), number("Give or take"), words("Moved")}, Size: content.Working}
	for _, check := range p.SetOut.Checks() {
		if !check.MayMove() {
			continue
		}
		if check.InPlace() {
			row := []content.Cell{head("all four"), text("stay"), text(""), text(""), text(""), text(""), text("")}
			t.Groups = append(t.Groups, content.Group{Name: "The " + check.Of + " are where they belong", Rows: [][]content.Cell{row}})
			continue
		}
		for _, hold := range check.Holds {
			g := content.Group{Name: fmt.Sprintf("The %s: %s; %s", check.Of, hold.Name, mayStay(hold.Stay))}
			for i, m := range hold.Moves {
				g.Rows = append(g.Rows, moveRow(p, check, i, m))
			}
			t.Groups = append(t.Groups, g)
		}
		t.Note = fmt.Sprintf("A corner within %s of its place stays: a tape cannot show less. “Give or take” is two standard deviations.", check.Tolerance.Print(p.Style))
	}
	return t
}

func mayStay(n int) string {
	switch n {
	case 0:
		return "all four move"
	case 1:
		return "one stays"
	case 4:
		return "all four stay"
	default:
		return fmt.Sprintf("%d stay", n)
	}
}

func moveRow(p *calc.Plan, check *setout.Check, i int, m setout.Move) []content.Cell {
	c := of(p)
	row := []content.Cell{head(check.Rectangle.Corners[i]), text("stays"), text(""), text(""), text(""), text(""), text("")}
	if m.Size() <= check.Tolerance {
		return row
	}
	row[1] = text("–")
	row[3] = text("–")
	along, across := check.Parts(m)
	if along != 0 {
		row[1], row[2] = c.length(along.Abs()), text(check.AlongTowards(i, m))
	}
	if across != 0 {
		row[3], row[4] = c.length(across.Abs()), text(check.AcrossTowards(i, m))
	}
	row[5] = c.length(2 * max(m.AlongError, m.AcrossError))
	row[6] = tick()
	return row
}
