package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Sticks are lengths of timber with the pieces that are sawn from them, in the
// order of the cuts. A long list goes on several drawings: see [Sticks.Split].
type Sticks struct {
	Section string // "2x6"; stands in the name of the drawing
	Part    int    // counts the drawings of one section, from 1
	Sticks  []Stick
}

// Stick is one length of timber, or several that are cut alike.
type Stick struct {
	Name   string // "stick 3", or "sticks 3 to 5"
	Stock  measure.Length
	Trim   measure.Length // sawn off its end first; 0 when not
	Kerf   measure.Length
	Pieces []StickPiece
}

// StickPiece is a piece as it is cut.
type StickPiece struct {
	Label string // grid name: "A1" for a post
	Long  measure.Length
}

// Offcut returns what is left of the stick: 0 when the last cut takes it all.
func (k Stick) Offcut() measure.Length {
	left := k.Stock
	if k.Trim > 0 {
		left -= k.Trim + k.Kerf
	}
	for _, p := range k.Pieces {
		left -= p.Long + k.Kerf
	}
	return max(left, 0)
}

// About returns the record of the drawing.
func (k Sticks) About() About {
	about := About{Name: kit.ID("sticks-" + k.Section), Title: "Cuts in " + k.Section}
	if k.Part > 1 {
		about.Name += "-" + number(k.Part)
		about.Title += ", part " + number(k.Part)
	}
	about.Shows = counted(len(k.Sticks), "stick", "sticks") + " of " + k.Section +
		", each a bar with its pieces by name and length; below it the running marks of the cuts from the left end, and what is left over hatched."
	return about
}

const (
	stickLeft  = 3.0
	stickRight = 168.0
	stickHigh  = 6.5
	stickMost  = 215.0 // height of one drawing
)

// Split returns the sticks on as many drawings as they need to stay in the safe box.
func (k Sticks) Split(style measure.Style) []Sticks {
	parts := []Sticks{{Section: k.Section, Part: 1}}
	high := 0.0
	for _, stick := range k.Sticks {
		last := &parts[len(parts)-1]
		need := k.layout(stick, k.longest(), style).height()
		if high+need > stickMost && len(last.Sticks) > 0 {
			parts = append(parts, Sticks{Section: k.Section, Part: len(parts) + 1})
			last, high = &parts[len(parts)-1], 0
		}
		last.Sticks = append(last.Sticks, stick)
		high += need
	}
	return parts
}

func (k Sticks) longest() measure.Length {
	long := measure.Length(0)
	for _, stick := range k.Sticks {
		long = max(long, stick.Stock)
	}
	return long
}

// stickLayout is how one stick comes on the sheet.
type stickLayout struct {
	stick   Stick
	scale   float64 // mm on the sheet for each length
	cuts    []kit.Mark
	inside  []string // the words in the bar
	outside []string // the words over the bar, "" where all stands inside
	turned  bool     // those over the bar read upwards
	above   float64
	below   float64
}

func (l stickLayout) height() float64 { return stickHead + l.above + stickHigh + l.below + 3 }

func (l stickLayout) x(at measure.Length) float64 { return stickLeft + float64(at)*l.scale }

const (
	stickHead = 5.5  // the line with the name of the stick
	wordsGap  = ": " // between the name of a piece and its length
)

func (k Sticks) layout(stick Stick, longest measure.Length, style measure.Style) stickLayout {
	l := stickLayout{stick: stick, scale: (stickRight - stickLeft) / float64(longest)}
	at := measure.Length(0)
	if stick.Trim > 0 {
		at = stick.Trim + stick.Kerf
	}
	for _, p := range stick.Pieces {
		l.place(p, p.Long.Print(style))
		l.cuts = append(l.cuts, kit.Mark{At: l.x(at + p.Long), Words: (at + p.Long).Print(style)})
		at += p.Long + stick.Kerf
	}
	l.above = l.roomAbove()
	if len(l.cuts) == 1 && stick.Trim == 0 {
		return l // the piece says it already
	}
	if len(l.cuts) > 0 {
		l.below = 4 + kit.RunningRoom(l.cuts, 0, pageWidth)
	}
	return l
}

