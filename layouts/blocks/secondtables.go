package blocks

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/ground"
	"pierbook/calc/setout"
	"pierbook/layouts"
)

// Tables of the second issue: what came back from the site.

// secondTable sets planned, measured and used side by side for every pier, and
// says what is to be done about its post.
func secondTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Pier"), number("Seat planned"), number("Seat read"), number("Post planned"), big("Post to cut"), words("What to do")}, Size: layouts.Working}
	if p.Ground.Seats == nil && len(p.Job.Measured.PostsCut) == 0 {
		return t
	}
	for i, post := range p.Ground.Posts {
		pier := p.Ground.Piers[i]
		read, planned := text(""), text("")
		if seats := p.Ground.Seats; seats != nil {
			if k := slices.IndexFunc(seats.Read, func(s ground.SeatRead) bool { return s.Name == post.Name }); k >= 0 {
				read = c.length(seats.Read[k].Height)
			}
		}
		if pier.Planned != nil {
			planned = c.length(pier.Planned.Seat)
		}
		cut := c.length(post.Wanted)
		if post.State == ground.Estimate {
			cut = blank("seat not read")
		}
		t.Rows = append(t.Rows, []layouts.Cell{head(post.Name), planned, read, c.length(post.Wanted), cut, text(postWords(p, post))})
	}
	return t
}

// postWords says what is to be done about a post.
func postWords(p *calc.Plan, post ground.Post) string {
	switch post.State {
	case ground.Estimate:
		return "read the seat first"
	case ground.ToCut:
		return "cut"
	case ground.Serves:
		return "cut already, serves"
	case ground.Shim:
		return "cut already, shim by " + post.Shim.Print(p.Style)
	case ground.Trim:
		return "cut already, trim to " + post.Wanted.Print(p.Style)
	case ground.Exchange:
		return "take the post cut for " + post.From
	case ground.CutAnew:
		return "cut a new one"
	default:
		return "does not fit its limits: see the ways out"
	}
}

// wayTable lists the ways out for posts that are short or do not fit.
func wayTable(p *calc.Plan) layouts.Table {
	t := layouts.Table{Head: []layouts.Column{words("Way out"), words("What it takes"), words("What it brings along")}}
	for _, post := range p.Ground.Posts {
		if len(post.Ways) == 0 {
			continue
		}
		g := layouts.Group{Name: "Post " + post.Name}
		for _, w := range post.Ways {
			g.Rows = append(g.Rows, []layouts.Cell{head(w.Kind), text(wayTakes(p, w)), text(wayBrings(w))})
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

func wayTakes(p *calc.Plan, w ground.WayOut) string {
	var parts []string
	if w.Pier != "" {
		parts = append(parts, "at pier "+w.Pier)
	}
	if w.By != 0 {
		parts = append(parts, "by "+w.By.Print(p.Style))
	}
	if w.Length != 0 {
		parts = append(parts, "new length "+w.Length.Print(p.Style))
	}
	return strings.Join(parts, ", ")
}

func wayBrings(w ground.WayOut) string {
	var parts []string
	if w.Blocked != "" {
		parts = append(parts, "cannot be done: "+w.Blocked)
	}
	if len(w.Trims) > 0 {
		parts = append(parts, "cut again: "+strings.Join(w.Trims, ", "))
	}
	if len(w.TooShort) > 0 {
		parts = append(parts, "too short then: "+strings.Join(w.TooShort, ", "))
	}
	return strings.Join(parts, "; ")
}

// sixTable shows the six measured lengths with the adjustment's verdict.
func sixTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Length"), number("Wanted"), number("Measured"), number("Adjusted by"), number("A slip would be"), words("Looks like")}}
	var notes []string
	for _, check := range p.SetOut.Checks() {
		g := layouts.Group{Name: "The " + check.Of}
		a := check.Adjustment
		r := check.Rectangle
		wanted := setout.Six{r.Length, r.Width, r.Length, r.Width, r.Diagonal(), r.Diagonal()}
		for i := range wanted {
			usual := a.Slips[i].Usual
			if a.Verdict == setout.Agree {
				usual = ""
			}
			g.Rows = append(g.Rows, []layouts.Cell{head(setout.SideName(r, i)), c.length(wanted[i]), c.length(a.Measured[i]), c.length(a.Residual[i]), c.length(a.Slips[i].Size), text(usual)})
		}
		t.Groups = append(t.Groups, g)
		notes = append(notes, fmt.Sprintf("The %s: test value %.2f; %s.", check.Of, a.TestValue, a.Verdict))
	}
	t.Note = strings.Join(notes, " ")
	return t
}

// moveTable lists the corner moves for three choices of what to hold.
func moveTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("Corner"), number("Along"), words("Towards"), number("Across"), words("Towards"), words("Moved")}, Size: layouts.Working}
	for _, check := range p.SetOut.Checks() {
		if !check.MayMove() {
			continue
		}
		for _, hold := range check.Holds {
			g := layouts.Group{Name: fmt.Sprintf("The %s: %s; %d may stay", check.Of, hold.Name, hold.Stay)}
			for i, m := range hold.Moves {
				if m.Size() <= check.Tolerance {
					g.Rows = append(g.Rows, []layouts.Cell{head(check.Rectangle.Corners[i]), text("stays"), text(""), text(""), text(""), text("")})
					continue
				}
				g.Rows = append(g.Rows, []layouts.Cell{head(check.Rectangle.Corners[i]), c.length(m.Along.Abs()), text(check.AlongTowards(i, m)), c.length(m.Across.Abs()), text(check.AcrossTowards(i, m)), tick()})
			}
			t.Groups = append(t.Groups, g)
		}
	}
	return t
}

// finishedTable is the as-built floor, fit for the client.
func finishedTable(p *calc.Plan) layouts.Table {
	c := of(p)
	t := layouts.Table{Head: []layouts.Column{words("At pier"), number("Reading"), number("Height"), number("Over the plan")}}
	if a := p.Ground.AsBuilt; a != nil {
		for _, point := range a.Points {
			t.Rows = append(t.Rows, []layouts.Cell{head(point.Name), c.length(point.Reading), c.length(point.Height), c.length(point.Over)})
		}
		t.Note = fmt.Sprintf("Highest %s, lowest %s: %s apart. Neighbours that differ most: %s and %s, by %s.", a.High.Name, a.Low.Name, a.Range.Print(p.Style),
			a.WorstNeighbour[0].Name, a.WorstNeighbour[1].Name, a.WorstStep.Print(p.Style))
	}
	return t
}
