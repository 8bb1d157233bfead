package diagrams

import (
	"math"
	"slices"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Contours is the ground before work as a plan: lines of equal height over the
// bench mark, and where readings stand.
type Contours struct {
	Grid
	Field    Field
	Interval measure.Length // between contours
	Spots    []GroundSpot
}

// Field is the ground in heights over the bench mark on an even net of places,
// which may reach beyond the frame.
type Field struct {
	X0, Y0, X1, Y1 measure.Length     // the outer corners of the net
	Heights        [][]measure.Length // rows by rising y, each by rising x
}

// whole says whether there is a net, with as many heights in each row.
func (f Field) whole() bool {
	if len(f.Heights) < 2 || len(f.Heights[0]) < 2 || f.X1 <= f.X0 || f.Y1 <= f.Y0 {
		return false
	}
	for _, row := range f.Heights {
		if len(row) != len(f.Heights[0]) {
			return false
		}
	}
	return true
}

// GroundSpot is a place with a height.
type GroundSpot struct {
	Name   string
	X, Y   measure.Length
	Height measure.Length
	Read   bool // read with the rod; estimated otherwise
}

// About returns the record of the drawing.
func (c Contours) About() About {
	read := 0
	for _, spot := range c.Spots {
		if spot.Read {
			read++
		}
	}
	if !c.Field.whole() {
		return About{
			Name:  "contours",
			Title: "The ground to be read",
			Shows: "The frame from above with a ring at each pier and a line beside it on which its reading is written.",
		}
	}
	return About{
		Name:  "contours",
		Title: "The ground before work",
		Shows: "Contours of the ground with the frame over it, " + counted(read, "place that was read", "places that were read") + " as black dots and " +
			counted(len(c.Spots)-read, "estimated place", "estimated places") + " as rings, with their heights over the bench mark.",
	}
}

func (c Contours) sheet(style measure.Style) *kit.Sheet {
	f := c.Field
	if !c.drawn() {
		return blankSheet(c, "No frame to draw yet")
	}
	if !f.whole() {
		return c.toRead()
	}
	v := c.view()
	s := newSheet(c, v.height)
	if net := v.box(f.X0, f.Y0, f.X1, f.Y1); c.standsClear(v, net) {
		s.Rectangle(kit.Thin, kit.Open, net)
	}
	lines := c.drawContours(s, v)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	heights := ", heights over the bench mark"
	if !c.drawSpots(s, v, style) {
		heights = " over the bench mark, heights in the tables"
	}
	for _, line := range lines {
		nameContour(s, v.box(f.X0, f.Y0, f.X1, f.Y1), line, style)
	}
	scaleNote(s, v.Name()+"; contours every "+c.Interval.Print(style)+heights+"; dot = read, ring = estimated")
	return s
}

// view lays the net into the width of the page and the height there is.
func (c Contours) view() gridView {
	f := c.Field
	margin := 9.0
	if c.most > 0 {
		margin = 6
	}
	scale := kit.Fit(f.X1-f.X0, f.Y1-f.Y0, pageWidth-2*margin, c.room(115, 2*margin+8, leastPlan))
	v := gridView{Grid: c.Grid, out: -1, height: scale.Long(f.Y1-f.Y0) + 2*margin + 8}
	left := (pageWidth - scale.Long(f.X1-f.X0)) / 2
	scale.Origin = kit.Point{X: left - scale.Long(f.X0), Y: margin - scale.Long(f.Y0)}
	if c.LinesGoLeft {
		scale.Upward, v.out = true, 1
		scale.Origin.Y = margin + scale.Long(f.Y1)
	}
	v.Scale = scale
	v.frame = v.box(0, 0, c.Length, c.Width)
	return v
}

// toRead draws the places that wait for a reading: a ring at every pier with its
// name and a line to write on.
func (c Contours) toRead() *kit.Sheet {
	const foot = 6 // below the plan, for the note
	if c.most > 0 {
		c.Grid = c.bounded(c.most - foot)
	}
	v := c.lay(room{left: 14, right: 14, near: 12, far: 12}, c.tall())
	s := newSheet(c, v.height+foot)
	s.Rectangle(kit.Outline, kit.Open, v.frame)
	for _, p := range c.Piers {
		at := v.At(p.X, p.Y)
		s.Circle(kit.Thin, kit.White, at, 1.1)
		s.Reserve(kit.Around(at, 2.2, 2.2))
		s.Across(kit.Thin, at.X-5.5, at.X+5.5, at.Y+7)
	}
	for _, p := range c.Piers {
		name := kit.Text{Words: p.Name, Bold: true}
		at := v.At(p.X, p.Y)
		s.WriteFirst(moved(name, at.Plus(0, -3.6)), moved(name, at.Plus(5, 0)), moved(name, at.Plus(-5, 0)))
	}
	scaleNote(s, v.Name()+"; write each reading on its line")
	return s
}

// contour is one level with its pieces on the sheet.
type contour struct {
	level  measure.Length
	pieces []kit.Segment
}

// drawContours draws every level between the lowest and the highest height, every
// fifth one heavier.
func (c Contours) drawContours(s *kit.Sheet, v gridView) []contour {
	low, high := c.Field.extremes()
	net := c.Field.on(v)
	step := c.Interval
	for step <= 0 || (high-low)/step > 40 {
		step = max(2*step, kit.LeastInterval)
	}
	var list []contour
	for level := low.RoundUpTo(step); level <= high; level += step {
		line := contour{level: level, pieces: net.cut(level)}
		pen := kit.Thin
		if level%(5*step) == 0 {
			pen = kit.Cut
		}
		s.Lines(pen, line.pieces...)
		list = append(list, line)
	}
	return list
}

// extremes returns the lowest and the highest height of the net.
func (f Field) extremes() (low, high measure.Length) {
	low, high = f.Heights[0][0], f.Heights[0][0]
	for _, row := range f.Heights {
		for _, h := range row {
			low, high = min(low, h), max(high, h)
		}
	}
	return low, high
}

// net is a field on the sheet: the places and the heights of its corners.
type net struct {
	Field
	at [][]kit.Point
}

// on lays the field on the sheet.
func (f Field) on(v gridView) net {
	n := net{Field: f}
	rows, columns := len(f.Heights), len(f.Heights[0])
	for r := range rows {
		line := make([]kit.Point, columns)
		for k := range line {
			line[k] = v.At(f.X0+(f.X1-f.X0).Part(k, columns-1), f.Y0+(f.Y1-f.Y0).Part(r, rows-1))
		}
		n.at = append(n.at, line)
	}
	return n
}

// cut returns where the ground stands at the level. Each cell of the net is cut
// as four triangles about its middle, so that no cell is ambiguous.
func (n net) cut(level measure.Length) []kit.Segment {
	var list []kit.Segment
	corner := func(r, k int) spatial { return spatial{n.at[r][k], float64(n.Heights[r][k] - level)} }
	for r := range len(n.at) - 1 {
		for k := range len(n.at[r]) - 1 {
			ring := [4]spatial{corner(r, k), corner(r, k+1), corner(r+1, k+1), corner(r+1, k)}
			if oneSided(ring) {
				continue
			}
			middle := spatial{
				kit.Point{X: (ring[0].at.X + ring[2].at.X) / 2, Y: (ring[0].at.Y + ring[2].at.Y) / 2},
				(ring[0].over + ring[1].over + ring[2].over + ring[3].over) / 4,
			}
			for i := range ring {
				if g, ok := cutTriangle(ring[i], ring[(i+1)%4], middle); ok {
					list = append(list, g)
				}
			}
		}
	}
	return list
}

// oneSided says whether all corners lie on one side of the level, so that
// nothing is cut.
func oneSided(ring [4]spatial) bool {
	under := 0
	for _, c := range ring {
		if c.over < 0 {
			under++
		}
	}
	return under == 0 || under == 4
}

// spatial is a place on the sheet and how far the ground there is over a level.
type spatial struct {
	at   kit.Point
	over float64
}

// cutTriangle returns the line at which a sloping triangle passes the level.
func cutTriangle(a, b, c spatial) (kit.Segment, bool) {
	var ends []kit.Point
	for _, side := range [3][2]spatial{{a, b}, {b, c}, {c, a}} {
		from, to := side[0], side[1]
		if (from.over < 0) == (to.over < 0) {
			continue
		}
		ends = append(ends, along(from.at, to.at, from.over/(from.over-to.over)))
	}
	if len(ends) != 2 || math.Hypot(ends[0].X-ends[1].X, ends[0].Y-ends[1].Y) < 0.01 {
		return kit.Segment{}, false
	}
	return kit.Segment{From: ends[0], To: ends[1]}, true
}

// nameContour writes the height on the line where there is room, nearest to the
// middle of its pieces first.
func nameContour(s *kit.Sheet, within kit.Box, line contour, style measure.Style) {
	n := len(line.pieces)
	for i := range n {
		g := line.pieces[(n/2+i*7)%n]
		t := kit.Text{Words: line.level.Print(style), At: along(g.From, g.To, 0.5)}
		if within.Grown(-0.5).Holds(t.Box()) && s.WriteFirst(t) {
			return
		}
	}
}

// standsClear says whether the names of all piers stand within the net, so that
// its edge strikes none out.
func (c Contours) standsClear(v gridView, net kit.Box) bool {
	_, off := besideSpot(kit.Text{})
	most := off + kit.Pitch(kit.Small)/2
	for _, p := range c.Piers {
		if y := v.At(p.X, p.Y).Y; min(y-net.Top, net.Bottom-y) < most {
			return false
		}
	}
	return true
}

// drawSpots marks the places, names those there is room for, and reserves the
// marks so that no name covers another place. The piers come first. It says
// whether their heights are written: all of them or none.
func (c Contours) drawSpots(s *kit.Sheet, v gridView, style measure.Style) bool {
	var piers, others []GroundSpot
	for _, spot := range c.Spots {
		fill := kit.White
		if spot.Read {
			fill = kit.Black
		}
		at := v.At(spot.X, spot.Y)
		s.Circle(kit.Thin, fill, at, spotRadius)
		s.Reserve(kit.Around(at, 2*spotRadius, 2*spotRadius))
		if c.isPier(spot) {
			piers = append(piers, spot)
		} else {
			others = append(others, spot)
		}
	}
	nameSpots(s, v, piers)
	heights, all := c.heights(s, v, piers, style)
	if all {
		for _, t := range heights {
			s.Write(t)
		}
	}
	nameSpots(s, v, others)
	heights, _ = c.heights(s, v, others, style)
	for _, t := range heights {
		s.Write(t)
	}
	return all
}

func (c Contours) isPier(spot GroundSpot) bool {
	return slices.ContainsFunc(c.Piers, func(p GridPier) bool { return p.Name == spot.Name })
}

func nameSpots(s *kit.Sheet, v gridView, spots []GroundSpot) {
	for _, spot := range spots {
		name := kit.Text{Words: spot.Name, Bold: true}
		aside, off := besideSpot(name)
		at := v.At(spot.X, spot.Y)
		s.WriteFirst(moved(name, at.Plus(0, -off)), moved(name, at.Plus(aside, 0)), moved(name, at.Plus(-aside, 0)), moved(name, at.Plus(0, off)))
	}
}

// heights returns the heights of the places that there is room for, clear of
// each other, and whether that is all of them.
func (c Contours) heights(s *kit.Sheet, v gridView, spots []GroundSpot, style measure.Style) (list []kit.Text, all bool) {
	for _, spot := range spots {
		for _, t := range c.besides(v, spot, style) {
			taken := func(other kit.Text) bool { return other.Box().Meets(t.Box()) }
			if s.Free(t.Box()) && !slices.ContainsFunc(list, taken) {
				list = append(list, t)
				break
			}
		}
	}
	return list, len(list) == len(spots)
}

// besides returns where the height of a place may stand, the best first. Where
// piers are close, every other one stands a line further off, as long as nobody
// could take it for that of another pier.
func (c Contours) besides(v gridView, spot GroundSpot, style measure.Style) []kit.Text {
	t := kit.Text{Words: spot.Height.Print(style)}
	aside, off := besideSpot(t)
	at := v.At(spot.X, spot.Y)
	list := []kit.Text{moved(t, at.Plus(0, off)), moved(t, at.Plus(0, -off)), moved(t, at.Plus(aside, 0)), moved(t, at.Plus(-aside, 0))}
	further := off + kit.Pitch(kit.Small)
	for _, place := range []kit.Point{at.Plus(0, further), at.Plus(0, -further)} {
		if c.clearlyOf(v, spot, place) {
			list = append(list, moved(t, place))
		}
	}
	return list
}

// clearlyOf says whether what stands at a place is nearer to a spot than to every
// other by a fifth.
func (c Contours) clearlyOf(v gridView, spot GroundSpot, place kit.Point) bool {
	far := func(s GroundSpot) float64 {
		at := v.At(s.X, s.Y)
		return math.Hypot(at.X-place.X, at.Y-place.Y)
	}
	own := far(spot)
	return !slices.ContainsFunc(c.Spots, func(other GroundSpot) bool { return other.Name != spot.Name && own > 0.8*far(other) })
}

// spotRadius is that of the mark at a place.
const spotRadius = 1.1

// besideSpot returns how far from the middle of a mark the middle of a text
// stands, beside it and above or below it.
func besideSpot(t kit.Text) (aside, off float64) {
	return kit.Width(t.Words, kit.Small, t.Bold)/2 + spotRadius + 0.6, kit.Pitch(kit.Small)/2 + spotRadius + 0.1
}
