package diagrams

import (
	"slices"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Panels is the floor in sheets, as laid: rows across the joists, end joints on
// joists and staggered from row to row.
type Panels struct {
	limit
	Length, Width measure.Length
	LinesGoLeft   bool
	Joists        []measure.Length // x of their centres
	Panels        []PanelPiece
	Gap           measure.Length // between panels
	Openings      []Void         // in the floor
	Note          string         // further words at the foot: "tongue towards line C"
}

// PanelPiece is one piece of sheet as laid.
type PanelPiece struct {
	Name          string // "2.3": row 2, third from the hook end
	X, Y          measure.Length
	Length, Width measure.Length // along the beams and across
	Cut           bool           // not a whole sheet: its size is written on it
	FromOffcut    bool           // hatched: cut from what another sheet left
}

// About returns the record of the drawing.
func (p Panels) About() About {
	return About{
		Name:  "panels",
		Title: "Panels as laid",
		Shows: "The floor from above with " + counted(len(p.Panels), "piece of panel", "pieces of panel") + " in " + counted(len(p.rowEdges()), "row", "rows") +
			", each with its number; pieces that are cut carry their size, and those from an offcut are hatched. End joints stand on joists, drawn as dotted lines." + withVoids(p.Openings),
	}
}

func (p Panels) sheet(style measure.Style) *kit.Sheet {
	if len(p.Panels) == 0 || p.Length <= 0 {
		return blankSheet(p, "No panels to draw yet")
	}
	v := p.view(style)
	s := newSheet(p, v.height)
	for _, piece := range p.Panels {
		b := v.box(piece.X, piece.Y, piece.X+piece.Length, piece.Y+piece.Width)
		if piece.FromOffcut {
			s.HatchBox(kit.Falling, 3, b)
		}
		s.Rectangle(kit.Cut, kit.Open, b)
	}
	p.drawJoists(s, v)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	v.drawVoids(s, p.Openings)
	for _, piece := range p.Panels {
		p.writePiece(s, v, piece, style)
	}
	p.drawRunning(s, v, style)
	v.nameVoids(s, p.Openings, 0, style)
	foot := v.Name() + ", gap " + measure.Exact(p.Gap).Print(style)
	if p.Note != "" {
		foot = p.Note + "; " + foot
	}
	scaleNote(s, kit.Shorten(foot, kit.Small, pageWidth-4, false))
	return s
}

// view lays the floor on the sheet, with room for the running dimensions and,
// below, for the note.
func (p Panels) view(style measure.Style) gridView {
	free := room{left: kit.UprightRoom(printed(p.rowEdges(), style)...), right: 5 + voidRoom(p.Openings, style), near: 36, far: 8}
	if p.LinesGoLeft {
		free.far = 3
	}
	g := Grid{limit: p.limit, Length: p.Length, Width: p.Width, LinesGoLeft: p.LinesGoLeft}
	free.near = kit.FirstDimension + kit.RunningRoom(p.alongMarks(g.lay(free, 165), style), 0, pageWidth)
	if p.LinesGoLeft {
		free.near += 7
	}
	return g.lay(free, 165)
}

func (p Panels) drawJoists(s *kit.Sheet, v gridView) {
	var lines []kit.Segment
	for _, x := range p.Joists {
		lines = append(lines, kit.Segment{From: v.At(x, 0), To: v.At(x, p.Width)})
	}
	s.Lines(kit.Dotted, lines...)
}

// writePiece writes the number of a piece and, when it is cut, its size, level
// where that fits, else upwards, else the number alone.
func (p Panels) writePiece(s *kit.Sheet, v gridView, piece PanelPiece, style measure.Style) {
	b := v.besideVoids(v.box(piece.X, piece.Y, piece.X+piece.Length, piece.Y+piece.Width), p.Openings)
	at, wide, high := b.Centre(), b.Right-b.Left-1.6, b.Bottom-b.Top-1
	size := ""
	if piece.Cut {
		size = piece.Length.Print(style) + " × " + piece.Width.Print(style)
	}
	name := kit.Text{Words: piece.Name, At: at, Size: kit.Medium, Bold: true}
	nameWide, sizeWide := kit.Width(piece.Name, kit.Medium, true), kit.Width(size, kit.Small, false)
	line := kit.Pitch(kit.Medium)
	switch {
	case size != "" && sizeWide <= wide && 2*line <= high:
		s.Write(moved(name, at.Plus(0, -line/2)))
		s.Write(kit.Text{Words: size, At: at.Plus(0, line/2)})
	case size != "" && nameWide+2+sizeWide <= wide && line <= high:
		s.Write(moved(name, at.Plus(-(sizeWide+2)/2, 0)))
		s.Write(kit.Text{Words: size, At: at.Plus((nameWide+2)/2, 0)})
	case size != "" && sizeWide <= high && 2*line <= wide:
		turned := moved(name, at.Plus(-line/2, 0))
		turned.Turned = true
		s.Write(turned)
		s.Write(kit.Text{Words: size, At: at.Plus(line/2, 0), Turned: true})
	case nameWide <= wide && line <= high:
		s.Write(name)
	case nameWide <= high && line <= wide:
		name.Turned = true
		s.Write(name)
	default:
		// A strip thinner than its number: the number covers the edges a little.
		name.Size = kit.Small
		s.WriteFirst(name)
	}
}

func (p Panels) drawRunning(s *kit.Sheet, v gridView, style measure.Style) {
	var across []kit.Mark
	for _, y := range p.rowEdges() {
		across = append(across, kit.Mark{At: v.Y(y), Edge: v.frame.Left, Words: y.Print(style)})
	}
	s.RunningAcross(v.X(0), p.alongMarks(v, style), v.nearY()+v.out*kit.FirstDimension, v.LinesGoLeft)
	s.RunningUpright(v.Y(0), across, v.frame.Left-kit.FirstDimension, false)
}

// alongMarks are the running marks of the joints.
func (p Panels) alongMarks(v gridView, style measure.Style) []kit.Mark {
	var list []kit.Mark
	for _, x := range p.joints() {
		list = append(list, kit.Mark{At: v.X(x), Edge: v.nearY(), Words: x.Print(style)})
	}
	return list
}

// joints returns the ends of pieces along the beams, by rising x.
func (p Panels) joints() []measure.Length {
	var list []measure.Length
	for _, piece := range p.Panels {
		list = append(list, piece.X+piece.Length)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// rowEdges returns the far edges of the rows by rising y.
func (p Panels) rowEdges() []measure.Length {
	var list []measure.Length
	for _, piece := range p.Panels {
		list = append(list, piece.Y+piece.Width)
	}
	slices.Sort(list)
	return slices.Compact(list)
}
