package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// PierSection is one pier cut through the middle, true to scale, with its sizes.
type PierSection struct {
	limit
	Pier       string // "A1", or words such as "a pier"
	Known      bool   // dig, stone and post are worked out
	Dig, Stone measure.Length
	PostLong   measure.Length
	Cap        measure.Length // thickness of the cap between post and beam
	Post       measure.Length // side of the post
	Beam       measure.Length // width, all plies
	BeamDepth  measure.Length
	SeatHeight measure.Length // of the seat over the foot of the block
	SeatDepth  measure.Length // how far the post stands in the block; 0 when on top
	Base       measure.Length // side of the block's foot
	SeatWidth  measure.Length
	Hole       measure.Length // width of the hole
	Beside     string         // what fills the hole beside the block: "stone"
}

// About returns the record of the drawing.
func (p PierSection) About() About {
	about := About{Name: kit.ID("pier-section-" + p.Pier), Title: "Pier " + p.Pier + " in section"}
	about.Shows = "One pier cut through the middle: hole, tamped stone, block, post, cap and beam, with the depth of the hole, the stone, how deep the block stands in the ground, the seat and the post."
	if !p.Known {
		about.Shows += " Depths and post are left blank."
	}
	return about
}

// pierHeights are the heights of a pier over the bottom of its hole.
type pierHeights struct{ stone, ground, seat, blockTop, postTop, beamUnder, beamTop measure.Length }

func (p PierSection) heights() pierHeights {
	if !p.Known {
		p.Dig, p.Stone, p.PostLong = p.Base*2/3, p.Base/2, p.Base*5/6
	}
	h := pierHeights{stone: p.Stone, ground: p.Dig}
	h.seat = p.Stone + p.SeatHeight
	h.blockTop = h.seat + p.SeatDepth
	h.postTop = h.seat + p.PostLong
	h.beamUnder = h.postTop + p.Cap
	h.beamTop = h.beamUnder + p.BeamDepth
	return h
}

const (
	pierMiddle = 78.0 // x of the pier's centre line
	pierTop    = 4.0
	pierLowTop = 9.0  // where the beam is so low on paper that its arrows stand outside
	pierFoot   = 27.0 // room below the hole for the widths
)

func (p PierSection) sheet(style measure.Style) *kit.Sheet {
	if p.Base <= 0 || p.Hole <= 0 {
		return blankSheet(p, "No pier to draw yet")
	}
	h := p.heights()
	all := max(h.beamTop, h.ground)
	top := pierTop
	if p.most > 0 {
		top = pierLowTop
	}
	c := kit.Fit(p.Hole, all, 54, p.room(100, top+pierFoot, 36))
	c.Upward = true
	c.Origin = kit.Point{X: pierMiddle, Y: top + c.Long(all)}
	s := newSheet(p, c.Origin.Y+pierFoot)
	p.drawGround(s, c, h)
	p.drawParts(s, c, h)
	p.drawHeights(s, c, h, style)
	p.drawWidths(s, c, style)
	p.drawNotes(s, c, h, style)
	if p.Known {
		scaleNote(s, c.Name())
	} else {
		scaleNote(s, "not to scale until the heights are known")
	}
	return s
}

// across returns the box of a part w wide between two heights.
func across(c kit.Scale, w, bottom, top measure.Length) kit.Box {
	return kit.Box{Left: c.X(-w / 2), Top: c.Y(top), Right: c.X(w / 2), Bottom: c.Y(bottom)}
}

func (p PierSection) drawGround(s *kit.Sheet, c kit.Scale, h pierHeights) {
	hole := across(c, p.Hole, 0, h.ground)
	left, right := hole.Left-9, hole.Right+9
	s.Earth(kit.Point{X: left - 1, Y: hole.Top}, kit.Point{X: hole.Left, Y: hole.Top})
	s.Earth(kit.Point{X: hole.Right, Y: hole.Top}, kit.Point{X: right + 6, Y: hole.Top})
	s.Across(kit.Existing, left, hole.Left, hole.Top)
	s.Across(kit.Existing, hole.Right, right, hole.Top)
	s.Stones(across(c, p.Hole, 0, h.stone))
	if p.Beside == "stone" && h.ground > h.stone {
		block := across(c, p.Base, h.stone, h.ground)
		s.Stones(kit.Box{Left: hole.Left, Top: hole.Top, Right: block.Left, Bottom: block.Bottom})
		s.Stones(kit.Box{Left: block.Right, Top: hole.Top, Right: hole.Right, Bottom: block.Bottom})
	}
	s.Polyline(kit.Cut, kit.Point{X: hole.Left, Y: hole.Top}, kit.Point{X: hole.Left, Y: hole.Bottom},
		kit.Point{X: hole.Right, Y: hole.Bottom}, kit.Point{X: hole.Right, Y: hole.Top})
	s.Across(kit.Thin, hole.Left, hole.Right, c.Y(h.stone))
}

