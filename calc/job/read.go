package job

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"regexp"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"pierbook/calc/bidi"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
)

// load reads one file into nodes, whose outermost keys are among the names. The
// root is nil when the file cannot be read as a table of keys at all. Every loss
// that the language would take silently is a fault: see [builder]. Of a file
// that is not one of ours no line is shown, and nothing at all when a file named
// it and no person.
func load(fsys fs.FS, name string, names []string, origin figure.Origin, faults *fault.List) *node {
	file := fault.Place{File: name}
	data, err := readAtMost(fsys, name, MostBytes+1)
	switch {
	case errors.Is(err, ErrNotPlain):
		faults.Add(fault.Fault{At: file, Wrong: "this is not a plain file but a pipe, a device or the like", Remedy: "name a file, or write - for the job on standard input"})
		return nil
	case errors.Is(err, ErrTooLarge), len(data) > MostBytes:
		faults.Add(fault.Fault{At: file, Wrong: "the file is over 1 MB", Remedy: "a job file holds a few hundred lines; is this the right file?"})
		return nil
	case errors.Is(err, fs.ErrNotExist):
		faults.Add(fault.Fault{At: file, Wrong: "there is no such file", Remedy: "look at the spelling and the folder of the name"})
		return nil
	case err != nil && isFolder(fsys, name):
		faults.Add(fault.Fault{At: file, Wrong: "this is a folder", Remedy: "name the job file in it"})
		return nil
	case err != nil:
		faults.Add(fault.Fault{At: file, Wrong: "the file cannot be read", Remedy: "is it a plain file, and may it be read?"})
		return nil
	}
	text := string(data)
	src := newSource(name, strings.ToValidUTF8(text, "\ufffd"))
	src.hidden = !isOurs(src, names)
	if src.hidden && origin != figure.Given && strings.TrimSpace(text) != "" {
		faults.Add(fault.Fault{At: file, Wrong: "this is not a file of this kind: hardly any of its outermost keys belongs here", Remedy: "is it the right file? pierbook help job lists the keys"})
		return nil
	}
	if !plainText(src, text, faults) || !shallow(src, faults) {
		return nil
	}
	return parse(src, text, origin, faults)
}

func isFolder(fsys fs.FS, name string) bool {
	info, err := fs.Stat(fsys, name)
	return err == nil && info.IsDir()
}

func readAtMost(fsys fs.FS, name string, most int64) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, most))
}

// plainText reports bytes that are not UTF-8, control characters and signs that
// turn the direction of writing, the first of each line.
func plainText(src *source, text string, faults *fault.List) bool {
	if !utf8.ValidString(text) {
		for i, line := range src.lines {
			if at := strings.IndexRune(line, '\ufffd'); at >= 0 {
				faults.Add(fault.Fault{At: src.place(i+1, utf8.RuneCountInString(line[:at])+1, 1), Wrong: "the file is not UTF-8 text here", Remedy: "save the file as UTF-8"})
			}
		}
		return false
	}
	clean := true
	for i, line := range src.lines {
		if at := strings.IndexFunc(line, bidi.Forbidden); at >= 0 {
			clean = false
			r, _ := utf8.DecodeRuneInString(line[at:])
			faults.Add(forbidden("", src.place(i+1, utf8.RuneCountInString(line[:at])+1, 1), r))
		}
	}
	return clean
}

// forbidden reports a sign that has no business in a text.
func forbidden(path string, at fault.Place, r rune) fault.Fault {
	what := fmt.Sprintf("the control character %U stands here", r)
	if bidi.Turns(r) {
		what = fmt.Sprintf("the sign %U, which turns the direction of writing, stands here", r)
	}
	return fault.Fault{At: at, Path: path, Wrong: what, Remedy: "delete it; such characters come with copied text"}
}