// place parts the words of a piece: name and length in the bar when both fit,
// else the length alone, else nothing.
func (l *stickLayout) place(p StickPiece, long string) {
	room := float64(p.Long)*l.scale - 1
	inside, outside := p.Label+wordsGap+long, ""
	if kit.Width(inside, kit.Small, true) > room {
		inside, outside = long, p.Label
	}
	if kit.Width(inside, kit.Small, true) > room {
		inside, outside = "", p.Label+wordsGap+long
	}
	if kit.Width(outside, kit.Small, false) > room {
		l.turned = true
	}
	l.inside, l.outside = append(l.inside, inside), append(l.outside, outside)
}

// roomAbove returns how much room the words over the bar take.
func (l stickLayout) roomAbove() float64 {
	room := 0.0
	for _, words := range l.outside {
		switch {
		case words == "":
		case l.turned:
			room = max(room, kit.Width(words, kit.Small, false)+3)
		default:
			room = max(room, 5)
		}
	}
	return room
}

func (k Sticks) sheet(style measure.Style) *kit.Sheet {
	if len(k.Sticks) == 0 || k.longest() <= 0 {
		return blankSheet(k, "No sticks to cut yet")
	}
	var layouts []stickLayout
	high := 1.0
	for _, stick := range k.Sticks {
		l := k.layout(stick, k.longest(), style)
		layouts = append(layouts, l)
		high += l.height()
	}
	s := newSheet(k, high)
	top := 1.0
	for _, l := range layouts {
		l.draw(s, top, style)
		top += l.height()
	}
	return s
}

func (l stickLayout) draw(s *kit.Sheet, top float64, style measure.Style) {
	head := l.stick.Name + ", " + l.stick.Stock.Print(style)
	if left := l.stick.Offcut(); left > 0 {
		head += "; " + left.Print(style) + " left"
	}
	s.Write(kit.Text{Words: kit.Shorten(head, kit.Small, pageWidth-8, true), At: kit.Point{X: stickLeft, Y: top + 2.6}, Align: kit.Start, Bold: true})
	bar := kit.Box{Left: stickLeft, Top: top + stickHead + l.above, Right: l.x(l.stick.Stock), Bottom: top + stickHead + l.above + stickHigh}
	end := bar.Left
	if l.stick.Trim > 0 {
		end = l.x(l.stick.Trim)
		s.HatchBox(kit.Falling, 1.2, kit.Box{Left: bar.Left, Top: bar.Top, Right: end, Bottom: bar.Bottom})
		s.Upright(kit.Cut, end, bar.Top, bar.Bottom)
	}
	if n := len(l.cuts); n > 0 {
		end = l.cuts[n-1].At
	}
	s.HatchBox(kit.Rising, 2, kit.Box{Left: end, Top: bar.Top, Right: bar.Right, Bottom: bar.Bottom})
	s.Rectangle(kit.Outline, kit.Open, bar)
	l.drawPieces(s, bar)
	if l.below == 0 {
		return
	}
	for i := range l.cuts {
		l.cuts[i].Edge = bar.Bottom
	}
	s.RunningAcross(bar.Left, l.cuts, bar.Bottom+4, true)
}

func (l stickLayout) drawPieces(s *kit.Sheet, bar kit.Box) {
	var middles []float64
	for i, p := range l.stick.Pieces {
		to := l.cuts[i].At
		middle := to - float64(p.Long)*l.scale/2
		middles = append(middles, middle)
		s.Upright(kit.Cut, to, bar.Top, bar.Bottom)
		s.Write(kit.Text{Words: l.inside[i], At: kit.Point{X: middle, Y: bar.Centre().Y}, Bold: true})
		if !l.turned {
			s.Write(kit.Text{Words: l.outside[i], At: kit.Point{X: middle, Y: bar.Top - 2.6}})
		}
	}
	if l.turned {
		l.turnedWords(s, bar, middles)
	}
}

// turnedWords writes the words over the bar so that they read upwards, moved
// apart with a jog where pieces are short.
func (l stickLayout) turnedWords(s *kit.Sheet, bar kit.Box, middles []float64) {
	var from []float64
	var words []string
	for i, w := range l.outside {
		if w != "" {
			from, words = append(from, middles[i]), append(words, w)
		}
	}
	for i, x := range kit.Spread(from, kit.Pitch(kit.Small)+0.2, 2.2, pageWidth-2.2) {
		s.Line(kit.Thin, kit.Point{X: from[i], Y: bar.Top - 0.4}, kit.Point{X: x, Y: bar.Top - 2})
		s.Write(kit.Text{Words: words[i], At: kit.Point{X: x, Y: bar.Top - 2.4 - kit.Width(words[i], kit.Small, false)/2}, Turned: true})
	}
}
