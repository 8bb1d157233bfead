package job

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"pierbook/calc/fault"
)

// lookout walks the lines of a file that could not be read, and notes slips.
type lookout struct {
	src     *source
	line    int       // from 1
	open    []bracket // not closed yet
	indents []int     // of the blocks around the line
	block   int       // indent of the key whose text block goes on, or -1
	whole   bool      // the line before was a key with its value
	faults  []fault.Fault
}

type bracket struct {
	line, column int
	rune         byte
}

func (l *lookout) wrong(column, length int, wrong, remedy string) {
	l.faults = append(l.faults, fault.Fault{At: l.src.place(l.line, column, length), Wrong: wrong, Remedy: remedy})
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
		case rest == "" || rest[0] == '#' || strings.HasPrefix(text, "---") || strings.HasPrefix(text, "..."):
			continue
		case l.block >= 0 && indent > l.block:
			continue
		case rest[0] == '\t':
			l.wrong(indent+1, 1, "a tab stands at the start of the line", "use blanks to set lines in: tabs are not read")
			continue
		}
		l.block = -1
		if len(l.open) == 0 {
			l.begin(rest, indent)
		}
		l.scan(text, indent)
	}
	if len(l.faults) > 0 {
		return // a bracket may be open because of what was found
	}
	for _, b := range l.open {
		l.line = b.line
		l.wrong(b.column, 1, fmt.Sprintf("the bracket %c is never closed", b.rune), fmt.Sprintf("close it with %c at the end of the list or map", closer(b.rune)))
	}
}

var (
	keyWithoutBlank = regexp.MustCompile(`^((?:- )*[A-Za-z_][A-Za-z0-9_.-]*):([^ '"/].*)$`)
	keyWithValue    = regexp.MustCompile(`^(?:- )*[^ '"\[{#-][^'"\[{#]*: +[^ |>&#]`)
	keyOrItem       = regexp.MustCompile(`^-( |$)|:( |$)`)
)

func indentOf(text string) int { return len(text) - len(strings.TrimLeft(text, " ")) }

func closer(open byte) byte { return map[byte]byte{'[': ']', '{': '}'}[open] }

// begin looks at the beginning of a line that is not inside brackets.
func (l *lookout) begin(rest string, indent int) {
	isKey := keyOrItem.MatchString(rest)
	last := -1
	if len(l.indents) > 0 {
		last = l.indents[len(l.indents)-1]
	}
	key := keyWithoutBlank.FindStringSubmatch(rest)
	switch {
	case key != nil && !strings.Contains(rest, ": "):
		l.wrong(indent+utf8.RuneCountInString(key[1])+1, 1, "no blank follows the colon", fmt.Sprintf("write %s: %s", strings.TrimLeft(key[1], "- "), key[2]))
	case !isKey && (indent <= last || last < 0):
		l.wrong(indent+1, utf8.RuneCountInString(strings.TrimRight(rest, " ")), "the line has no key with a colon", "write name: value")
	case isKey && l.whole && indent > last:
		l.wrong(indent+1, 1, "the line is set in under a line that has its value already", "line it up with the key above")
	}
	if isKey {
		l.indent(indent, rest)
		l.whole = keyWithValue.MatchString(rest)
	}
}

// indent reports a line that is set in by less than the block before it and
// more than the block around that, and keeps the blocks around the line. What
// follows a hyphen is a block of its own.
func (l *lookout) indent(indent int, rest string) {
	for len(l.indents) > 0 && l.indents[len(l.indents)-1] > indent {
		l.indents = l.indents[:len(l.indents)-1]
		if len(l.indents) == 0 || l.indents[len(l.indents)-1] < indent {
			l.wrong(indent+1, 1, "the line is set in by a number of blanks that no line above has", "line it up with the keys or hyphens that it belongs to")
			break
		}
	}
	for {
		if len(l.indents) == 0 || l.indents[len(l.indents)-1] < indent {
			l.indents = append(l.indents, indent)
		}
		item, isItem := strings.CutPrefix(rest, "- ")
		if !isItem || !strings.Contains(item, ":") {
			return
		}
		rest = strings.TrimLeft(item, " ")
		indent += 2 + len(item) - len(rest)
	}
}

// scan goes through the values of one line: quoted texts, brackets, plain texts.
func (l *lookout) scan(text string, at int) {
	start := true // a value may begin here
	for at < len(text) {
		switch c := text[at]; {
		case c == ' ':
		case c == '#' && (at == 0 || text[at-1] == ' '):
			l.comment(text, at)
			return
		case start && c != '-' && c != ',' && c != ':' || start && c == '-' && !strings.HasPrefix(text[at:], "- "):
			at, start = l.value(text, at)
			continue
		case (c == ']' || c == '}') && len(l.open) > 0:
			if !l.close(text, at) {
				return
			}
		case (c == ',' || c == ':') && len(l.open) > 0:
			start = true
		}
		at++
	}
}