func parse(src *source, text string, origin figure.Origin, faults *fault.List) *node {
	decoder := yaml.NewDecoder(bytes.NewReader([]byte(text)))
	var document, second yaml.Node
	err := decoder.Decode(&document)
	switch {
	case errors.Is(err, io.EOF) || err == nil && emptyDocument(&document):
		faults.Add(fault.Fault{At: src.start(), Wrong: "the file is empty", Remedy: "write a job: a dozen lines are enough, and pierbook help job lists the keys"})
		return nil
	case err != nil:
		faults.Join(syntaxFaults(src, err.Error()))
		return nil
	}
	b := builder{src: src, origin: origin, faults: faults}
	switch err := decoder.Decode(&second); {
	case err == nil:
		b.wrong("", src.place(second.Line, second.Column, 3), "a second document begins here, and would be left unread", "take the line --- out: one file holds one job")
	case !errors.Is(err, io.EOF):
		faults.Join(syntaxFaults(src, err.Error()))
	}
	root := b.build(document.Content[0], "")
	if root != nil && root.shape != tableShape {
		b.wrong("", root.at, "the file holds "+root.shape.String()+", not keys", "begin with lines such as name: Garden shed")
		return nil
	}
	return root
}

func emptyDocument(document *yaml.Node) bool {
	return len(document.Content) == 0 || document.Content[0].Tag == "!!null"
}

// builder turns the tree of the file into nodes. It reports what is allowed in
// the language but has no business in a job file, because a value would be lost
// or changed on the way without a word: doubled keys, keys without a value,
// comments that were meant as text, anchors, aliases, merge keys and tags.
type builder struct {
	src    *source
	origin figure.Origin
	faults *fault.List
}

func (b *builder) wrong(path string, at fault.Place, wrong, remedy string) {
	b.faults.Add(fault.Fault{At: at, Path: path, Wrong: wrong, Remedy: remedy})
}

// build returns nil for what was reported and has no value.
func (b *builder) build(y *yaml.Node, path string) *node {
	at := b.place(y)
	switch {
	case y.Kind == yaml.AliasNode:
		b.wrong(path, at, fmt.Sprintf("the alias *%s", y.Value)+" stands for text elsewhere", "write the values out: aliases are not read")
		return nil
	case y.Anchor != "":
		b.wrong(path, b.src.place(y.Line, y.Column, len(y.Anchor)+1), fmt.Sprintf("the anchor &%s names text for use elsewhere", y.Anchor), "take it out: anchors are not read")
	case y.Style&yaml.TaggedStyle != 0:
		b.wrong(path, at, fmt.Sprintf("the tag %s changes the kind of the value", y.Tag), "take it out and write the value alone")
	}
	n := &node{at: at, origin: b.origin}
	mendCommas(y)
	switch y.Kind {
	case yaml.MappingNode:
		n.shape = tableShape
		b.table(n, y, path)
	case yaml.SequenceNode:
		n.shape = listShape
		for i, item := range y.Content {
			itemPath := fmt.Sprintf("%s.%d", path, i+1)
			if child := b.value(item, nil, nil, itemPath); child != nil {
				n.items = append(n.items, child)
			}
		}
	default:
		b.written(y, path)
		n.text, n.quoted = y.Value, y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	}
	return n
}

// written reports what must not stand in a text and was written by its number,
// such as "\e", so that the file itself does not show it.
func (b *builder) written(y *yaml.Node, path string) {
	if at := strings.IndexFunc(y.Value, bidi.Forbidden); at >= 0 {
		r, _ := utf8.DecodeRuneInString(y.Value[at:])
		b.faults.Add(forbidden(path, b.place(y), r))
	}
}

func (b *builder) table(n *node, y *yaml.Node, path string) {
	first := make(map[string]int, len(y.Content)/2)
	for i := 0; i+1 < len(y.Content); i += 2 {
		key, value := y.Content[i], y.Content[i+1]
		at := b.place(key)
		switch {
		case key.Tag == "!!merge":
			b.wrong(path, at, "the merge key << takes values from elsewhere", "write the values out: merge keys are not read")
			continue
		case key.Kind != yaml.ScalarNode || key.Tag == "!!null":
			b.wrong(path, at, "a key must be a single name", "write name: value")
			continue
		}
		b.written(key, path)
		childPath := join(path, key.Value)
		if line, twice := first[key.Value]; twice {
			b.wrong(childPath, at, fmt.Sprintf("%q stands twice, here and on line %d", key.Value, line), "keep one of the two")
			continue
		}
		first[key.Value] = key.Line
		var before *yaml.Node
		if i > 0 && y.Style&yaml.FlowStyle != 0 {
			before = y.Content[i-1]
		}
		if child := b.value(value, key, before, childPath); child != nil {
			n.pairs = append(n.pairs, pair{key: key.Value, at: at, value: child})
		}
	}
}

// swallowed finds a comment that was meant as text: "#2" and the like.
var swallowed = regexp.MustCompile(`^#[0-9]`)

