package kit

import "strconv"

// Pen is a kind of line. The class lets a style sheet restyle it, the width and
// dashes stand in the drawing so that it is right without one.
type Pen struct {
	class string
	width float64 // mm
	dash  string
}

// The pens. Continuous lines are edges, short dashes hidden edges, long-short
// centre and string lines, long-short-short what is there already, such as the
// ground.
var (
	Outline  = Pen{"outline", 0.7, ""}
	Cut      = Pen{"cut", 0.5, ""}
	Hidden   = Pen{"hidden", 0.5, "2.5 1.2"}
	Thin     = Pen{"thin", 0.35, ""}
	Dotted   = Pen{"dotted", 0.35, "0.7 1.3"}
	Centre   = Pen{"centre", 0.35, "8 1.5 1.5 1.5"}
	Existing = Pen{"existing", 0.5, "8 1.2 1.5 1.2 1.5 1.2"}
	Hatching = Pen{"hatch", 0.25, ""}
	Bold     = Pen{"bold", 1.0, ""}
	none     = Pen{"", 0, ""}
)

// attributes returns what an element drawn with p carries.
func (p Pen) attributes() []string {
	if p.width == 0 {
		return []string{`stroke="none"`}
	}
	list := []string{
		trimmed(attribute("class", p.class)),
		trimmed(attribute("stroke-width", strconv.FormatFloat(p.width, 'f', -1, 64))),
	}
	if p.dash != "" {
		list = append(list, trimmed(attribute("stroke-dasharray", p.dash)))
	}
	return list
}

// Fill is what stands inside an outline. There is no grey: grey is hatching.
type Fill int

// The fills.
const (
	Open  Fill = iota // what lies below shows
	White             // what lies below is covered
	Black
)

func (f Fill) attributes() []string {
	switch f {
	case White:
		return []string{`fill="#fff"`}
	case Black:
		return []string{`fill="#000"`}
	default:
		return nil
	}
}
