package kit

// Sizes of lettering in millimetres. Capitals are 0.72 of the size, so Small
// has capitals of 2.5 mm (10 pt), the least on A4.
const (
	Small  = 3.5
	Medium = 4.0
)

// Pitch is the distance from line to line at the size.
func Pitch(size float64) float64 { return size * lineRoom }

const (
	lineRoom     = 1.18 // height of the room of a line over its size: ascender to descender and a hair
	capitalsHalf = 0.36 // half the height of capitals over the size
)

// Align says which part of the words stands at the point given.
type Align int

// The alignments.
const (
	Middle Align = iota
	Start
	End
)

func (a Align) anchor() string {
	switch a {
	case Start:
		return "start"
	case End:
		return "end"
	default:
		return "middle"
	}
}

// Text is a line of lettering. At is at half the height of its capitals.
type Text struct {
	Words  string
	At     Point
	Size   float64 // Small when 0
	Bold   bool
	Align  Align
	Turned bool // reads upwards, from the right of the sheet
	Bare   bool // no white ground under it
}

func (t Text) size() float64 {
	if t.Size == 0 {
		return Small
	}
	return t.Size
}

// Box returns the room that the text takes.
func (t Text) Box() Box {
	long, high := Width(t.Words, t.size(), t.Bold), t.size()*lineRoom
	from := -long / 2
	switch t.Align {
	case Start:
		from = 0
	case End:
		from = -long
	}
	if t.Turned {
		return Box{t.At.X - high/2, t.At.Y - from - long, t.At.X + high/2, t.At.Y - from}
	}
	return Box{t.At.X + from, t.At.Y - high/2, t.At.X + from + long, t.At.Y + high/2}
}

// Write puts the text on the sheet.
func (s *Sheet) Write(t Text) {
	if t.Words == "" {
		return
	}
	b, drop := t.Box(), capitalsHalf*t.size()
	at := t.At.Plus(0, drop)
	if t.Turned {
		at = t.At.Plus(drop, 0)
	}
	s.record.Labels = append(s.record.Labels, Label{t.Words, b})
	if !t.Bare {
		ground := b.Grown(-0.1 * t.size())
		s.words.Rect(s.rounded(ground.Left-0.2), s.rounded(ground.Top), s.rounded(ground.Right-ground.Left+0.4),
			s.rounded(ground.Bottom-ground.Top), `class="ground"`, `fill="#fff"`)
	}
	s.words.Text(s.rounded(at.X), s.rounded(at.Y), t.Words, s.attributes(t, at))
}

// attributes returns what the text element carries.
func (s *Sheet) attributes(t Text, at Point) string {
	list := append(make([]byte, 0, 96), `font-size="`...)
	list = append(s.appendNumber(list, t.size()), `" text-anchor="`...)
	list = append(append(list, t.Align.anchor()...), '"')
	if t.Bold {
		list = append(list, ` font-weight="bold"`...)
	}
	if t.Turned {
		list = append(s.appendPoint(append(list, ` transform="rotate(-90 `...), at), `)"`...)
	}
	return string(list)
}

// WriteFirst writes the first of the texts that finds its place free and says
// whether one did; otherwise nothing is written.
func (s *Sheet) WriteFirst(choices ...Text) bool {
	for _, t := range choices {
		if s.Free(t.Box()) {
			s.Write(t)
			return true
		}
	}
	return false
}

// WriteLines writes lines of words below one another, the first at t.At.
func (s *Sheet) WriteLines(t Text, lines []string) {
	for i, line := range lines {
		next := t
		next.Words, next.At = line, t.At.Plus(0, float64(i)*Pitch(t.size()))
		s.Write(next)
	}
}