// value looks at what begins at a place, and returns where to go on and whether
// a value may begin there.
func (l *lookout) value(text string, at int) (next int, start bool) {
	switch c := text[at]; {
	case c == '\'' || c == '"':
		end, closed := l.quote(text, at)
		if !closed {
			end = len(text)
		}
		return end, false
	case c == '[' || c == '{':
		l.open = append(l.open, bracket{l.line, column(text, at), c})
		return at + 1, true
	case (c == ']' || c == '}') && len(l.open) > 0:
		if !l.close(text, at) {
			return len(text), false
		}
		return at + 1, false
	case c == '|' || c == '>':
		l.block = indentOf(text)
		return len(text), false
	case strings.IndexByte("@`%*!", c) >= 0:
		l.wrong(column(text, at), 1, fmt.Sprintf("a value cannot begin with %c", c), "take it out, or put the value in quotes")
		return len(text), false
	}
	return l.plain(text, at), true
}

func column(text string, at int) int { return utf8.RuneCountInString(text[:at]) + 1 }

// quote looks at a quoted text: after its closing quote only a comma, a bracket,
// a colon or the end may follow.
func (l *lookout) quote(text string, at int) (end int, closed bool) {
	mark := text[at]
	end = at + closingQuote(text[at:])
	if end == len(text) && (end == at+1 || text[end-1] != mark) {
		l.wrong(column(text, at), 1, fmt.Sprintf("the quote %c is never closed on this line", mark), "close it, or leave the quotes out: lengths need none")
		return end, false
	}
	rest := strings.TrimLeft(text[end:], " ")
	after := len(text) - len(rest)
	inside := len(l.open) > 0
	if rest == "" || rest[0] == ':' || inside && strings.IndexByte(",]}", rest[0]) >= 0 || rest[0] == '#' && after > end {
		return end, true
	}
	remedy := fmt.Sprintf("leave the quotes round the whole text out, or write each %c inside it twice", mark)
	if mark == '"' {
		remedy = `leave the quotes round the whole text out, or write each " inside it as \"`
	}
	if strings.ContainsAny(text[at:end], "0123456789") {
		remedy = `is that quote a foot or inch mark? Leave the quotes round the length out: 5' 6 1/2" needs none`
	}
	l.wrong(column(text, after), utf8.RuneCountInString(strings.TrimRight(rest, " ")), fmt.Sprintf("text follows the closing quote %c", mark), remedy)
	return end, false
}

// close takes one closing bracket, and says whether the line may go on.
func (l *lookout) close(text string, at int) bool {
	last := l.open[len(l.open)-1]
	l.open = l.open[:len(l.open)-1]
	if closer(last.rune) != text[at] {
		l.wrong(column(text, at), 1, fmt.Sprintf("%c closes the bracket %c of line %d", text[at], last.rune, last.line), fmt.Sprintf("close it with %c", closer(last.rune)))
	}
	rest := strings.TrimLeft(text[at+1:], " ")
	if len(l.open) > 0 || rest == "" || rest[0] == '#' {
		return true
	}
	l.wrong(column(text, len(text)-len(rest)), utf8.RuneCountInString(strings.TrimRight(rest, " ")), "text follows the last closing bracket", "take it out, or look for a bracket too many")
	return false
}

// plain goes over a plain text up to where the next value may begin, and
// returns that place. A second ": " in the value of a key is a slip.
func (l *lookout) plain(text string, at int) int {
	colons, first := 0, at
	for at < len(text) {
		c := text[at]
		switch {
		case c == '#' && text[at-1] == ' ':
			l.comment(text, at)
			return len(text)
		case len(l.open) > 0 && strings.IndexByte(",]}", c) >= 0:
			return at
		case c == ':' && (at+1 == len(text) || text[at+1] == ' '):
			next := strings.TrimLeft(text[at+1:], " ")
			after := len(text) - len(next)
			if colons++; colons == 2 {
				if semicolon := strings.LastIndexByte(text[first:at], ';'); semicolon >= 0 {
					remedy := "write each on a line of its own"
					if len(l.open) > 0 {
						remedy = "within brackets a comma parts two values: write a comma"
					}
					l.wrong(column(text, first+semicolon), 1, "a semicolon stands between two values", remedy)
					return len(text)
				}
				l.wrong(column(text, at), 1, "a colon and a blank stand inside a value", "put the whole value in quotes, or take the colon out")
				return len(text)
			}
			if strings.HasPrefix(next, "- ") {
				l.wrong(column(text, after), 1, "a list cannot begin on the line of its key like this", "write [a, b], or each item on a line of its own")
				return len(text)
			}
			if next == "" || strings.IndexByte("'\"[{@`%*!|>", next[0]) >= 0 {
				return after
			}
		}
		at++
	}
	return at
}

// comment reports a comment that swallowed a grade mark.
func (l *lookout) comment(text string, at int) {
	if swallowed.MatchString(text[at:]) {
		l.wrong(column(text, at), utf8.RuneCountInString(text[at:]), fmt.Sprintf("%q is read as a comment, since a blank stands before the #", text[at:]), "write No.2 for #2, or put the whole value in quotes")
	}
}
