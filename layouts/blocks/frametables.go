package blocks

import (
	"fmt"

	"pierbook/calc"
	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/content"
)

// Tables of the pieces of the frame.

func beamTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Piece"), big("Length"), number("From"), number("To"), words("Joint"), words("Cut")}, Size: content.Working,
		Note: "From and to are measured along the line from the hook end of the frame."}
	for _, line := range p.Frame.Lines {
		g := content.Group{Name: "Line " + line.Name}
		for k, ply := range line.Plies {
			for i, piece := range ply.Pieces {
				joint := ""
				if i < len(ply.Pieces)-1 {
					joint = "over " + pierAt(p.Frame, line.Name, piece.To)
				}
				if len(line.Plies) > 1 && i == 0 {
					joint = fmt.Sprintf("ply %d; %s", k+1, joint)
				}
				g.Rows = append(g.Rows, []content.Cell{head(piece.Name), c.length(piece.Long()), c.length(piece.From), c.length(piece.To), text(joint), tick()})
			}
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

func pierAt(f *frame.Frame, line string, x measure.Length) string {
	best, distance := "", f.Length
	for _, pier := range f.Piers {
		if f.Lines[pier.Line].Name == line && (pier.X-x).Abs() < distance {
			best, distance = pier.Name, (pier.X - x).Abs()
		}
	}
	return best
}

// run is some pieces in a row with one length.
type run struct {
	from, to string
	length   measure.Length
	count    int
}

func (r run) name() string {
	if r.from == r.to {
		return r.from
	}
	return r.from + " to " + r.to
}

func joistTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Joist"), big("Mark of near face"), words("Stands"), number("Length"), words("Set")}, Size: content.Working,
		Note: "Marks run from the frame end at the hook corner; hook the tape once."}
	for _, j := range p.Frame.Joists {
		if j.Bay != 1 {
			continue
		}
		side := "beyond its mark"
		if j.MarkSide == "before" {
			side = "before its mark"
		}
		t.Rows = append(t.Rows, []content.Cell{head(fmt.Sprintf("J%d", j.Number)), c.length(j.Near), text(side), c.length(j.Long()), tick()})
	}
	return t
}

func rimTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Piece"), big("Length"), number("From"), number("To"), words("Cut")}, Size: content.Working}
	for _, r := range p.Frame.Rims {
		for _, piece := range r.Pieces {
			t.Rows = append(t.Rows, []content.Cell{head(piece.Name), c.length(piece.Long()), c.length(piece.From), c.length(piece.To), tick()})
		}
	}
	return t
}

func blockingTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Blocking"), number("Pieces"), big("Length"), number("y, centre"), words("Cut")}, Size: content.Working}
	var runs []run
	centres, turned := map[string]measure.Length{}, map[string]bool{}
	for _, b := range p.Frame.Blocking {
		long := b.To - b.From
		if n := len(runs); n > 0 && runs[n-1].length == long && centres[runs[n-1].from] == b.Y && !b.Turned {
			runs[n-1].to, runs[n-1].count = b.Name, runs[n-1].count+1
			continue
		}
		centres[b.Name], turned[b.Name] = b.Y, b.Turned
		runs = append(runs, run{b.Name, b.Name, long, 1})
	}
	for _, r := range runs {
		centre := c.length(centres[r.from])
		if turned[r.from] { // along the joists, beside an opening
			centre.Text = "x " + centre.Text
		}
		t.Rows = append(t.Rows, []content.Cell{head(r.name()), count(r.count), c.length(r.length), centre, tick()})
	}
	return t
}

func panelTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Panel"), number("From hook end"), number("From side A"), number("Length"), number("Width"), words("Cut"), number("Sheet")}}
	for _, row := range p.Frame.Surface.Rows {
		g := content.Group{Name: fmt.Sprintf("Row %d", row.Number)}
		if row.Comment != "" {
			g.Name += ": " + row.Comment
		}
		for _, piece := range p.Frame.Surface.Panels {
			if piece.Row == row.Number {
				g.Rows = append(g.Rows, []content.Cell{head(piece.Name), c.length(piece.X), c.length(piece.Y), c.length(piece.Length), c.length(piece.Width), text(cutWords(piece)), count(piece.Sheet)})
			}
		}
		t.Groups = append(t.Groups, g)
	}
	return t
}

func cutWords(piece frame.Panel) string {
	words := "whole sheet"
	switch {
	case piece.CutLength && piece.Ripped:
		words = "cut and ripped"
	case piece.CutLength:
		words = "cut to length"
	case piece.Ripped:
		words = "ripped"
	}
	if piece.FromOffcut {
		words += ", from an offcut"
	}
	return words
}

func boardTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Board"), big("Near edge from side A"), number("Width"), words("Joints at"), words("Laid")}}
	for _, b := range p.Frame.Surface.Boards {
		joints := ""
		for i, piece := range b.Pieces[:max(0, len(b.Pieces)-1)] {
			if i > 0 {
				joints += ", "
			}
			joints += piece.To.Print(c.style)
		}
		width := c.length(b.Width)
		width.Strong = b.Ripped
		t.Rows = append(t.Rows, []content.Cell{head(fmt.Sprint(b.Number)), c.length(b.Y), width, text(joints), tick()})
	}
	return t
}
