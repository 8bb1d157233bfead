package layouts

import (
	"encoding/json"
	"html/template"
	"strconv"

	"pierbook/calc/measure"
	"pierbook/content"
)

// Reads says how the rod or the tape reads.
type Reads string

// The ways of reading. They are written into the page for its script.
const (
	FeetInches  Reads = "feet_inches"
	FeetTenths  Reads = "feet_tenths"
	Millimetres Reads = "millimetres"
)

// Point is one place that a form works for and the number printed for it.
type Point struct {
	Name  string
	Value measure.Length
}

// Form is a small sum on site: the number printed for a point, plus one
// reading, less another. The length of a post is one: the printed number, plus
// the reading with the rod on the seat, less today's on the bench mark.
//
//	result = printed + plus − minus
//
// On paper it is a worked line; on a phone the script does the sum and says so
// when the result is shorter than Least or longer than Most.
type Form struct {
	Result      string // "post"
	Plus, Minus string // what is read: "reading on the seat", "reading on the bench mark"
	Points      []Point
	Reads       Reads
	Fraction    measure.Length // finest mark of the tape, such as measure.Sixteenth
	Least, Most measure.Length // zero for no limit
}

// For returns the form as the block that a page asked for.
func (f Form) For(c content.Call) template.HTML {
	var m writer
	m.markup(`<div class="sum" data-reads="`, string(f.Reads), `"`)
	m.number("fraction", f.Fraction)
	m.number("least", f.Least)
	m.number("most", f.Most)
	for _, word := range [][2]string{{"result", f.Result}, {"plus", f.Plus}, {"minus", f.Minus}, {"points", f.points()}} {
		m.markup(" data-", word[0], `="`)
		m.attribute(word[1])
		m.markup(`"`)
	}
	m.markup(`><p class="label">`, string(c.Caption), `</p><p class="worked"><b>`)
	m.text(f.Result)
	m.markup("</b> = printed number ", ruled, " + ")
	m.text(f.Plus)
	m.markup(" ", ruled, " − ")
	m.text(f.Minus)
	m.markup(" ", ruled, " = ", ruled, "</p></div>\n")
	return template.HTML(m.out)
}

const ruled = `<span class="blank" role="img" aria-label="blank"></span>`

// number writes a length in nanometres, exact in a script's numbers.
func (m *writer) number(name string, l measure.Length) {
	m.markup(" data-", name, `="`, strconv.FormatInt(int64(l), 10), `"`)
}

// points returns names and values for the script.
func (f Form) points() string {
	list := make([][2]any, 0, len(f.Points))
	for _, p := range f.Points {
		list = append(list, [2]any{p.Name, int64(p.Value)})
	}
	text, err := json.Marshal(list)
	if err != nil {
		panic("layouts: " + err.Error())
	}
	return string(text)
}
