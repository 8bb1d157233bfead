package diagrams

import (
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Section is the ground and the platform cut along one beam line. Heights are
// over the bench mark, in either sign.
type Section struct {
	limit
	AtHand     bool // where the values read upwards, only seat and post are told: the work at hand
	Line       string
	Length     measure.Length
	Start, End measure.Length  // of the beam
	Floor      *measure.Length // top of the surface; nil when it is not known yet
	PostTops   measure.Length  // the plane of all post tops, counted when the floor is known
	BeamDepth  measure.Length
	JoistDepth measure.Length // 0 when the joists sit between the beams
	JoistThick measure.Length
	Surface    measure.Length
	Joists     []measure.Length // x of their centres
	Block      measure.Length   // height of the block
	SeatHeight measure.Length   // of the seat over the foot of the block
	Base       measure.Length   // side of the block
	Hole       measure.Length   // width of a hole
	Post       measure.Length   // side of a post
	Ground     []Spot           // along the line by rising x, as the job's cuts leave it; empty when not read
	Before     []Spot           // the same before it is cut; empty where nothing is cut along the line
	Piers      []SectionPier
}

// Spot is a height of the ground along a line.
type Spot struct{ X, Height measure.Length }

// SectionPier is a pier of the line.
type SectionPier struct {
	Name  string
	X     measure.Length
	Known bool // the heights below are worked out
	// Ground is a height over the bench mark; Estimated when it was not read.
	Ground     measure.Length
	Estimated  bool
	Dig, Stone measure.Length // depths
	Seat       measure.Length // height over the bench mark
	PostLong   measure.Length
	Splice     bool // a beam joint lies over it
}

// About returns the record of the drawing.
func (c Section) About() About {
	about := About{Name: kit.ID("section-" + c.Line), Title: "Section along beam line " + c.Line}
	about.Shows = "The ground as it is along line " + c.Line + ", the holes, the stone, the blocks, the posts and the beam with " +
		counted(len(c.Piers), "pier", "piers") + ", and below each pier its ground, dig, stone, seat and post."
	if len(c.Before) > 0 {
		about.Shows = strings.Replace(about.Shows, "The ground as it is", "The ground as it is cut, dashed as it lay,", 1)
	}
	if !c.known() {
		about.Shows += " The heights are not known yet and are left blank."
	}
	return about
}

func (c Section) known() bool {
	if c.Floor == nil {
		return false
	}
	for _, p := range c.Piers {
		if !p.Known {
			return false
		}
	}
	return len(c.Piers) > 0
}

// The columns of the sheet.
const (
	sectionLeft  = 44.0
	sectionRight = 165.0
	sectionTop   = 9.0
	sectionMost  = 62.0
	sectionGap   = 11.0 // between the picture and the values
)

func (c Section) sheet(style measure.Style) *kit.Sheet {
	if c.Length <= 0 || len(c.Piers) == 0 {
		return blankSheet(c, "No beam line to draw yet")
	}
	drawn := c
	if !c.known() {
		drawn = c.standIn()
	}
	scale, high, rows := c.fit(drawn, style)
	rows.top = sectionTop + high + sectionGap
	s := newSheet(c, rows.top+rows.height()+6.5)
	points := drawn.profile(scale)
	s.Earth(points...)
	for _, p := range drawn.Piers {
		drawn.drawHole(s, scale, p)
	}
	s.Polyline(kit.Existing, points...)
	drawn.drawBefore(s, scale)
	for _, p := range drawn.Piers {
		drawn.drawPier(s, scale, p)
	}
	drawn.drawTimber(s, scale)
	rows.draw(s)
	c.namePiers(s, rows)
	c.drawLevels(s, scale, drawn, high, style)
	if c.known() {
		scaleNote(s, scale.Name()+stretchWords(scale.Stretch))
	} else {
		scaleNote(s, "how the parts stand; heights are not known yet")
	}
	return s
}

// fit returns the scale, the height of the picture and the values under it.
func (c Section) fit(drawn Section, style measure.Style) (kit.Scale, float64, valueRows) {
	rows := c.rows(style)
	rows.tight = c.most > 0
	scale, high := drawn.scale(c.room(sectionMost, sectionTop+sectionGap+rows.height()+6.5, 26))
	rows.at = c.columns(scale)
	if c.AtHand && rows.turned() {
		rows.rows = rows.rows[len(rows.rows)-2:]
		scale, high = drawn.scale(c.room(sectionMost, sectionTop+sectionGap+rows.height()+6.5, 26))
		rows.at = c.columns(scale)
	}
	return scale, high, rows
}

// columns returns where the piers stand on the sheet.
func (c Section) columns(scale kit.Scale) []float64 {
	var at []float64
	for _, p := range c.Piers {
		at = append(at, scale.X(p.X))
	}
	return at
}

// namePiers writes the names over their columns, upwards when they are close.
func (c Section) namePiers(s *kit.Sheet, rows valueRows) {
	widest := 0.0
	for _, p := range c.Piers {
		widest = max(widest, kit.Width(p.Name, kit.Medium, true))
	}
	for i := 0; i < len(c.Piers); i += rows.step() {
		s.Write(kit.Text{Words: c.Piers[i].Name, At: kit.Point{X: rows.at[i], Y: rows.top - 1.2 - widest/2},
			Size: kit.Medium, Bold: true, Turned: widest+0.8 > rows.pitch()})
	}
}

// stretchWords says how much larger heights are drawn than lengths.
func stretchWords(stretch float64) string {
	if stretch == 1 {
		return ", heights and lengths alike"
	}
	return ", heights stretched " + strconv.FormatFloat(stretch, 'f', -1, 64) + " times"
}

// scale returns the scale, stretched as far as the room allows, and the height
// of the picture.
func (c Section) scale(most float64) (kit.Scale, float64) {
	low, high := *c.Floor, *c.Floor
	for _, g := range slices.Concat(c.Ground, c.Before) {
		low, high = min(low, g.Height), max(high, g.Height)
	}
	for _, p := range c.Piers {
		low = min(low, p.Ground-p.Dig)
	}
	low -= c.Base / 6
	scale := kit.Fit(c.Length, high-low, sectionRight-sectionLeft-8, most)
	scale.Stretch = kit.Exaggeration(high-low, scale.Ratio, most, 4)
	scale.Upward = true
	tall := scale.High(high - low)
	wide := scale.Long(c.Length)
	scale.Origin = kit.Point{
		X: sectionLeft + 4 + (sectionRight-sectionLeft-8-wide)/2,
		Y: sectionTop + scale.High(high),
	}
	return scale, tall
}

// standIn returns the section with level ground and middling sizes in place of
// what is not known: a picture of how the parts stand, without figures.
func (c Section) standIn() Section {
	floor := c.Surface + c.JoistDepth + c.BeamDepth + c.Base*2/3
	c.Floor, c.PostTops, c.Ground, c.Before = &floor, floor-c.Surface-c.JoistDepth-c.BeamDepth, nil, nil
	piers := append([]SectionPier(nil), c.Piers...)
	for i := range piers {
		piers[i].Ground, piers[i].Dig, piers[i].Stone = 0, c.Base*2/3, c.Base/2
		piers[i].Seat = c.SeatHeight - (piers[i].Dig - piers[i].Stone)
	}
	c.Piers = piers
	return c
}

// profile returns the ground line on the sheet, from edge to edge.
func (c Section) profile(scale kit.Scale) []kit.Point {
	spots := c.Ground
	if len(spots) == 0 {
		for _, p := range c.Piers {
			spots = append(spots, Spot{p.X, p.Ground})
		}
	}
	points := []kit.Point{{X: sectionLeft, Y: scale.Y(spots[0].Height)}}
	for _, g := range spots {
		if x := scale.X(g.X); x > sectionLeft && x < sectionRight {
			points = append(points, kit.Point{X: x, Y: scale.Y(g.Height)})
		}
	}
	return append(points, kit.Point{X: sectionRight, Y: scale.Y(spots[len(spots)-1].Height)})
}

// drawBefore draws the ground as it lay where it is cut.
func (c Section) drawBefore(s *kit.Sheet, scale kit.Scale) {
	if len(c.Before) != len(c.Ground) {
		return
	}
	at := func(i int) kit.Point { return kit.Point{X: scale.X(c.Before[i].X), Y: scale.Y(c.Before[i].Height)} }
	var run []kit.Point
	for i := range c.Before {
		if c.Before[i] != c.Ground[i] {
			if len(run) == 0 && i > 0 {
				run = append(run, at(i-1))
			}
			run = append(run, at(i))
			continue
		}
		if len(run) > 0 {
			s.Polyline(kit.Hidden, append(run, at(i))...)
			run = nil
		}
	}
	if len(run) > 1 {
		s.Polyline(kit.Hidden, run...)
	}
}

// upright returns the box of a part of a pier, so wide and between two heights.
func (p SectionPier) upright(scale kit.Scale, wide, bottom, top measure.Length) kit.Box {
	return kit.Box{Left: scale.X(p.X - wide/2), Top: scale.Y(top), Right: scale.X(p.X + wide/2), Bottom: scale.Y(bottom)}
}

// drawHole draws the hole with its stone.
func (c Section) drawHole(s *kit.Sheet, scale kit.Scale, p SectionPier) {
	bottom := p.Ground - p.Dig
	hole := p.upright(scale, c.Hole, bottom, p.Ground)
	s.Rectangle(kit.Pen{}, kit.White, hole)
	s.Polyline(kit.Cut, kit.Point{X: hole.Left, Y: hole.Top}, kit.Point{X: hole.Left, Y: hole.Bottom},
		kit.Point{X: hole.Right, Y: hole.Bottom}, kit.Point{X: hole.Right, Y: hole.Top})
	s.Stones(p.upright(scale, c.Hole, bottom, bottom+p.Stone))
	s.Across(kit.Thin, hole.Left, hole.Right, scale.Y(bottom+p.Stone))
}

// drawPier draws the block and the post.
func (c Section) drawPier(s *kit.Sheet, scale kit.Scale, p SectionPier) {
	foot := p.Ground - p.Dig + p.Stone
	block := p.upright(scale, c.Base, foot, foot+max(c.Block, c.SeatHeight))
	s.Rectangle(kit.Cut, kit.White, block)
	s.HatchBox(kit.Rising, 1.6, block)
	s.Rectangle(kit.Cut, kit.White, p.upright(scale, c.Post, p.Seat, c.PostTops))
}

// drawTimber draws the beam with its joints, the joists cut across and the surface.
func (c Section) drawTimber(s *kit.Sheet, scale kit.Scale) {
	floor := *c.Floor
	under := floor - c.Surface - c.JoistDepth
	beam := kit.Box{Left: scale.X(c.Start), Top: scale.Y(under), Right: scale.X(c.End), Bottom: scale.Y(under - c.BeamDepth)}
	for _, x := range c.Joists {
		if c.JoistDepth > 0 {
			s.Rectangle(kit.Thin, kit.Open, kit.Box{Left: scale.X(x - c.JoistThick/2), Top: scale.Y(floor - c.Surface),
				Right: scale.X(x + c.JoistThick/2), Bottom: scale.Y(under)})
		}
	}
	s.Rectangle(kit.Outline, kit.White, beam)
	for _, p := range c.Piers {
		if p.Splice {
			s.Upright(kit.Cut, scale.X(p.X), beam.Top, beam.Bottom)
		}
	}
	s.Rectangle(kit.Outline, kit.White, kit.Box{Left: scale.X(0), Top: scale.Y(floor), Right: scale.X(c.Length), Bottom: scale.Y(floor - c.Surface)})
}

// drawLevels names the floor, the post tops and the bench mark at the left.
func (c Section) drawLevels(s *kit.Sheet, scale kit.Scale, drawn Section, high float64, style measure.Style) {
	levels := []level{{at: scale.Y(*drawn.Floor), words: "floor", bold: true}, {at: scale.Y(drawn.PostTops), words: "post tops"}}
	if c.known() {
		levels[0].words += " " + c.Floor.Print(style)
		levels[1].words += " " + c.PostTops.Print(style)
		if zero := scale.Y(0); zero > sectionTop && zero < sectionTop+high+4 {
			mark := level{at: zero, words: "bench mark 0"}
			levels = append(levels, mark)
		}
	}
	sortLevels(levels)
	writeLevels(s, 33, sectionLeft-0.5, 0, sectionTop+high+6, levels...)
}

// rows returns the band of values under the section.
func (c Section) rows(style measure.Style) valueRows {
	rows := valueRows{left: sectionLeft, right: pageWidth - 1, rows: []valueRow{
		{name: "ground"}, {name: "dig"}, {name: "stone"}, {name: "seat"}, {name: "post", bold: true},
	}}
	for _, p := range c.Piers {
		values := []string{"", "", "", "", ""}
		if c.known() {
			values = []string{p.Ground.Print(style), p.Dig.Print(style), p.Stone.Print(style), p.Seat.Print(style), p.PostLong.Print(style)}
			if p.Estimated {
				values[0] = "≈ " + values[0]
			}
		}
		for i, v := range values {
			rows.rows[i].values = append(rows.rows[i].values, v)
		}
	}
	return rows
}