func (p PierSection) drawParts(s *kit.Sheet, c kit.Scale, h pierHeights) {
	foot, top := c.Long(p.Base)/2, max(c.Long(p.SeatWidth)/2+2, c.Long(p.Base)*0.34)
	x := c.Origin.X
	block := []kit.Point{
		{X: x - foot, Y: c.Y(h.stone)}, {X: x - foot, Y: c.Y(h.stone + p.SeatHeight/3)}, {X: x - top, Y: c.Y(h.blockTop)},
		{X: x + top, Y: c.Y(h.blockTop)}, {X: x + foot, Y: c.Y(h.stone + p.SeatHeight/3)}, {X: x + foot, Y: c.Y(h.stone)},
	}
	s.Polygon(kit.Outline, kit.White, block...)
	s.Hatch(kit.Rising, 2.4, block...)
	post := across(c, p.Post, h.seat, h.postTop)
	s.Rectangle(kit.Outline, kit.White, post)
	s.Hatch(kit.Falling, 2.4, post.Outline()...)
	under := c.Y(h.beamUnder)
	beam := across(c, p.Beam, h.beamUnder, h.beamTop)
	half := max(beam.Right-beam.Left, post.Right-post.Left)/2 + 0.9
	s.Polyline(kit.Outline, kit.Point{X: x - half, Y: under - 7}, kit.Point{X: x - half, Y: under}, kit.Point{X: x + half, Y: under}, kit.Point{X: x + half, Y: under - 7})
	s.Polyline(kit.Cut, kit.Point{X: post.Left - 0.9, Y: under}, kit.Point{X: post.Left - 0.9, Y: under + 6})
	s.Polyline(kit.Cut, kit.Point{X: post.Right + 0.9, Y: under}, kit.Point{X: post.Right + 0.9, Y: under + 6})
	s.Rectangle(kit.Outline, kit.White, beam)
	s.Cross(kit.Thin, beam.Centre(), beam.Right-beam.Left, beam.Bottom-beam.Top)
	s.Upright(kit.Centre, x, 1, c.Origin.Y+3)
}

// drawHeights draws the chain of heights on the left on two lines, so that small
// ones do not crowd each other, and the depths in the ground on the right.
func (p PierSection) drawHeights(s *kit.Sheet, c kit.Scale, h pierHeights, style measure.Style) {
	hole := across(c, p.Hole, 0, h.ground)
	block := across(c, p.Base, h.stone, h.blockTop)
	post := across(c, p.Post, h.seat, h.postTop)
	first, second := hole.Left-14, hole.Left-38
	if p.most > 0 { // the arrows of the seat stand outside, beside the words of the stone
		second = max(hole.Left-43, 25)
	}
	up := func(top, bottom measure.Length, x, edge float64, words string) {
		s.DimensionUpright(c.Y(top), c.Y(bottom), x, edge, edge, words)
	}
	up(h.stone, 0, first, hole.Left, "stone "+p.blank(p.Stone, style))
	up(h.seat, h.stone, second, block.Left, "seat "+p.SeatHeight.Print(style))
	up(h.postTop, h.seat, first, post.Left, "post "+p.blank(p.PostLong, style))
	up(h.beamTop, h.beamUnder, second, across(c, p.Beam, 0, 0).Left, "beam "+p.BeamDepth.Print(style))
	right := hole.Right
	if h.ground != h.stone {
		up(max(h.ground, h.stone), min(h.ground, h.stone), right+kit.FirstDimension, right, "in ground "+p.blank(p.Dig-p.Stone, style))
	}
	up(h.ground, 0, right+47, right, "dig "+p.blank(p.Dig, style))
}

// blank returns the length, or a line to write on when the pier is not worked out.
func (p PierSection) blank(l measure.Length, style measure.Style) string {
	if !p.Known {
		return "______"
	}
	return l.Print(style)
}

func (p PierSection) drawWidths(s *kit.Sheet, c kit.Scale, style measure.Style) {
	y := c.Origin.Y
	hole, block := across(c, p.Hole, 0, 0), across(c, p.Base, 0, 0)
	s.DimensionAcross(block.Left, block.Right, y+kit.FirstDimension, y+1, y+1, p.Base.Print(style))
	s.DimensionAcross(hole.Left, hole.Right, y+kit.FirstDimension+kit.NextDimension, y, y, "hole "+p.Hole.Print(style))
}

func (p PierSection) drawNotes(s *kit.Sheet, c kit.Scale, h pierHeights, style measure.Style) {
	beam := across(c, p.Beam, h.beamUnder, h.beamTop)
	post := across(c, p.Post, h.seat, h.postTop)
	block := across(c, p.Base, h.stone, h.blockTop)
	x := c.Origin.X + 45
	notes := []kit.Note{
		{Tip: kit.Point{X: beam.Right, Y: beam.Top + min(3, (beam.Bottom-beam.Top)/3)}, Lines: []string{"beam"}},
		{Tip: kit.Point{X: max(beam.Right, post.Right) + 0.9, Y: c.Y(h.beamUnder) - 2}, Lines: []string{"cap " + measure.Exact(p.Cap).Print(style)}},
		{Tip: kit.Point{X: post.Right, Y: (post.Top+min(post.Bottom, c.Y(h.blockTop)))/2 + 1}, Lines: []string{"post " + p.Post.Print(style) + " square"}},
		{Tip: kit.Point{X: block.Right - 4, Y: c.Y(h.stone + p.SeatHeight*2/3)}, Lines: []string{"pier block, level both ways"}, Dot: true},
	}
	s.Notes(x, false, 0, c.Y(h.ground)-7, notes...)
}
