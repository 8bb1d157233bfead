package content

import (
	"fmt"
	"slices"
	"strings"
)

// record is one entry of a data file: words, each with the rest of its line.
type record struct {
	start  span
	fields map[string]span
}

// readRecords reads a data file: records set apart by empty lines, each line
// one word, blanks, then the rest; a line that begins with a blank goes on with
// the value above; a line that begins with # is a remark.
func (r *recorder) readRecords(words ...string) []record {
	var records []record
	var current *record
	var last string
	for i, whole := range strings.Split(r.page.source, "\n") {
		line := span{text: strings.TrimRight(whole, " \t\r"), file: r.page.file, line: i + 1, column: 1, whole: strings.TrimRight(whole, "\r")}
		switch {
		case line.text == "":
			current = nil
		case line.text[0] == '#':
		case line.text[0] == ' ' || line.text[0] == '\t':
			r.goOn(current, last, line)
		default:
			if current == nil {
				records = append(records, record{start: line, fields: map[string]span{}})
				current = &records[len(records)-1]
			}
			last = r.field(current, line, words)
		}
	}
	return records
}

// goOn puts a line that begins with a blank after the value above it.
func (r *recorder) goOn(current *record, last string, line span) {
	if current == nil || last == "" {
		r.wrong(line.all(), "the line goes on with nothing", "begin it with a word, or put it under one")
		return
	}
	value := current.fields[last]
	value.text += " " + line.trimmed().text
	current.fields[last] = value
}

// field reads a line of a record and returns its word.
func (r *recorder) field(current *record, line span, words []string) string {
	word, rest := line.word()
	_, twice := current.fields[word]
	switch {
	case !slices.Contains(words, word):
		r.wrong(line.place(0, len(word)), fmt.Sprintf("%q is not a word of this file", word), didYouMean(word, words, "write one of "+strings.Join(words, ", ")))
		return ""
	case twice:
		r.wrong(line.place(0, len(word)), fmt.Sprintf("%q stands twice in one record", word), "take one away, or put an empty line between two records")
	case rest.text == "":
		r.wrong(line.all(), fmt.Sprintf("%q has nothing after it", word), "write the rest of the line, or take the word away")
	}
	current.fields[word] = rest
	return word
}

// need reports which of the words the record lacks.
func (r *recorder) need(rec record, words ...string) bool {
	complete := true
	for _, word := range words {
		if rec.fields[word].text == "" {
			r.wrong(rec.start.all(), fmt.Sprintf("the record has no %q", word), "add a line that begins "+word)
			complete = false
		}
	}
	return complete
}

// oneOf reports a field that is not one of a closed list of words.
func (r *recorder) oneOf(rec record, field string, words ...string) bool {
	value := rec.fields[field]
	if slices.Contains(words, value.text) {
		return true
	}
	r.wrong(value.all(), fmt.Sprintf("%q is not a %s", value.text, field), "write one of "+strings.Join(words, ", "))
	return false
}

// readLevels say how a source was read: on the issuing body's own page, in a
// reproduction, in somebody's summary, or not at all.
var readLevels = []string{"primary", "text", "summary", "memory"}

// conditionOf returns the condition in the record's when field.
func (r *recorder) conditionOf(rec record) condition {
	field, given := rec.fields["when"]
	if !given {
		return condition{}
	}
	text := field.text
	if !strings.HasPrefix(text, "unless ") {
		text = "when " + text
	}
	c, good := readCondition(text, field.all())
	if !good {
		r.wrong(field.all(), fmt.Sprintf("%q is not a condition", field.text), "write KEY, KEY is WORD, or unless KEY")
	}
	return c
}
