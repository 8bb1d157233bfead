package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Labels are slips to cut out and pin on, one for each piece: its name, its
// length, the stick it comes from, and where it goes. Many go on several
// drawings: see [Labels.Split].
type Labels struct {
	Part   int // counts the drawings, from 1
	Labels []PieceLabel
}

// PieceLabel is the slip of one piece.
type PieceLabel struct {
	Name  string         // "J7"
	Long  measure.Length // 0 where it is not known yet: a blank to write on
	Wide  measure.Length // of a panel; 0 for timber
	From  string         // "2x8 no. 3"
	Place string         // where it goes: "joist, near face 7′ 11 1/4″"
}

const (
	labelColumns = 3
	labelWide    = (pageWidth - 1) / labelColumns
	labelHigh    = 16.6
	labelRows    = 12
	labelName    = 5.5 // size of the name's letters
)

// Split returns the labels on as many drawings as they need.
func (l Labels) Split() []Labels {
	var parts []Labels
	for rest := l.Labels; len(rest) > 0; {
		n := min(len(rest), labelColumns*labelRows)
		parts = append(parts, Labels{Part: len(parts) + 1, Labels: rest[:n]})
		rest = rest[n:]
	}
	return parts
}

// About returns the record of the drawing.
func (l Labels) About() About {
	about := About{Name: "labels", Title: "Labels to cut out"}
	if l.Part > 1 {
		about.Name += "-" + number(l.Part)
		about.Title += ", part " + number(l.Part)
	}
	about.Shows = counted(len(l.Labels), "label", "labels") + " in a grid of dashed lines to cut along; each holds the name of a piece, its length, the stick it is cut from, and where it goes."
	return about
}

func (l Labels) sheet(style measure.Style) *kit.Sheet {
	if len(l.Labels) == 0 {
		return blankSheet(l, "No pieces to label yet")
	}
	rows := (len(l.Labels) + labelColumns - 1) / labelColumns
	s := newSheet(l, float64(rows)*labelHigh+1)
	for i, label := range l.Labels {
		left, top := 0.5+float64(i%labelColumns)*labelWide, 0.5+float64(i/labelColumns)*labelHigh
		box := kit.Box{Left: left, Top: top, Right: left + labelWide, Bottom: top + labelHigh}
		l.cutLines(s, i, box)
		label.draw(s, box, style)
	}
	return s
}

// cutLines draws the lines round one label, each line between two labels once.
func (l Labels) cutLines(s *kit.Sheet, i int, b kit.Box) {
	s.Across(kit.Hidden, b.Left, b.Right, b.Top)
	s.Upright(kit.Hidden, b.Left, b.Top, b.Bottom)
	if (i+1)%labelColumns == 0 || i+1 == len(l.Labels) {
		s.Upright(kit.Hidden, b.Right, b.Top, b.Bottom)
	}
	if i+labelColumns >= len(l.Labels) {
		s.Across(kit.Hidden, b.Left, b.Right, b.Bottom)
	}
}

// long returns the words of the size, "" while the length is not known.
func (l PieceLabel) long(style measure.Style) string {
	switch {
	case l.Long == 0:
		return ""
	case l.Wide > 0:
		return l.Long.Print(style) + " × " + l.Wide.Print(style)
	default:
		return l.Long.Print(style)
	}
}

func (l PieceLabel) draw(s *kit.Sheet, box kit.Box, style measure.Style) {
	const margin = 2
	room := box.Right - box.Left - 2*margin
	name := kit.Shorten(l.Name, labelName, 0.6*room, true)
	s.Write(kit.Text{Words: name, Size: labelName, Bold: true, Align: kit.Start, At: kit.Point{X: box.Left + margin, Y: box.Top + 4}})
	if l.Long == 0 {
		s.Across(kit.Thin, box.Right-margin-22, box.Right-margin, box.Top+6.6)
	}
	long := l.long(style)
	second := l.From
	if l.Wide > 0 {
		second, long = long, l.From
	}
	if left := room - kit.Width(name, labelName, true) - 2; kit.Width(long, kit.Medium, true) <= left {
		s.Write(kit.Text{Words: long, Size: kit.Medium, Bold: true, Align: kit.End, At: kit.Point{X: box.Right - margin, Y: box.Top + 4}})
	} else {
		s.Write(kit.Text{Words: kit.Shorten(long, kit.Small, left, false), Align: kit.End, At: kit.Point{X: box.Right - margin, Y: box.Top + 4}})
	}
	for i, words := range []string{second, l.Place} {
		s.Write(kit.Text{Words: kit.Shorten(words, kit.Small, room, false), Align: kit.Start, At: kit.Point{X: box.Left + margin, Y: box.Top + 9.9 + kit.Pitch(kit.Small)*float64(i)}})
	}
}
