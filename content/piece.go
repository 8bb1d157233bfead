package content

import (
	"slices"
	"strings"

	"pierbook/calc/fault"
)

// A page is read once into pieces: finished HTML with holes in it. Filling a
// page for a job walks the pieces and writes the job's figures into the holes,
// so that the Markdown is parsed once however many jobs are made, and so that
// nothing from a job is ever in reach of the Markdown parser.
type piece struct {
	literal literal // written as it stands, when there is no hole
	hole    hole
}

// hole is what a job decides about.
type hole interface {
	fill(*filler)
}

// literal is finished HTML, a part of its page's markup.
type literal struct{ from, to uint32 }

// figureText is a figure's printed value, escaped, with its marks.
type figureText struct {
	key string
	at  span
}

// figureName is what a figure is, in words.
type figureName struct {
	key string
	at  span
}

// answer is a figure that a job need not have: without it a blank is ruled.
type answer struct {
	key   string
	label string // what belongs into the blank
}

// sheetLink names another sheet by its number and leads to it.
type sheetLink struct {
	page string
	at   span
}

// when is filled only if its condition holds.
type when struct {
	condition condition
	body      []piece
}

// group keeps head and tail only when something of the body was filled: a
// list whose items were all left out leaves no empty list behind.
type group struct {
	head literal
	body []piece
	tail literal
}

// leafBreak starts a new leaf of the sheet, or its back, for the sets of its
// page or for others.
type leafBreak struct {
	back bool
	sets []Set
}

// contents is the list of all sheets bound.
type contents struct{}

// call brings in a block that is made from the job's plan.
type call struct {
	block, argument string
	height          int // that a drawing keeps to, in mm; 0 when the page does not say
	caption         []piece
	at              span
}

// recorder gathers a page's pieces. It is also the writer that the Markdown
// renderer writes to (see markdown.go), which is why it has the methods of a
// buffered writer.
type recorder struct {
	page   *page
	book   *Book
	faults *fault.List
	text   []byte // all HTML written for the page
	noted  int    // how much of it stands in pieces
	gather []piece
	open   []int // where in gather each run begins that was not ended yet
}

// flush turns the HTML written so far into a piece.
func (r *recorder) flush() {
	if len(r.text) > r.noted {
		r.gather = append(r.gather, piece{literal: literal{uint32(r.noted), uint32(len(r.text))}})
		r.noted = len(r.text)
	}
}

// add puts a hole after what was written.
func (r *recorder) add(h hole) {
	r.flush()
	r.gather = append(r.gather, piece{hole: h})
}

// begin starts a run of pieces that end returns.
func (r *recorder) begin() {
	r.flush()
	r.open = append(r.open, len(r.gather))
}

// end returns the pieces since begin.
func (r *recorder) end() []piece {
	r.flush()
	last := len(r.open) - 1
	start := r.open[last]
	body := slices.Clone(r.gather[start:])
	r.gather, r.open = r.gather[:start], r.open[:last]
	return body
}

// beginWhen starts what is filled only under a condition, or nothing special
// when there is none.
func (r *recorder) beginWhen(c condition) {
	if c.given() {
		r.begin()
	}
}

// endWhen ends what beginWhen started with the same condition.
func (r *recorder) endWhen(c condition) {
	if c.given() {
		body := r.end()
		r.add(when{condition: c, body: body})
	}
}

// grouped records head, body and tail as a group.
func (r *recorder) grouped(head string, body func(), tail string) {
	r.begin()
	body()
	r.group(head, r.end(), tail)
}

// group records a body that was recorded before with its head and tail.
func (r *recorder) group(head string, body []piece, tail string) {
	r.add(group{head: r.literal(head), body: body, tail: r.literal(tail)})
}

func (r *recorder) literal(html string) literal {
	r.flush()
	r.html(html)
	from := r.noted
	r.noted = len(r.text)
	return literal{uint32(from), uint32(r.noted)}
}

// html writes finished HTML.
func (r *recorder) html(parts ...string) {
	for _, part := range parts {
		r.text = append(r.text, part...)
	}
}

// escaped writes plain text.
func (r *recorder) escaped(s string) { r.text = AppendAttribute(r.text, s) }

// wrong reports a fault of the page.
func (r *recorder) wrong(at span, wrong, remedy string) {
	r.faults.Add(fault.Fault{At: at.place(), Wrong: wrong, Remedy: remedy})
}

// The rest of the buffered writer.

func (r *recorder) Write(p []byte) (int, error) { r.text = append(r.text, p...); return len(p), nil }
func (r *recorder) WriteString(s string) (int, error) {
	r.text = append(r.text, s...)
	return len(s), nil
}
func (r *recorder) WriteByte(c byte) error { r.text = append(r.text, c); return nil }
func (r *recorder) Available() int         { return cap(r.text) - len(r.text) }
func (r *recorder) Buffered() int          { return len(r.text) }
func (r *recorder) Flush() error           { return nil }
func (r *recorder) WriteRune(c rune) (int, error) {
	before := len(r.text)
	r.text = append(r.text, string(c)...)
	return len(r.text) - before, nil
}

// slug turns a heading into the part of an id: lower-case letters and digits,
// hyphens for the rest.
func slug(s string) string {
	var b strings.Builder
	for _, c := range strings.ToLower(s) {
		switch {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9':
			b.WriteRune(c)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.Trim(b.String(), "-")
}
