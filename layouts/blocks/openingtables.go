package blocks

import (
	"cmp"
	"fmt"
	"strings"

	"pierbook/calc"
	"pierbook/calc/frame"
	"pierbook/content"
)

// openingTable lists what each opening cuts out of the pieces of the floor, from
// each piece's own corner.
func openingTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Piece"), number("From its hook end"), number("From its edge by side " + p.Frame.Lines[0].Name), number("Length"), number("Width"), words("Cut"), words("Done")}}
	for _, o := range p.Frame.Openings {
		g := content.Group{Name: fmt.Sprintf("%s: %s × %s, begins at %s along and %s across", o.Name, o.Length.Print(c.style), o.Width.Print(c.style), o.X.Print(c.style), o.Y.Print(c.style))}
		for _, cut := range o.CutOuts {
			g.Rows = append(g.Rows, []content.Cell{head(cut.Piece), c.length(cut.X), c.length(cut.Y), c.length(cut.Length), c.length(cut.Width), text(cut.Kind), tick()})
		}
		t.Groups = append(t.Groups, g)
	}
	if len(t.Groups) > 0 {
		t.Note = "Length along the beams, width across them. 0 is the piece's own edge. The gaps between pieces take the rest."
	}
	return t
}

// openingFrameTable says where each opening lies in the frame, and what carries
// its edges.
func openingFrameTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Opening"), words("Lies"), words("Edges carried by"), words("Look out for")}}
	for _, o := range p.Frame.Openings {
		lies := fmt.Sprintf("between J%d and J%d", o.Bay, o.Bay+1)
		carried := cmp.Or(strings.Join(o.Blocks, ", "), "the joists, and what lies across them")
		if o.NeedsHeaders() {
			lies, carried = "cuts "+strings.Join(o.Through, ", "), "headers, trimmers: by others"
		}
		t.Rows = append(t.Rows, []content.Cell{head(o.Name), text(lies), text(carried), text(lookOut(o))})
	}
	return t
}

func lookOut(o frame.Opening) string {
	var list []string
	if len(o.Close) > 0 {
		list = append(list, "less than a joist's thickness from "+strings.Join(o.Close, ", "))
	}
	if len(o.Over) > 0 {
		list = append(list, "the beam of line "+strings.Join(o.Over, ", ")+" runs below; never cut it")
	}
	if len(o.Bare) > 0 {
		list = append(list, "no room for a block towards "+strings.Join(o.Bare, ", ")+": carry that edge some other way")
	}
	return strings.Join(list, "; ")
}
