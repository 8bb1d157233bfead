package blocks

import (
	"fmt"
	"strings"

	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/content"
)

// Tables of what to cut, for the saw.

// stickTable says which stick yields which pieces, and where to mark them.
func stickTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Stick"), number("Length"), words("Pieces, hook end first"), words("Marks from the hook end"), number("Left over"), words("Cut")}}
	for _, cut := range p.Cuts {
		g := content.Group{Name: cut.Section.Size + ", for " + cut.Use()}
		for _, like := range cut.Alike() {
			s := like[0]
			pieces := make([]string, len(like))
			for i, one := range like {
				pieces[i] = pieceList(p, one, i == 0)
			}
			g.Rows = append(g.Rows, []content.Cell{head(strings.TrimPrefix(cut.StickNames(like), cut.Section.Size+" ")), c.length(s.Length), text(strings.Join(pieces, "; ")), text(marks(p, s)), c.down(s.Left), tick()})
		}
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	t.Note = "Each mark is the far end of its piece and counts the saw cuts before it. Saw on the far side of the mark. Spoiled a long piece? Take it from the stick after, and the spoiled one for a shorter piece below."
	return t
}

// marks lists the running marks of a stick.
func marks(p *calc.Plan, s cutting.CutStick) string {
	parts := make([]string, 0, len(s.Cuts)+1)
	if s.Trim > 0 {
		parts = append(parts, "trim "+s.Trim.Print(p.Style))
	}
	for _, piece := range s.Cuts {
		parts = append(parts, piece.Mark.Print(p.Style))
	}
	return strings.Join(parts, ", ")
}

// pieceList names the pieces of a stick, with their lengths where they are not
// the same as on the stick before.
func pieceList(p *calc.Plan, s cutting.CutStick, lengths bool) string {
	parts := make([]string, 0, len(s.Cuts))
	for _, piece := range s.Cuts {
		name := piece.Name
		if lengths {
			name += "\u00a0" + piece.Length.Print(p.Style)
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}

// settingTable lists the settings of the saw's stop, the longest first, each
// with all the pieces cut at it.
func settingTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{big("Stop at"), number("Pieces"), words("Names and sticks"), words("Done")}, Size: content.Working}
	for _, cut := range p.Cuts {
		if cut.Result == nil || plannedPosts(p, cut) {
			continue
		}
		g := content.Group{Name: cut.Section.Size + ", for " + cut.Use()}
		for _, s := range cut.Result.Settings() {
			g.Rows = append(g.Rows, []content.Cell{c.length(s.Length), count(len(s.Cuts)), text(settingNames(s)), tick()})
		}
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	t.Note = "In brackets the number of the stick. Set the stop once for each row. Posts are not here before their seats are read."
	return t
}

// settingNames lists pieces with the sticks that they come from; pieces in a row
// that follow one another by name are drawn together.
func settingNames(s cutting.Setting) string {
	const few = 8
	if len(s.Cuts) > few {
		first, last := s.Cuts[0], s.Cuts[len(s.Cuts)-1]
		return fmt.Sprintf("%s (%d) to %s (%d)", first.Name, first.Stick, last.Name, last.Stick)
	}
	parts := make([]string, len(s.Cuts))
	for i, cut := range s.Cuts {
		parts[i] = fmt.Sprintf("%s\u00a0(%d)", cut.Name, cut.Stick)
	}
	return strings.Join(parts, ", ")
}

// proofTable says for each section what is bought, that no plan costs less, and how
// that is known.
func proofTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Size"), number("Buy"), number("Costs"), number("Least possible"), words("How that is known"), number("Used")}, Size: content.Fine}
	for _, cut := range p.Cuts {
		if cut.Result == nil || len(cut.Result.Proofs) == 0 {
			t.Rows = append(t.Rows, []content.Cell{head(cut.Section.Size), text(""), text(""), text(""), text(cut.Proof(p.Style)), text("")})
			continue
		}
		cost := cut.Result.Proofs[0]
		how := cut.ProofOfCost(p.Style)
		if sum := cut.ByHand(p.Style); sum != "" {
			how += ": " + sum
		}
		if lesser := cut.LesserAims(); lesser != "" {
			how += ". Among plans of that cost " + lesser
		}
		t.Rows = append(t.Rows, []content.Cell{head(cut.Section.Size), count(cut.Result.Bought), text(cut.Amount(cost.Value, p.Style)), text(cut.Amount(cost.Bound, p.Style)), text(how + "."), of(p).quantity(cut.Result.UsedShare())})
	}
	return t
}
