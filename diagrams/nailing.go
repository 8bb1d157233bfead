package diagrams

import (
	"math"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Nailing is the corner of a panel with its fasteners: closer at the edges,
// wider over the joists between.
type Nailing struct {
	Fastener     string         // "2 1/2″ ring-shank nail"
	EdgeDistance measure.Length // from the edge of the panel to the fastener
	Edge, Field  measure.Length // spacing along supported edges and over joists between
	Spacing      measure.Length // of joists
	Joist        measure.Length // thickness
	Gap          measure.Length // to the next panel
}

// About returns the record of the drawing.
func (n Nailing) About() About {
	return About{
		Name:  "nailing",
		Title: "Fasteners in the corner of a panel",
		Shows: "The corner of a panel over joists: fasteners close together along the edges, wider apart over the joists between, and how far from the edge they stand.",
	}
}

// leastPitch is the closest that fasteners are drawn, in millimetres of paper.
const leastPitch = 0.8

func (n Nailing) sheet(style measure.Style) *kit.Sheet {
	const left, top, nothing = 30.0, 17.0, "No fastening to draw yet"
	if n.Edge <= 0 || n.Field <= 0 || n.Spacing < n.Joist || n.Spacing < n.Edge {
		return blankSheet(n, nothing)
	}
	wide, high := n.Spacing*2+n.Spacing/3, n.Field*2+n.Field/3
	c := kit.Fit(wide, high, 88, 74)
	if c.Long(min(n.Edge, n.Field)) < leastPitch {
		return blankSheet(n, nothing)
	}
	c.Origin = kit.Point{X: left, Y: top}
	b := kit.Box{Left: left, Top: top, Right: left + c.Long(wide), Bottom: top + c.Long(high)}
	s := newSheet(n, b.Bottom+9)
	for i := range 3 {
		n.drawJoist(s, c, n.Spacing*measure.Length(i), b)
	}
	s.Lines(kit.Outline, kit.Segment{From: kit.Point{X: b.Left, Y: b.Bottom}, To: kit.Point{X: b.Left, Y: b.Top}},
		kit.Segment{From: kit.Point{X: b.Left, Y: b.Top}, To: kit.Point{X: b.Right, Y: b.Top}})
	n.drawFasteners(s, c, b)
	n.drawSizes(s, c, b, style)
	scaleNote(s, c.Name())
	return s
}

// drawJoist draws the faces of a joist under the panel as hidden edges; the first
// one stands flush with the edge.
func (n Nailing) drawJoist(s *kit.Sheet, c kit.Scale, centre measure.Length, b kit.Box) {
	from, to := c.X(centre-n.Joist/2), c.X(centre+n.Joist/2)
	if centre == 0 {
		from, to = c.X(0), c.X(n.Joist)
	}
	for _, x := range []float64{from, to} {
		if x > b.Left+0.5 && x < b.Right {
			s.Upright(kit.Hidden, x, b.Top, b.Bottom)
		}
	}
}

// inset returns how far the row of fasteners stands from the edge on the sheet,
// never so little that it would touch the edge line.
func (n Nailing) inset(c kit.Scale) float64 { return math.Max(c.Long(n.EdgeDistance), 1.6) }

func (n Nailing) drawFasteners(s *kit.Sheet, c kit.Scale, b kit.Box) {
	row := b.Top + n.inset(c)
	for i := 0; ; i++ {
		x := b.Left + n.inset(c) + c.Long(n.Edge)*float64(i)
		if x > b.Right {
			break
		}
		s.Circle(kit.Pen{}, kit.Black, kit.Point{X: x, Y: row}, 0.8)
	}
	n.column(s, b.Left+n.inset(c), row, c.Long(n.Edge), b)
	for i := 1; i < 3; i++ {
		n.column(s, c.X(n.Spacing*measure.Length(i)), row, c.Long(n.Field), b)
	}
}

func (n Nailing) column(s *kit.Sheet, x, top, pitch float64, b kit.Box) {
	for y := top + pitch; y < b.Bottom; y += pitch {
		s.Circle(kit.Pen{}, kit.Black, kit.Point{X: x, Y: y}, 0.8)
	}
}

func (n Nailing) drawSizes(s *kit.Sheet, c kit.Scale, b kit.Box, style measure.Style) {
	row, column := b.Top+n.inset(c), b.Left+n.inset(c)
	pitch, field := c.Long(n.Edge), c.Long(n.Field)
	s.DimensionAcross(column+pitch, column+2*pitch, b.Top-kit.FirstDimension, row-1, row-1, n.Edge.Print(style))
	s.DimensionUpright(row+pitch, row+2*pitch, b.Left-kit.FirstDimension, column-1, column-1, n.Edge.Print(style))
	x := c.X(n.Spacing)
	s.DimensionUpright(row+field, row+2*field, x+9, x+1, x+1, n.Field.Print(style))
	s.DimensionAcross(x, c.X(n.Spacing*2), b.Bottom-4, b.Bottom-4, b.Bottom-4, n.Spacing.Print(style))
	words := append(kit.Wrap(n.Fastener, kit.Small, 44, false), n.EdgeDistance.Print(style)+" from the edge")
	words = append(words, "panel gap "+measure.Exact(n.Gap).Print(style))
	s.Notes(pageWidth-45, false, b.Top, b.Bottom,
		kit.Note{Tip: kit.Point{X: column + math.Floor((b.Right-column-1)/pitch)*pitch, Y: row}, Lines: words, Dot: true},
		kit.Note{Tip: kit.Point{X: c.X(n.Spacing*2 + n.Joist/2), Y: row + field*1.6}, Lines: []string{"joist under it"}})
}
