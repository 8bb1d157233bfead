package figure

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"

	"pierbook/calc/measure"
)

// WriteJSON appends figures.json: schema 1, the job, the version of the program, its progress, the sheets of
// its binder, what changed since the issue before, the keys of the things of each
// set in their order, and every figure by rising key
// with its value in base units, the text the binder prints and its origin. A
// figure without a value has value null. Values that are not finite are an error:
// JSON has no way to write them.
func WriteJSON(b *bytes.Buffer, issue Issue, figures *Registry, style measure.Style) error {
	w := writer{buffer: b}
	b.WriteString("{\n\"schema\": 1,\n\"job\": {\"name\": ")
	w.text(issue.Job.Name)
	b.WriteString(", \"revision\": ")
	w.text(issue.Job.Revision)
	b.WriteString("},\n\"program\": ")
	w.text(issue.Program)
	b.WriteString(",\n\"progress\": ")
	w.text(issue.Progress)
	writeList(&w, "sheets", issue.Sheets)
	if issue.Since != nil {
		b.WriteString(",\n\"since\": ")
		w.plain(issue.Since)
	}
	w.sets(figures.Sets())
	b.WriteString(",\n\"figures\": {")
	sorted := slices.Clone(figures.All())
	slices.SortFunc(sorted, func(a, b Figure) int { return compare(a.Key, b.Key) })
	for i, f := range sorted {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n")
		w.text(f.Key)
		b.WriteString(": ")
		w.figure(f, style)
	}
	b.WriteString("\n}\n}\n")
	return w.err
}

// sets writes the keys that the figures of each set's things begin with.
func (w *writer) sets(sets []Set) {
	w.buffer.WriteString(",\n\"sets\": {")
	for i, set := range sets {
		if i > 0 {
			w.buffer.WriteByte(',')
		}
		w.buffer.WriteByte('\n')
		w.text(set.Name)
		w.buffer.WriteString(": ")
		keys := make([]string, len(set.Things))
		for k, thing := range set.Things {
			keys[k] = thing.Key
		}
		w.plain(keys)
	}
	w.buffer.WriteString("\n}")
}

// writeList writes a list under its name, a line for each.
func writeList[V any](w *writer, name string, list []V) {
	w.buffer.WriteString(",\n\"" + name + "\": [")
	for i, v := range list {
		if i > 0 {
			w.buffer.WriteByte(',')
		}
		w.buffer.WriteByte('\n')
		w.plain(v)
	}
	w.buffer.WriteString("\n]")
}

// plain writes what the library can write by itself.
func (w *writer) plain(v any) {
	text, err := json.Marshal(v)
	if err != nil {
		w.err = fmt.Errorf("writing figures: %w", err)
		return
	}
	w.buffer.Write(text)
}

func compare(a, b string) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// writer keeps the first error, so that the calls above read in one line.
type writer struct {
	buffer *bytes.Buffer
	err    error
}

func (w *writer) figure(f Figure, style measure.Style) {
	w.buffer.WriteString("{\"value\": ")
	unit, text := w.value(f, style)
	w.buffer.WriteString(", \"unit\": ")
	w.text(unit)
	w.buffer.WriteString(", \"text\": ")
	w.text(text)
	w.buffer.WriteString(", \"from\": ")
	w.text(string(f.Origin))
	w.buffer.WriteByte('}')
}

func (w *writer) value(f Figure, style measure.Style) (unit, text string) {
	switch v := f.Value.(type) {
	case nil:
		w.buffer.WriteString("null")
		return "", ""
	case measure.Word:
		w.text(string(v))
	case measure.Length:
		w.buffer.WriteString(exactMillimetres(v))
		unit = "mm"
	case measure.Exact:
		w.buffer.WriteString(exactMillimetres(measure.Length(v)))
		unit = "mm"
	case measure.Small:
		w.buffer.WriteString(exactMillimetres(measure.Length(v)))
		unit = "mm"
	case measure.Reading:
		w.buffer.WriteString(exactMillimetres(measure.Length(v)))
		unit = "mm"
	default:
		value, u := v.Base()
		if math.IsNaN(value) || math.IsInf(value, 0) {
			w.err = fmt.Errorf("writing figures: %s is %v", f.Key, value)
			return "", ""
		}
		w.buffer.WriteString(strconv.FormatFloat(tidy(value), 'f', -1, 64))
		unit = u
	}
	return unit, f.Text(style)
}

// exactMillimetres prints whole nanometres as millimetres with no digit lost.
func exactMillimetres(l measure.Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	whole, rest := l/measure.Millimetre, l%measure.Millimetre
	if rest == 0 {
		return sign + strconv.FormatInt(int64(whole), 10)
	}
	digits := fmt.Sprintf("%06d", int64(rest))
	for digits[len(digits)-1] == '0' {
		digits = digits[:len(digits)-1]
	}
	return sign + strconv.FormatInt(int64(whole), 10) + "." + digits
}

// tidy rounds to ten significant digits, so that the last bits of a sum, which
// may differ between processors, never reach the file.
func tidy(value float64) float64 {
	if value == 0 {
		return 0
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 10, 64), 64)
	if err != nil {
		return value
	}
	return rounded
}

// text writes a JSON string that is also safe inside an HTML script element.
func (w *writer) text(s string) { w.plain(s) }
