package kit

import "strconv"

// Pen is a kind of line. The class lets a style sheet restyle it, the width and
// dashes stand in the drawing so that it is right without one.
type Pen struct {
	width float64 // mm; the zero Pen draws no line
	look  string  // the attributes
}

func newPen(class string, width float64, dash string) Pen {
	look := trimmed(attribute("class", class)) + attribute("stroke-width", strconv.FormatFloat(width, 'f', -1, 64))
	if dash != "" {
		look += attribute("stroke-dasharray", dash)
	}
	return Pen{width, look}
}

// The pens. Continuous lines are edges, short dashes hidden edges, long-short
// centre and string lines, long-short-short what is there already, such as the
// ground.
var (
	Outline  = newPen("outline", 0.7, "")
	Cut      = newPen("cut", 0.5, "")
	Hidden   = newPen("hidden", 0.5, "2.5 1.2")
	Thin     = newPen("thin", 0.35, "")
	Dotted   = newPen("dotted", 0.35, "0.7 1.3")
	Centre   = newPen("centre", 0.35, "8 1.5 1.5 1.5")
	Existing = newPen("existing", 0.5, "8 1.2 1.5 1.2 1.5 1.2")
	Hatching = newPen("hatch", 0.25, "")
	Bold     = newPen("bold", 1.0, "")
)

// attributes returns what an element drawn with p and filled with f carries.
func (p Pen) attributes(f Fill) string {
	look := p.look
	if p.width == 0 {
		look = `stroke="none"`
	}
	switch f {
	case White:
		return look + ` fill="#fff"`
	case Black:
		return look + ` fill="#000"`
	default:
		return look
	}
}

// Fill is what stands inside an outline. There is no grey: grey is hatching.
type Fill int

// The fills.
const (
	Open  Fill = iota // what lies below shows
	White             // what lies below is covered
	Black
)
