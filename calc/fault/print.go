package fault

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"pierbook/calc/bidi"
)

// Print writes every fault: where and what, the line with a caret under the
// offending text, and what would be right.
//
//	henhouse.yaml:14:12: frame.joists.spacing: "15 o.c" is not a length
//	  14 |   spacing: 15 o.c
//	     |            ^^^^^^
//	  write a length with its unit, such as 16" or 400 mm
//
// The same fault at more than three places is told once, with where else it
// stands.
func (l List) Print(w io.Writer) {
	sorted := l.Sorted()
	alike := make(map[string][]Fault)
	for _, f := range sorted {
		alike[f.sort()] = append(alike[f.sort()], f)
	}
	for _, f := range sorted {
		same := alike[f.sort()]
		switch {
		case len(same) <= tellEach:
			f.print(w)
		case f == same[0]:
			f.print(w)
			tellPlaces(w, same[1:])
		}
	}
}

const (
	tellEach   = 3  // of one sort are told one by one
	placesTold = 12 // are named of those that are not
)

var (
	quoted     = regexp.MustCompile(`"[^"]*"`)
	quotedPart = regexp.MustCompile(`"[^"]*"|[0-9]+`)
)

// sort is what faults of one kind have in common: file and words, whatever value
// and place they name.
func (f Fault) sort() string {
	return strings.Join([]string{f.At.File, quotedPart.ReplaceAllString(f.Wrong, "…"), quotedPart.ReplaceAllString(f.Remedy, "…")}, "\n")
}

// tellPlaces names where else a fault stands, with the value there.
func tellPlaces(w io.Writer, faults []Fault) {
	var places []string
	for _, f := range faults[:min(len(faults), placesTold)] {
		place := fmt.Sprintf("%d:%d", f.At.Line, f.At.Column)
		if value := quoted.FindString(f.Wrong); value != "" {
			place += " (" + value + ")"
		}
		places = append(places, place)
	}
	more := ""
	if n := len(faults) - len(places); n > 0 {
		more = fmt.Sprintf(" and %d more", n)
	}
	fmt.Fprintf(w, "  the same at %d more places: %s%s\n", len(faults), bidi.Shown(strings.Join(places, ", ")), more)
}

func (f Fault) print(w io.Writer) {
	var parts []string
	for _, part := range []string{f.At.String(), f.Path, f.Wrong} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	fmt.Fprintln(w, bidi.Shown(strings.Join(parts, ": ")))
	if f.At.Known() && f.At.Text != "" {
		excerpt(w, f.At)
	}
	if f.Remedy != "" {
		fmt.Fprintf(w, "  %s\n", bidi.Shown(f.Remedy))
	}
}

// widest is how much of a line an excerpt shows.
const widest = 160

// excerpt writes the line with its number and the caret below; of a long line
// only what stands around the caret.
func excerpt(w io.Writer, p Place) {
	line := []rune(p.Text)
	start, end := 0, len(line)
	before, after := "", ""
	if len(line) > widest {
		start = max(0, min(p.Column-1-widest/2, len(line)-widest))
		end = start + widest
		if start > 0 {
			before = "…"
		}
		if end < len(line) {
			after = "…"
		}
	}
	shown := Place{Text: before + string(line[start:end]), Column: p.Column - start + len([]rune(before))}
	number := fmt.Sprintf("%4d", p.Line)
	carets := max(1, min(p.Length, end-p.Column+1))
	fmt.Fprintf(w, "%s | %s\n", number, bidi.Shown(shown.Text+after))
	fmt.Fprintf(w, "%s | %s%s\n", strings.Repeat(" ", len(number)), padding(shown), strings.Repeat("^", carets))
}

// padding returns what stands before the caret: a blank for each character, a
// tab where the line has one, so that the caret stands right in any terminal.
func padding(p Place) string {
	var b strings.Builder
	column := 1
	for _, r := range p.Text {
		if column >= p.Column {
			break
		}
		if r == '\t' {
			b.WriteRune('\t')
		} else {
			b.WriteRune(' ')
		}
		column++
	}
	return b.String()
}
