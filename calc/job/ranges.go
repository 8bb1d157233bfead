package job

import (
	_ "embed"
	"fmt"
	"math"
	"regexp"
	"strings"
	"sync"

	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// rangesText is the table of ranges: the part of the table of keys that says
// where a value makes sense for this trade.
//
//go:embed ranges.txt
var rangesText string

// Range is where a value makes sense for this trade. A value beyond the outer
// limits is a fault; one beyond the inner limits is bound, and asked about. The
// limits are written as in a job; an empty one leaves its side open.
type Range struct {
	RefuseBelow, AskBelow string
	AskAbove, RefuseAbove string
	Reason                string

	low, askLow, askHigh, high float64 // in the unit of the key's kind; not a number when open
}

// Words says the range in one line, for the help of a key.
func (g *Range) Words() string {
	var parts []string
	add := func(format, limit string) {
		if limit != "" {
			parts = append(parts, fmt.Sprintf(format, limit))
		}
	}
	add("refused below %s", g.RefuseBelow)
	add("asked below %s", g.AskBelow)
	add("asked above %s", g.AskAbove)
	add("refused above %s", g.RefuseAbove)
	return strings.Join(parts, ", ") + ": " + g.Reason
}

// Doubt is a value that was taken although it is out of the usual.
type Doubt struct {
	Path   string
	At     fault.Place
	Saying string
}

// Doubts returns the values to look at again, in the order of the table of keys.
func (j *Job) Doubts() []Doubt { return j.doubts }

// ranges holds the rows of the table by their key.
var ranges = sync.OnceValue(func() map[string]*Range {
	rows := make(map[string]*Range)
	for line := range strings.Lines(rangesText) {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		parts := strings.Split(line, " | ")
		if len(parts) != 6 || rows[parts[0]] != nil {
			panic("job: ranges.txt: " + line)
		}
		for i := range parts {
			if parts[i] == "-" {
				parts[i] = ""
			}
		}
		rows[parts[0]] = &Range{RefuseBelow: parts[1], AskBelow: parts[2], AskAbove: parts[3], RefuseAbove: parts[4], Reason: parts[5]}
	}
	return rows
})

// withRanges gives every key its range. Design values have the same in whichever
// timber they stand.
func withRanges(keys []Key) []Key {
	rows := ranges()
	for i := range keys {
		k := &keys[i]
		row := rows[k.Path]
		if at := strings.Index(k.Path, ".values."); row == nil && at > 0 {
			row = rows["*"+k.Path[at:]]
		}
		if at := strings.Index(k.Path, ".timber."); row == nil && at > 0 {
			row = rows[k.Path[at+1:]]
		}
		if row == nil {
			continue
		}
		own := *row
		own.low, own.askLow, own.askHigh, own.high = k.limit(own.RefuseBelow), k.limit(own.AskBelow), k.limit(own.AskAbove), k.limit(own.RefuseAbove)
		k.Range = &own
	}
	return keys
}

// limit reads a limit as the key reads its value.
func (k *Key) limit(text string) float64 {
	if text == "" {
		return math.NaN()
	}
	var v value
	if err := k.Kind.read(&v, text); err != nil {
		panic(fmt.Sprintf("job: ranges.txt: %s: %v", k.Path, err))
	}
	return v.magnitude()
}

// magnitude returns the value as one number in the unit of its kind.
func (v value) magnitude() float64 {
	switch {
	case v.over > 0:
		return v.length.Metres() / v.over.Metres()
	case v.length != 0:
		return v.length.Metres()
	case v.count != 0:
		return float64(v.count)
	}
	return v.number
}

// refuse returns the error of a value that makes no sense for this trade.
func (k *Key) refuse(v value, text string) error {
	g := k.Range
	if g == nil || v.word != "" {
		return nil
	}
	size := v.magnitude()
	switch {
	case size < g.low:
		return slip(fmt.Sprintf("%q is less than %s", text, g.RefuseBelow), k.usual(text))
	case size > g.high:
		return slip(fmt.Sprintf("%q is more than %s", text, g.RefuseAbove), k.usual(text))
	}
	return nil
}

// usual says what is usual, and which unit would have made it so.
func (k *Key) usual(text string) string {
	words := "the usual: " + k.Range.Reason
	if other := k.otherUnit(text); other != "" {
		words = "was " + other + " meant? T" + words[1:]
	}
	return words
}

// doubt says why a value that was taken is out of the usual, or "".
func (k *Key) doubt(path, text string, v value) string {
	g := k.Range
	if g == nil || v.word != "" {
		return ""
	}
	size := v.magnitude()
	limit, way := "", ""
	switch {
	case size < g.askLow:
		limit, way = g.AskBelow, "less"
	case size > g.askHigh:
		limit, way = g.AskAbove, "more"
	default:
		return ""
	}
	saying := fmt.Sprintf("%s: %s is %s than the usual %s (%s).", path, text, way, limit, g.Reason)
	if other := k.otherUnit(text); other != "" {
		saying += " Was " + other + " meant?"
	}
	return saying
}

// takenForAnother are the units that people write for one another, by kind.
var takenForAnother = map[string][]string{
	Length.Name: {"in", "ft", "mm", "m"}, Distance.Name: {"in", "ft", "mm", "m"}, Height.Name: {"in", "ft", "mm", "m"},
	Load.Name: {"psf", "kPa"}, Stress.Name: {"psf", "kPa", "psi"}, Speed.Name: {"mph", "km/h", "m/s"},
	Force.Name: {"lb", "kg", "kN"}, Mass.Name: {"lb", "kg"}, Density.Name: {"pcf", "kg/m3"},
}

var leadingNumber = regexp.MustCompile(`^[0-9][0-9., /-]*`)

// otherUnit returns the same number with another unit that would be usual here,
// or "" when none would.
func (k *Key) otherUnit(text string) string {
	number := strings.TrimRight(leadingNumber.FindString(text), " -")
	if number == "" {
		return ""
	}
	for _, unit := range takenForAnother[k.Kind.Name] {
		var v value
		other := number + " " + unit
		if k.Kind.read(&v, other) != nil || other == text {
			continue
		}
		size := v.magnitude()
		if !(size < k.Range.askLow) && !(size > k.Range.askHigh) && !math.IsNaN(k.Range.askLow+k.Range.askHigh) {
			return other
		}
	}
	return ""
}

// Unusual returns the reason why a length at a path of the table is out of the
// usual, or "" when it is within it.
func Unusual(path string, l measure.Length) string {
	for _, k := range Keys() {
		if k.Path != path || k.Range == nil {
			continue
		}
		if size := l.Metres(); size < k.Range.askLow || size > k.Range.askHigh {
			return k.Range.Reason
		}
	}
	return ""
}
