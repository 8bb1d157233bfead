package blocks

import (
	"fmt"
	"strings"

	"pierbook/calc"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables of the hours and the days.

func hourTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Step"), number("Hours of one person"), words("From"), words("Overnight"), {Text: "Taken", Unit: "h"}}}
	for _, s := range p.Weekend.Steps {
		taken, from := blank("hours taken"), "estimate"
		if s.Actual > 0 {
			taken = text(s.Actual.Print(p.Style))
		}
		if s.Own {
			from = "the shop"
		}
		t.Rows = append(t.Rows, []content.Cell{head(s.Title), text(s.Hours.Print()), text(from), text(s.Overnight), taken})
	}
	t.Note = fmt.Sprintf("In all %s of one person. The low end is a practised hand's, the high end a first-timer's. Write down the hours of all people together: two people for three hours are six.", p.Weekend.Total.Print())
	if pace, known := p.Weekend.Pace(); known {
		t.Note += fmt.Sprintf(" Steps done so far took %s times the middle of their estimates.", pace.Print(p.Style))
	}
	return t
}

// ownRateTable offers the hours taken as lines for the shop's file.
func ownRateTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("For the shop's file"), number("Estimate"), number("Taken")}}
	lines := strings.Split(strings.TrimRight(p.Weekend.Rates(), "\n"), "\n")
	if len(lines) < 3 {
		return t
	}
	for _, line := range lines[:2] {
		t.Rows = append(t.Rows, []content.Cell{text(indented(line)), text(""), text("")})
	}
	at := 2
	for _, s := range p.Weekend.Steps {
		if s.Actual > 0 {
			t.Rows = append(t.Rows, []content.Cell{text(indented(lines[at])), text(s.Estimated.Print()), text(s.Actual.Print(p.Style))})
			at++
		}
	}
	t.Note = "Hours of one person for a platform of this size. Put the lines into the shop's file, and the next binder plans with them."
	return t
}

// indented keeps the blanks at the start of a line of a file.
func indented(line string) string {
	trimmed := strings.TrimLeft(line, " ")
	return strings.Repeat("\u00a0", len(line)-len(trimmed)) + trimmed
}

// dayTable lists the days: what is done when, the hold points, and how the work may
// be left at night.
func dayTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Step"), number("From"), number("To"), words("Hold point at its end")}}
	start, dated := startDay(p.Job.Crew.Starts)
	for i, day := range p.Weekend.Days {
		g := content.Group{Name: dayName(start, dated, i)}
		for _, part := range day.Parts {
			hold := "goes on next day"
			if part.Ends {
				hold = part.Hold
			}
			g.Rows = append(g.Rows, []content.Cell{head(part.Title), text(clock(part.Start)), text(clock(part.End)), text(hold)})
		}
		overnight, _ := day.Left(p.Weekend.Steps)
		g.Rows = append(g.Rows, []content.Cell{head("Left overnight"), text(""), text(""), text(overnight)})
		t.Groups = append(t.Groups, g)
	}
	t.Note = fmt.Sprintf("Hours from the start of the day, at the middle of each range, with %d people. Rain, rock and a first job take longer.", p.Weekend.Crew)
	return t
}

// clock prints hours and minutes to the quarter.
func clock(h measure.Hours) string {
	quarters := int(float64(h)*4 + 0.5)
	return fmt.Sprintf("%d:%02d", quarters/4, quarters%4*15)
}
