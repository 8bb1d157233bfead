package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Splice is a beam joint over a post: from the side, and the plies from above.
type Splice struct {
	limit
	Pier      string
	BeamDepth measure.Length
	Plies     []SplicePly
	Thick     measure.Length // of a ply
	Post      measure.Length // side of the post
	Bearing   measure.Length // of each beam end on the post
	Least     measure.Length // least bearing that the joint needs
}

// SplicePly is one layer of the beam: jointed here, or running through.
type SplicePly struct{ Jointed bool }

// About returns the record of the drawing.
func (p Splice) About() About {
	return About{
		Name:  kit.ID("splice-" + p.Pier),
		Title: "Beam joint over the post at " + p.Pier,
		Shows: "From the side, two beam ends meeting over the middle of the post, each with its bearing; below it the plies from above, those that are jointed here and those that run through.",
	}
}

func (p Splice) sheet(style measure.Style) *kit.Sheet {
	if p.BeamDepth <= 0 || p.Post <= 0 || len(p.Plies) == 0 {
		return blankSheet(p, "No beam joint to draw")
	}
	const middle, top = 52.0, 16.0
	c := kit.Fit(p.BeamDepth*4, p.BeamDepth*2, 96, p.room(56, 34+6*float64(len(p.Plies)), 26))
	c.Origin = kit.Point{X: middle, Y: top}
	deep := c.Long(p.BeamDepth)
	plies := top + deep*1.85 + 10
	thick := max(c.Long(p.Thick), 4.6)
	s := newSheet(p, plies+thick*float64(len(p.Plies))+8)
	p.drawSide(s, c, deep, style)
	p.drawPlies(s, c, plies, thick)
	scaleNote(s, c.Name())
	return s
}

// drawSide draws the beam ends, the cap and the head of the post from the side.
func (p Splice) drawSide(s *kit.Sheet, c kit.Scale, deep float64, style measure.Style) {
	x, top, under := c.Origin.X, c.Origin.Y, c.Origin.Y+deep
	half, reach := c.Long(p.Post)/2, 44.0
	foot := under + deep*0.85
	post := kit.Box{Left: x - half, Top: under + 0.8, Right: x + half, Bottom: foot}
	s.Polyline(kit.Outline, kit.Point{X: post.Left, Y: foot}, kit.Point{X: post.Left, Y: post.Top}, kit.Point{X: post.Right, Y: post.Top}, kit.Point{X: post.Right, Y: foot})
	for _, way := range []float64{-1, 1} {
		end := x + way*reach
		s.Lines(kit.Outline, kit.Segment{From: kit.Point{X: x, Y: top}, To: kit.Point{X: end, Y: top}},
			kit.Segment{From: kit.Point{X: x, Y: under}, To: kit.Point{X: end, Y: under}})
		stripBreak(s, end, top, under)
	}
	s.Upright(kit.Outline, x, top, under)
	plate := half + 3
	s.Rectangle(kit.Cut, kit.Open, kit.Box{Left: x - plate, Top: under - deep*0.45, Right: x + plate, Bottom: under})
	s.Rectangle(kit.Cut, kit.Open, kit.Box{Left: x - half - 0.8, Top: under, Right: x + half + 0.8, Bottom: under + deep*0.4})
	bearing := c.Long(p.Bearing)
	y := top - kit.FirstDimension
	s.DimensionAcross(x, x+bearing, y, top, top, p.Bearing.Print(style)+" on each side")
	s.Upright(kit.Centre, x, top, foot+4)
	s.Notes(pageWidth-57, false, top-6, foot+4,
		kit.Note{Tip: kit.Point{X: x, Y: top + deep*0.3}, Lines: []string{"joint over the middle of the post"}},
		kit.Note{Tip: kit.Point{X: x + plate, Y: under - deep*0.2}, Lines: []string{"cap laps both ends"}},
		kit.Note{Tip: kit.Point{X: post.Right, Y: under + deep*0.65}, Lines: []string{"post " + p.Post.Print(style), "least bearing " + p.Least.Print(style) + " each"}})
}

// stripBreak draws a break line at the end of a part that goes on.
func stripBreak(s *kit.Sheet, x, top, bottom float64) {
	stripEnd(s, x, kit.Box{Top: top, Bottom: bottom}, false)
}

// drawPlies draws the layers of the beam from above.
func (p Splice) drawPlies(s *kit.Sheet, c kit.Scale, top, thick float64) {
	x, reach := c.Origin.X, 44.0
	half := c.Long(p.Post) / 2
	bottom := top + thick*float64(len(p.Plies))
	for i, ply := range p.Plies {
		y := top + thick*float64(i)
		b := kit.Box{Left: x - reach, Top: y, Right: x + reach, Bottom: y + thick}
		s.Lines(kit.Outline, kit.Segment{From: kit.Point{X: b.Left, Y: b.Top}, To: kit.Point{X: b.Right, Y: b.Top}},
			kit.Segment{From: kit.Point{X: b.Left, Y: b.Bottom}, To: kit.Point{X: b.Right, Y: b.Bottom}})
		words := "runs through"
		if ply.Jointed {
			s.Upright(kit.Outline, x, b.Top, b.Bottom)
			words = "jointed here"
		}
		s.Write(kit.Text{Words: words, At: kit.Point{X: b.Right + 4, Y: b.Centre().Y}, Align: kit.Start})
	}
	stripBreak(s, x-reach, top, bottom)
	stripBreak(s, x+reach, top, bottom)
	middle := (top + bottom) / 2
	s.Rectangle(kit.Hidden, kit.Open, kit.Box{Left: x - half, Top: middle - half, Right: x + half, Bottom: middle + half})
}
