// Package kit is the drafting table of the drawings: pens, hatching, lettering,
// dimension lines, leaders and level marks on a sheet measured in millimetres.
//
// Line weights, arrowheads, gaps and lettering follow the customary practice of
// technical drawing: thin lines at least 0.3 mm and thick ones at least 0.6 mm
// (ASME Y14.2-2008, 2.1), first dimension line at least 10 mm from the outline
// and the next ones at least 6 mm on (ASME Y14.5, 1.7.1), capitals at least
// 2.5 mm on A4, arrowheads about three times as long as wide.
//
// A sheet has two layers. Shapes go to the lower one, words to the upper one on
// a white ground, so that no line ever runs through a figure. Every word, every
// arrowhead and the extent of the ink are recorded, so that a test can ask
// whether words collide or leave the sheet.
//
// The package alone knows the library that writes SVG.
package kit

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strings"

	svg "github.com/ajstarks/svgo/float"
)

// Point is a place on the sheet in millimetres, x to the right and y down.
type Point struct{ X, Y float64 }

// Plus returns the point dx to the right of p and dy below it.
func (p Point) Plus(dx, dy float64) Point { return Point{p.X + dx, p.Y + dy} }

// Box is an upright rectangle on the sheet.
type Box struct{ Left, Top, Right, Bottom float64 }

// Around returns the box with the centre c.
func Around(c Point, width, height float64) Box {
	return Box{c.X - width/2, c.Y - height/2, c.X + width/2, c.Y + height/2}
}

// Centre returns the middle of b.
func (b Box) Centre() Point { return Point{(b.Left + b.Right) / 2, (b.Top + b.Bottom) / 2} }

// Grown returns b with a margin all round; a negative margin shrinks it.
func (b Box) Grown(margin float64) Box {
	return Box{b.Left - margin, b.Top - margin, b.Right + margin, b.Bottom + margin}
}

// Meets says whether a and b share more than an edge.
func (b Box) Meets(a Box) bool {
	return b.Left < a.Right && a.Left < b.Right && b.Top < a.Bottom && a.Top < b.Bottom
}

// Holds says whether a lies wholly in b.
func (b Box) Holds(a Box) bool {
	return a.Left >= b.Left && a.Right <= b.Right && a.Top >= b.Top && a.Bottom <= b.Bottom
}

// Sheet is a drawing on the table. Make it with [New], draw, then take its [Sheet.SVG].
type Sheet struct {
	id                 string
	title, description string
	size               Box
	shapeLayer         bytes.Buffer
	wordLayer          bytes.Buffer
	shapes, words      *svg.SVG
	record             Record
	err                error
}

// New lays out a sheet of the width and height in millimetres. The id is the
// name of the drawing, one in a page; the title names it and the description
// says in words what it shows, for those who cannot see it.
func New(id, title, description string, width, height float64) *Sheet {
	s := &Sheet{id: ID(id), title: title, description: description, size: Box{0, 0, width, height}}
	s.record.Sheet = s.size
	s.record.Ink = Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	s.shapeLayer.Grow(usualLayer)
	s.wordLayer.Grow(usualLayer)
	s.shapes, s.words = svg.New(&s.shapeLayer), svg.New(&s.wordLayer)
	s.shapes.Decimals, s.words.Decimals = decimals, decimals
	return s
}

// usualLayer is the room made for a layer at first, in bytes.
const usualLayer = 12 << 10

// ID returns the name as it stands in ids: letters, digits and hyphens alone.
func ID(id string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-':
			return r
		default:
			return '-'
		}
	}, id)
}

// Size returns the whole sheet as a box.
func (s *Sheet) Size() Box { return s.size }

// SVG returns the finished drawing as one svg element without a prolog. It
// reports a coordinate that was not a number.
func (s *Sheet) SVG() ([]byte, error) {
	width, height := s.number(s.size.Right), s.number(s.size.Bottom)
	if s.err != nil {
		return nil, fmt.Errorf("drawing %s: %w", s.id, s.err)
	}
	var out bytes.Buffer
	out.Grow(s.shapeLayer.Len() + s.wordLayer.Len() + 2048)
	out.WriteString("<svg" +
		attribute("xmlns", "http://www.w3.org/2000/svg") +
		attribute("class", "drawing") +
		attribute("role", "img") +
		attribute("aria-labelledby", s.id+"-title "+s.id+"-desc") +
		attribute("width", width+"mm") + attribute("height", height+"mm") +
		attribute("viewBox", "0 0 "+width+" "+height) + ">\n")
	out.WriteString("<title" + attribute("id", s.id+"-title") + ">" + escape(s.title) + "</title>\n")
	out.WriteString("<desc" + attribute("id", s.id+"-desc") + ">" + escape(s.description) + "</desc>\n")
	end := svg.New(&out)
	end.Group(trimmed(attribute("class", "lines")), `fill="none"`, `stroke="#000"`, `stroke-linejoin="round"`)
	out.Write(s.shapeLayer.Bytes())
	end.Gend()
	end.Group(trimmed(attribute("class", "words")), `fill="#000"`, trimmed(attribute("font-family", family)))
	out.Write(s.wordLayer.Bytes())
	end.Gend()
	end.End()
	return out.Bytes(), nil
}

// WithID returns the drawing with its id exchanged, for a page that shows the
// same drawing twice: ids stand only in the name and the description.
func WithID(drawing []byte, old, id string) []byte {
	old, id = ID(old), ID(id)
	for _, part := range []string{"-title", "-desc"} {
		drawing = bytes.ReplaceAll(drawing, []byte(`id="`+old+part+`"`), []byte(`id="`+id+part+`"`))
	}
	return bytes.Replace(drawing,
		[]byte(`aria-labelledby="`+old+"-title "+old+`-desc"`),
		[]byte(`aria-labelledby="`+id+"-title "+id+`-desc"`), 1)
}

var errNotANumber = errors.New("a coordinate is not a number")
