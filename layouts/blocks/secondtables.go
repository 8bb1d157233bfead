package blocks

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/heights"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables of the second issue: what came back from the site.

// secondTable sets planned, measured and used side by side for every pier, and
// says what is to be done about its post.
func secondTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Pier"), number("Seat planned"), number("Seat read"), number("Post planned"), big("Post to cut"), words("What to do")}, Size: content.Working}
	if p.Heights.Seats == nil && len(p.Job.Measured.PostsCut) == 0 {
		return t
	}
	doubtful := map[string]calc.DoubtfulSeat{}
	for _, d := range p.DoubtfulSeats() {
		doubtful[d.Pier] = d
	}
	for i, post := range p.Heights.Posts {
		pier := p.Heights.Piers[i]
		read, planned, length := text(""), text(""), text("")
		if seats := p.Heights.Seats; seats != nil {
			if k := slices.IndexFunc(seats.Read, func(s heights.SeatRead) bool { return s.Name == post.Name }); k >= 0 {
				read = c.length(seats.Read[k].Height)
			}
		}
		if pier.Planned != nil {
			planned = c.length(pier.Planned.Seat)
		}
		if hole := plannedHole(pier); hole != nil {
			length = c.length(hole.Post)
		}
		cut := c.length(post.Wanted)
		if post.State == heights.Estimate {
			cut = blank("seat not read")
		}
		do := post.Words(p.Heights.Posts, p.Style)
		if d, again := doubtful[post.Name]; again {
			do += "; " + d.Sentence(p.Style)
		}
		t.Rows = append(t.Rows, []content.Cell{head(post.Name), planned, read, length, cut, text(do)})
	}
	return t
}

// wayTable lists the ways out for posts that are short or do not fit.
func wayTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Way out"), words("What it takes"), words("What it brings along")}}
	for _, post := range p.Heights.Posts {
		if len(post.Ways) == 0 {
			continue
		}
		g := content.Group{Name: "Post " + post.Name}
		for _, w := range post.Ways {
			g.Rows = append(g.Rows, []content.Cell{head(w.Kind), text(wayTakes(p, post, w)), text(wayBrings(w))})
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

// wayTakes says what one way out takes.
func wayTakes(p *calc.Plan, post heights.Post, w heights.WayOut) string {
	length, by := w.Length.Print(p.Style), w.By.Print(p.Style)
	switch {
	case w.Kind == "another pier" && w.Pier == "":
		return "–"
	case w.Kind == "another pier":
		there := p.Heights.Posts[slices.IndexFunc(p.Heights.Posts, func(post heights.Post) bool { return post.Name == w.Pier })]
		if w.By <= measure.Sixteenth {
			return fmt.Sprintf("stand it at %s as it is; cut a new one of %s for %s", w.Pier, length, post.Name)
		}
		return fmt.Sprintf("cut it down to %s for %s; cut a new one of %s for %s", there.Wanted.Print(p.Style), w.Pier, length, post.Name)
	case w.Kind == "lower floor":
		return "lower the floor by " + by + "; every post is shorter by as much"
	case w.Kind == "new post":
		return "cut a new one of " + length
	case w.Kind == "lower the seat":
		return fmt.Sprintf("take %s of stone out, set the block again; the post is %s then", by, length)
	default:
		return fmt.Sprintf("put %s of stone in, set the block again; the post is %s then", by, length)
	}
}

func wayBrings(w heights.WayOut) string {
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

// finishedTable is the as-built floor, fit for the client.
func finishedTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("At pier"), number("Reading"), number("Height"), number("Over the plan")}}
	if a := p.Heights.AsBuilt; a != nil {
		for _, point := range a.Points {
			t.Rows = append(t.Rows, []content.Cell{head(point.Name), c.quantity(measure.Reading(point.Reading)), c.length(point.Height), c.length(point.Over)})
		}
		t.Note = fmt.Sprintf("Highest %s, lowest %s: %s apart. Neighbours that differ most: %s and %s, by %s.", a.High.Name, a.Low.Name, a.Range.Print(p.Style),
			a.WorstNeighbour[0].Name, a.WorstNeighbour[1].Name, a.WorstStep.Print(p.Style))
	}
	return t
}
