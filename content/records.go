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

// form is what a text of records is made of, and how faults name it.
type form struct {
	words     []string
	file, one string // "this file", "one record"
	another   string // what to do about a word that stands twice
}

func records(words ...string) form {
	return form{words: words, file: "this file", one: "one record", another: "take one away, or put an empty line between two records"}
}

// text returns a field's text, or "" when the record does not have it.
func (rec record) text(word string) string {
	if field, given := rec.fields[word]; given {
		return field.text()
	}
	return ""
}

// entry is what a record tells of, known by its id.
type entry interface{ key() string }

// layer puts one entry made from a record among those read before: in the place of
// one with its id from the layer below, else behind the others.
func layer[T entry](r *recorder, list []T, one T, rec record, what string) []T {
	i := slices.IndexFunc(list, func(other T) bool { return other.key() == one.key() })
	switch {
	case i < 0:
		return append(list, one)
	case r.page.layer > 0:
		list[i] = one
	default:
		r.wrong(rec.fields["id"], fmt.Sprintf("the %s %q stands here twice", what, one.key()), "give each its own id")
	}
	return list
}

// named returns the entry with the id that a block names, or reports that there is
// none.
func named[T entry](r *recorder, wanted span, list []T, what string) (T, bool) {
	for _, one := range list {
		if one.key() == wanted.text() {
			return one, true
		}
	}
	r.wrong(wanted, fmt.Sprintf("there is no %s %q", what, wanted.text()), didYouMean(wanted.text(), ids(list), fmt.Sprintf("write the id of a %s in %ss.txt", what, what)))
	var none T
	return none, false
}

func ids[T entry](list []T) []string {
	all := make([]string, len(list))
	for i, one := range list {
		all[i] = one.key()
	}
	return all
}

// readRecords reads a data file: records set apart by empty lines, each line
// one word, blanks, then the rest; a line that begins with a blank goes on with
// the value above; a line that begins with # is a remark.
func (r *recorder) readRecords(words ...string) []record {
	var list []record
	var current *record
	form := records(words...)
	var last string
	source := r.page.source
	for from := 0; from < len(source); {
		line := r.page.span(from, 0).line()
		from = line.to + 1
		text := line.text()
		switch {
		case strings.TrimSpace(text) == "":
			current, last = nil, ""
		case text[0] == '#':
			last = ""
		case text[0] == ' ' || text[0] == '\t':
			r.goOn(current, last, line)
		default:
			if current == nil {
				list = append(list, record{start: line, fields: map[string]span{}})
				current = &list[len(list)-1]
			}
			last = r.field(current, line.trimmed(), form)
		}
	}
	return list
}

// goOn puts a line that begins with a blank after the value above it, which
// then reaches over both lines.
func (r *recorder) goOn(current *record, last string, line span) {
	if last == "" {
		r.wrong(line.trimmed(), "the line goes on with nothing", "begin it with a word, or put it under one")
		return
	}
	value := current.fields[last]
	value.to = line.trimmed().to
	current.fields[last] = value
}

// field reads a line of a record and returns its word, "" when it is none.
func (r *recorder) field(current *record, line span, of form) string {
	first, rest := line.word()
	word := first.text()
	_, twice := current.fields[word]
	switch {
	case !slices.Contains(of.words, word):
		r.wrong(first, fmt.Sprintf("%q is not a word of %s", word, of.file), didYouMean(word, of.words, "write one of "+strings.Join(of.words, ", ")))
		return ""
	case twice:
		r.wrong(first, fmt.Sprintf("%q stands twice in %s", word, of.one), of.another)
	case rest.empty():
		r.wrong(line, fmt.Sprintf("%q has nothing after it", word), "write the rest of the line, or take the word away")
	}
	current.fields[word] = rest
	return word
}

// need reports which of the words the record lacks.
func (r *recorder) need(rec record, words ...string) bool {
	complete := true
	for _, word := range words {
		if rec.text(word) == "" {
			r.wrong(rec.start, fmt.Sprintf("the record has no %q", word), "add a line that begins "+word)
			complete = false
		}
	}
	return complete
}

// oneOf reports a field that is not one of a closed list of words.
func (r *recorder) oneOf(rec record, field string, words ...string) {
	if value := rec.text(field); !slices.Contains(words, value) {
		r.wrong(rec.fields[field], fmt.Sprintf("%q is not a %s", value, field), "write one of "+strings.Join(words, ", "))
	}
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
	text := field.text()
	if !strings.HasPrefix(text, "unless ") {
		text = "when " + text
	}
	c, good := readCondition(text, field)
	if !good {
		r.wrong(field, fmt.Sprintf("%q is not a condition", field.text()), "write KEY, KEY is WORD, or unless KEY")
	}
	return c
}
