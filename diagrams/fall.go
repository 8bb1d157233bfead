package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Fall is for the client: how the ground falls under one side, how high the
// floor comes over it, and the way in.
type Fall struct {
	Side      string // "the garden side", "side A"
	Length    measure.Length
	LeftName  string // what stands at the ends, so that the view is found: "A1"
	RightName string
	Floor     *measure.Length  // over the bench mark; nil when it is not known yet
	Frame     measure.Length   // depth of floor, joist and beam together
	Posts     []measure.Length // centres of the posts along the side
	Post      measure.Length   // side of a post
	Ground    []Spot           // along the side, from left to right; empty when not read
	Door      *Doorway         // nil without one on this side
}

// Doorway is the way in on a side that is looked at.
type Doorway struct {
	From, Width measure.Length
	Steps       int            // between the ground and the floor; 0 for none
	Rise        measure.Length // of each step up, the last one onto the floor
}

// About returns the record of the drawing.
func (f Fall) About() About {
	about := About{Name: "fall", Title: "How the ground falls along " + f.Side}
	about.Shows = "The platform seen from " + f.Side + ", level over the falling ground, with the height of the floor over the ground at both ends"
	if f.Door != nil {
		about.Shows += " and at the door"
		if f.Door.Steps > 0 {
			about.Shows += ", with " + counted(f.Door.Steps, "step", "steps")
		}
	}
	about.Shows += "."
	if !f.known() {
		about.Shows += " The ground has not been read yet, so heights are left blank."
	}
	return about
}

func (f Fall) known() bool { return f.Floor != nil && len(f.Ground) > 1 }

const (
	fallLeft  = 33.0
	fallRight = 138.0
	fallTop   = 28.0
)

func (f Fall) sheet(style measure.Style) *kit.Sheet {
	if f.Length <= 0 {
		return blankSheet(f, "No side to show yet")
	}
	drawn := f
	if !f.known() {
		floor := f.Frame * 3 / 2
		drawn.Floor, drawn.Ground = &floor, []Spot{{0, 0}, {f.Length, 0}}
	}
	low := *drawn.Floor
	for _, g := range drawn.Ground {
		low = min(low, g.Height)
	}
	c := kit.Fit(f.Length, *drawn.Floor-low, fallRight-fallLeft, 44)
	c.Upward = true
	c.Stretch = kit.Exaggeration(*drawn.Floor-low, c.Ratio, 44, 2)
	left := fallLeft + (fallRight-fallLeft-c.Long(f.Length))/2
	c.Origin = kit.Point{X: left, Y: fallTop + c.High(*drawn.Floor)}
	s := newSheet(f, c.Y(low)+17)
	drawn.drawGround(s, c)
	drawn.drawPlatform(s, c)
	drawn.drawDoor(s, c, style)
	f.drawHeights(s, c, drawn, style)
	s.Write(kit.Text{Words: f.LeftName, At: kit.Point{X: c.X(0) - 3, Y: fallTop - 4}, Bold: true, Align: kit.End})
	s.Write(kit.Text{Words: f.RightName, At: kit.Point{X: c.X(f.Length) + 3, Y: fallTop - 4}, Bold: true, Align: kit.Start})
	note := c.Name()
	if c.Stretch > 1 {
		note += ", heights drawn twice as large"
	}
	if !f.known() {
		note = "heights are not known yet"
	}
	scaleNote(s, note)
	return s
}

// groundAt returns the height of the ground at x, straight between the spots.
func (f Fall) groundAt(x measure.Length) measure.Length {
	for i := 1; i < len(f.Ground); i++ {
		a, b := f.Ground[i-1], f.Ground[i]
		if x <= b.X && b.X > a.X {
			return a.Height + measure.Length(float64(b.Height-a.Height)*float64(max(x, a.X)-a.X)/float64(b.X-a.X))
		}
	}
	return f.Ground[len(f.Ground)-1].Height
}

func (f Fall) drawGround(s *kit.Sheet, c kit.Scale) {
	points := []kit.Point{{X: c.X(0) - 12, Y: c.Y(f.groundAt(0))}}
	for _, g := range f.Ground {
		if g.X >= 0 && g.X <= f.Length {
			points = append(points, c.At(g.X, g.Height))
		}
	}
	points = append(points, kit.Point{X: c.X(f.Length) + 12, Y: c.Y(f.groundAt(f.Length))})
	s.Earth(points...)
	s.Polyline(kit.Existing, points...)
}

// drawPlatform draws the frame as one band, with posts down to the ground.
func (f Fall) drawPlatform(s *kit.Sheet, c kit.Scale) {
	band := kit.Box{Left: c.X(0), Top: c.Y(*f.Floor), Right: c.X(f.Length), Bottom: c.Y(*f.Floor - f.Frame)}
	for _, x := range f.Posts {
		if ground := c.Y(f.groundAt(x)); ground > band.Bottom {
			half := max(c.Long(f.Post)/2, 0.8)
			s.Rectangle(kit.Thin, kit.White, kit.Box{Left: c.X(x) - half, Top: band.Bottom, Right: c.X(x) + half, Bottom: ground})
		}
	}
	s.Rectangle(kit.Outline, kit.White, band)
	s.Across(kit.Thin, band.Left, band.Right, band.Top+1.4)
}

// drawDoor draws the opening over the floor and the steps before it.
func (f Fall) drawDoor(s *kit.Sheet, c kit.Scale, style measure.Style) {
	if f.Door == nil {
		return
	}
	left, right, floor := c.X(f.Door.From), c.X(f.Door.From+f.Door.Width), c.Y(*f.Floor)
	top := floor - 15
	s.Polyline(kit.Hidden, kit.Point{X: left, Y: floor}, kit.Point{X: left, Y: top}, kit.Point{X: right, Y: top}, kit.Point{X: right, Y: floor})
	s.Write(kit.Text{Words: "door " + f.Door.Width.Print(style), At: kit.Point{X: (left + right) / 2, Y: top - 4}})
	for i := 1; i <= f.Door.Steps; i++ {
		tread := floor + c.High(f.Door.Rise)*float64(i)
		foot := c.Y(min(f.groundAt(f.Door.From), f.groundAt(f.Door.From+f.Door.Width)))
		if tread < foot {
			s.Rectangle(kit.Cut, kit.White, kit.Box{Left: left, Top: tread, Right: right, Bottom: foot})
		}
	}
}

// drawHeights draws how high the floor is over the ground at both ends, and
// says what the steps are.
func (f Fall) drawHeights(s *kit.Sheet, c kit.Scale, drawn Fall, style measure.Style) {
	height := func(x measure.Length) string {
		if !f.known() {
			return "______"
		}
		return (*drawn.Floor - drawn.groundAt(x)).Print(style)
	}
	floor := c.Y(*drawn.Floor)
	left, right := c.X(0), c.X(f.Length)
	s.DimensionUpright(floor, c.Y(drawn.groundAt(0)), left-15, left, left-12, height(0))
	s.DimensionUpright(floor, c.Y(drawn.groundAt(f.Length)), right+15, right, right+12, height(f.Length))
	if f.Door != nil && f.Door.Steps > 0 {
		words := counted(f.Door.Steps, "step", "steps")
		if f.known() {
			words += ", each " + f.Door.Rise.Print(style) + " up"
		}
		s.Write(kit.Text{Words: words, At: kit.Point{X: 1.5, Y: s.Size().Bottom - 2.6}, Align: kit.Start, Bold: true})
	}
	s.DimensionAcross(left, right, s.Size().Bottom-9, s.Size().Bottom-11, s.Size().Bottom-11, f.Length.Print(style))
}
