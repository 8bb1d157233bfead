package kit

import (
	"strings"
	"unicode"

	"pierbook/calc/bidi"
)

// family names faces with the widths of the table below, then any sans.
const family = "Liberation Sans, Arial, Helvetica, sans-serif"

// slack is added to every estimated width, for faces a little wider than the table's.
const slack = 1.05

// Advance widths of the printable ASCII characters, in thousandths of the size,
// read from the faces Liberation Sans Regular and Bold 2.x (metrics of the
// common sans serif faces). Other characters are in otherWidths or take 1000.
var (
	regularWidths = [95]int16{
		278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556,
		556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
		667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556,
		556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
	}
	boldWidths = [95]int16{
		278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556,
		556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
		667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611,
		611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
	}
	otherWidths = map[rune]int16{
		'′': 240, '″': 479, '×': 584, '÷': 549, '±': 549, '°': 400, '–': 556, '−': 584, '≤': 549, '≥': 549, '·': 333,
		'²': 333, '³': 333, '\u00a0': 278, '\u2009': 278, '\u202f': 278, '’': 278, '‘': 278, '“': 500, '”': 500, 'é': 556,
	}
)

// Width returns how wide the words come out at the size, in millimetres, on the
// generous side.
func Width(words string, size float64, bold bool) float64 {
	table := &regularWidths
	if bold {
		table = &boldWidths
	}
	sum := 0
	for _, r := range words {
		sum += advance(table, r)
	}
	return float64(sum) / 1000 * size * slack
}

func advance(table *[95]int16, r rune) int {
	if r >= ' ' && r <= '~' {
		return int(table[r-' '])
	}
	if w, ok := otherWidths[r]; ok {
		return int(w)
	}
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) { // marks upon a letter, signs without width
		return 0
	}
	return 1000
}

// Shorten returns the words, cut with an ellipsis if they are wider than the room.
func Shorten(words string, size, room float64, bold bool) string {
	if Width(words, size, bold) <= room {
		return words
	}
	runes := []rune(words)
	for n := len(runes) - 1; n > 0; n-- {
		short := strings.TrimRight(string(runes[:n]), " ") + "…"
		short = bidi.Closed(short)
		if Width(short, size, bold) <= room {
			return short
		}
	}
	return "…"
}

// Wrap breaks the words at blanks, not at no-break ones, into lines no wider than the room; a single
// word that is too wide is shortened.
func Wrap(words string, size, room float64, bold bool) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(words, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' }) {
		longer := strings.TrimLeft(line+" "+word, " ")
		if line != "" && Width(longer, size, bold) > room {
			lines, longer = append(lines, line), word
		}
		line = Shorten(longer, size, room, bold)
	}
	if line == "" {
		return lines
	}
	return append(lines, line)
}

// WrapTo wraps like [Wrap] to at most so many lines; what does not fit ends in
// an ellipsis.
func WrapTo(words string, size, room float64, most int) []string {
	lines := Wrap(words, size, room, false)
	if len(lines) <= most {
		return lines
	}
	lines = lines[:most]
	last := lines[most-1] + " …"
	if Width(last, size, false) > room {
		last = Shorten(lines[most-1]+"…", size, room, false)
		if !strings.HasSuffix(last, "…") {
			last += "…"
		}
	}
	lines[most-1] = last
	return lines
}