// value builds the value of a key, or of an item of a list when key is nil, and
// sees that there is one and that no comment has swallowed a part of it. before is
// the value before the key where both stand in brackets.
func (b *builder) value(y, key, before *yaml.Node, path string) *node {
	comment := y.LineComment
	if comment == "" && key != nil {
		comment = key.LineComment
	}
	if y.Kind == yaml.ScalarNode && swallowed.MatchString(comment) {
		column := strings.Index(b.src.after(y.Line, 1), comment)
		at := b.place(y)
		if column >= 0 {
			at = b.src.place(y.Line, utf8.RuneCountInString(b.src.after(y.Line, 1)[:column])+1, utf8.RuneCountInString(comment))
		}
		b.wrong(path, at, fmt.Sprintf("%q is read as a comment, since a blank stands before the #", comment), `write No.2 for #2, or put the whole value in quotes`)
		return nil
	}
	if y.Kind != yaml.ScalarNode || y.Tag != "!!null" || y.Style&yaml.TaggedStyle != 0 {
		return b.build(y, path)
	}
	switch {
	case key == nil:
		b.wrong(path, b.place(y), "an item of the list is empty", "write a value, or take the item out")
	case y.Value != "":
		b.wrong(path, b.place(y), fmt.Sprintf("%q is no value", y.Value), "write a value, or leave the key out for the default")
	default:
		wrong, remedy := cutText(scrapOf(before), scrapOf(key))
		if wrong == "" {
			wrong, remedy = "the key has no value", "write a value, or leave the key out for the default"
		}
		b.wrong(path, b.place(key), wrong, remedy)
	}
	return nil
}

// place returns where a node stands and how long its text is.
func (b *builder) place(y *yaml.Node) fault.Place {
	rest := b.src.after(y.Line, y.Column)
	length := 1
	switch {
	case y.Kind == yaml.ScalarNode && y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0:
		length = utf8.RuneCountInString(rest[:closingQuote(rest)])
	case y.Kind == yaml.ScalarNode && y.Style&(yaml.LiteralStyle|yaml.FoldedStyle) == 0:
		length = utf8.RuneCountInString(y.Value)
	case y.Kind == yaml.AliasNode:
		length = utf8.RuneCountInString(y.Value) + 1
	}
	return b.src.place(y.Line, y.Column, length)
}

// closingQuote returns the index after the quote that closes a quoted text, or
// the whole length when it closes on another line.
func closingQuote(text string) int {
	if text == "" || text[0] != '\'' && text[0] != '"' {
		return len(text)
	}
	for i := 1; i < len(text); i++ {
		switch {
		case text[0] == '"' && text[i] == '\\':
			i++
		case text[i] != text[0]:
		case text[0] == '\'' && i+1 < len(text) && text[i+1] == '\'':
			i++
		default:
			return i + 1
		}
	}
	return len(text)
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// scrapOf returns a plain text, and nothing for what is none or stands in quotes.
func scrapOf(y *yaml.Node) scrap {
	if y == nil || y.Kind != yaml.ScalarNode || y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		return scrap{}
	}
	return scrap{text: y.Value, line: y.Line, column: y.Column}
}

// mendCommas puts what a comma cut off back to the value before it, see [joined]:
// a key without a value, or an item of a list of sights, each a table of one key.
func mendCommas(y *yaml.Node) {
	if y.Style&yaml.FlowStyle == 0 {
		return
	}
	step := map[yaml.Kind]int{yaml.MappingNode: 2, yaml.SequenceNode: 1}[y.Kind]
	var kept []*yaml.Node
	for i := 0; step > 0 && i+step <= len(y.Content); i += step {
		cut := y.Content[i]
		var before *yaml.Node
		switch n := len(kept); {
		case n == 0:
		case step == 2:
			if value := y.Content[i+1]; value.Kind == yaml.ScalarNode && value.Tag == "!!null" && value.Value == "" {
				before = kept[n-1]
			}
		case kept[n-1].Kind == yaml.MappingNode && len(kept[n-1].Content) == 2:
			before = kept[n-1].Content[1]
		}
		if whole, belongs := joined(scrapOf(before), scrapOf(cut)); belongs {
			before.Value, before.Tag = whole, "!!str"
			continue
		}
		kept = append(kept, y.Content[i:i+step]...)
	}
	if step > 0 {
		y.Content = kept
	}
}
