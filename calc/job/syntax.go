package job

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"pierbook/calc/fault"
)

// syntaxFaults says where a file cannot be read. The reader of the language
// names the line where it gave up, often one line off and without a column, so
// the lines are looked at here for the slips that people make. What it said is
// passed on only when none of them is found.
func syntaxFaults(src *source, message string) fault.List {
	near := lineOf(message)
	look := lookout{src: src}
	look.lines()
	found := look.from(near - 1)
	if len(found) == 0 {
		found = look.from(0)
	}
	var list fault.List
	if len(found) == 0 {
		at := src.start()
		if near > 0 {
			at = src.place(near, 1+indentOf(src.lines[min(near, len(src.lines))-1]), 1)
		}
		list.Add(fault.Fault{At: at, Wrong: "the file cannot be read near here: " + plainMessage(message), Remedy: "look at this line and its neighbours: quotes, brackets, blanks at the start of the line and after each colon"})
	}
	for _, f := range found {
		list.Add(f)
	}
	return list
}

var (
	lineNumber = regexp.MustCompile(`line ([0-9]+)`)
	yamlPrefix = regexp.MustCompile(`^yaml: (line [0-9]+: )?`)
)

func lineOf(message string) int {
	if m := lineNumber.FindStringSubmatch(message); m != nil {
		n, _ := strconv.Atoi(m[1])
		return n
	}
	return 1
}

func plainMessage(message string) string { return yamlPrefix.ReplaceAllString(message, "") }

// lookout walks the lines of a file that could not be read.
type lookout struct {
	src     *source
	line    int       // from 1
	open    []bracket // not closed yet
	indents []int     // of the blocks around the line
	block   int       // indent of the key whose text block goes on, or -1
	faults  []fault.Fault
}

type bracket struct {
	line, column int
	rune         byte
}

func (l *lookout) wrong(line, column, length int, wrong, remedy string) {
	l.faults = append(l.faults, fault.Fault{At: l.src.place(line, column, length), Wrong: wrong, Remedy: remedy})
}

// from returns what was found on a line or after it.
func (l *lookout) from(line int) []fault.Fault {
	return slices.DeleteFunc(slices.Clone(l.faults), func(f fault.Fault) bool { return f.At.Line < line })
}

func (l *lookout) lines() {
	l.block = -1
	for i, text := range l.src.lines {
		l.line = i + 1
		indent := indentOf(text)
		rest := text[indent:]
		switch {
		case rest == "" || rest[0] == '#':
			continue
		case l.block >= 0 && indent > l.block:
			continue
		case rest[0] == '\t':
			l.wrong(l.line, indent+1, 1, "a tab stands at the start of the line", "use blanks to set lines in: tabs are not read")
			continue
		}
		l.block = -1
		if len(l.open) == 0 {
			l.indent(indent)
			if key := keyWithoutBlank.FindStringSubmatch(rest); key != nil && !strings.Contains(rest, ": ") {
				l.wrong(l.line, indent+utf8.RuneCountInString(key[1])+1, 1, "no blank follows the colon", fmt.Sprintf("write %s: %s", strings.TrimSpace(strings.TrimPrefix(key[1], "- ")), key[2]))
			}
		}
		l.scan(text, indent)
	}
	if len(l.faults) > 0 {
		return // a bracket may be open because of what was found
	}
	for _, b := range l.open {
		l.wrong(b.line, b.column, 1, fmt.Sprintf("the bracket %c is never closed", b.rune), fmt.Sprintf("close it with %c at the end of the list or map", closer(b.rune)))
	}
}

var keyWithoutBlank = regexp.MustCompile(`^((?:- )*[A-Za-z_][A-Za-z0-9_.-]*):([^ '"/].*)$`)

func indentOf(text string) int { return len(text) - len(strings.TrimLeft(text, " ")) }

func closer(open byte) byte { return map[byte]byte{'[': ']', '{': '}'}[open] }

// indent reports a line that is set in by less than the block before it and
// more than the block around that.
func (l *lookout) indent(indent int) {
	for len(l.indents) > 0 && l.indents[len(l.indents)-1] > indent {
		l.indents = l.indents[:len(l.indents)-1]
		if len(l.indents) == 0 || l.indents[len(l.indents)-1] < indent {
			l.wrong(l.line, indent+1, 1, "the line is set in by a number of blanks that no line above has", "line it up with the keys or hyphens that it belongs to")
			break
		}
	}
	if len(l.indents) == 0 || l.indents[len(l.indents)-1] < indent {
		l.indents = append(l.indents, indent)
	}
}

// scan goes through the values of one line: quoted texts, brackets, plain texts.
func (l *lookout) scan(text string, at int) {
	start := true // a value may begin here
	for at < len(text) {
		c := text[at]
		switch {
		case c == ' ':
		case c == '#' && (at == 0 || text[at-1] == ' '):
			l.comment(text, at)
			return
		case start && (c == '\'' || c == '"'):
			end, closed := l.quote(text, at)
			if !closed {
				return
			}
			at, start = end, false
			continue
		case c == '[' || c == '{':
			if start {
				l.open = append(l.open, bracket{l.line, column(text, at), c})
				at++
				continue
			}
		case (c == ']' || c == '}') && len(l.open) > 0:
			l.close(text, at)
			start = false
		case c == ',' && len(l.open) > 0:
			start = true
		case c == '-' && start && strings.HasPrefix(text[at:], "- "):
		case start && strings.IndexByte("@`%&*!|>", c) >= 0:
			if c == '|' || c == '>' {
				l.block = indentOf(text)
				return
			}
			l.wrong(l.line, column(text, at), 1, fmt.Sprintf("a value cannot begin with %c", c), "take it out, or put the value in quotes")
			return
		case start:
			at = l.plain(text, at)
			start = true
			continue
		}
		at++
	}
}

func column(text string, at int) int { return utf8.RuneCountInString(text[:at]) + 1 }

// quote looks at a quoted text: after its closing quote only a comma, a bracket,
// a colon or the end may follow.
func (l *lookout) quote(text string, at int) (end int, closed bool) {
	mark := text[at]
	end = at + closingQuote(text[at:])
	if end == len(text) && (end == at+1 || text[end-1] != mark) {
		l.wrong(l.line, column(text, at), 1, fmt.Sprintf("the quote %c is never closed on this line", mark), "close it, or leave the quotes out: lengths need none")
		return end, false
	}
	rest := strings.TrimLeft(text[end:], " ")
	after := len(text) - len(rest)
	if rest == "" || rest[0] == ',' && len(l.open) > 0 || rest[0] == ':' || strings.IndexByte("]}", rest[0]) >= 0 && len(l.open) > 0 || rest[0] == '#' && after > end {
		return end, true
	}
	what := "foot mark"
	if mark == '"' {
		what = "inch mark"
	}
	l.wrong(l.line, column(text, after), utf8.RuneCountInString(strings.TrimRight(rest, " ")), fmt.Sprintf("text follows the closing quote %c", mark),
		fmt.Sprintf("is that quote a %s? Leave the quotes around the length out: 5' 6 1/2\" needs none", what))
	return end, false
}

func (l *lookout) close(text string, at int) {
	last := l.open[len(l.open)-1]
	if closer(last.rune) != text[at] {
		l.wrong(l.line, column(text, at), 1, fmt.Sprintf("%c closes the bracket %c of line %d", text[at], last.rune, last.line), fmt.Sprintf("close it with %c", closer(last.rune)))
	}
	l.open = l.open[:len(l.open)-1]
}

// plain goes over a plain text up to where the next value may begin, and
// returns that place. A second ": " in the value of a key is a slip.
func (l *lookout) plain(text string, at int) int {
	colons := 0
	for at < len(text) {
		c := text[at]
		switch {
		case c == '#' && text[at-1] == ' ':
			l.comment(text, at)
			return len(text)
		case len(l.open) > 0 && strings.IndexByte(",]}", c) >= 0:
			return at
		case c == ':' && (at+1 == len(text) || text[at+1] == ' '):
			if colons++; colons == 2 {
				l.wrong(l.line, column(text, at), 1, "a colon and a blank stand inside a value", "put the whole value in quotes, or take the colon out")
				return len(text)
			}
			next := strings.TrimLeft(text[at+1:], " ")
			if next == "" || strings.IndexByte("'\"[{@`%&*!|>", next[0]) >= 0 {
				return len(text) - len(next)
			}
		}
		at++
	}
	return at
}

// comment reports a comment that swallowed a grade mark.
func (l *lookout) comment(text string, at int) {
	if swallowed.MatchString(text[at:]) {
		l.wrong(l.line, column(text, at), utf8.RuneCountInString(text[at:]), fmt.Sprintf("%q is read as a comment, since a blank stands before the #", text[at:]), "write No.2 for #2, or put the whole value in quotes")
	}
}
