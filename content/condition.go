package content

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// condition decides whether a part of a page is bound: {when KEY},
// {unless KEY}, {when KEY is WORD}, {unless KEY is WORD}. The zero condition
// is none at all.
type condition struct {
	key    string
	word   string // the printed word asked for, or empty
	unless bool
	at     span
}

func (c condition) given() bool { return c.key != "" }

// met says whether a figure, that of the condition's key, meets it.
func (c condition) met(f figure.Figure, style measure.Style) bool {
	yes := f.Holds()
	if c.word != "" {
		yes = equalWords(f.Text(style), c.word)
	}
	return yes != c.unless
}

// isKey says whether s has the shape of a figure's key: words of letters,
// digits, underscores and hyphens, with a dot between two of them.
func isKey(s string) bool {
	afterDot := true
	for i := range len(s) {
		switch c := s[i]; {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '_', c == '-':
			afterDot = false
		case c == '.' && !afterDot:
			afterDot = true
		default:
			return false
		}
	}
	return !afterDot
}

// isCondition says whether the text in a pair of braces is meant as one.
func isCondition(inside string) bool {
	return inside == "when" || inside == "unless" || strings.HasPrefix(inside, "when ") || strings.HasPrefix(inside, "unless ")
}

// readCondition reads the text in a pair of braces that isCondition.
func readCondition(inside string, at span) (condition, bool) {
	word, rest, _ := strings.Cut(inside, " ")
	key, asked, compares := strings.Cut(strings.TrimSpace(rest), " is ")
	c := condition{key: strings.TrimSpace(key), word: strings.TrimSpace(asked), unless: word == "unless", at: at}
	return c, isKey(c.key) && (!compares || c.word != "")
}

// condition reads the text in a pair of braces that isCondition and reports one
// that cannot be understood.
func (r *recorder) condition(inside string, at span) condition {
	c, good := readCondition(inside, at)
	if !good {
		r.wrong(at, fmt.Sprintf("{%s} is not a condition", inside), "write {when KEY}, {unless KEY} or {when KEY is WORD}")
	}
	return c
}

// equalWords compares printed words as a reader would: capitals and the kind of
// blank between words do not matter, nor underscores in their place.
func equalWords(a, b string) bool {
	same := strings.NewReplacer("_", " ", "\u00a0", " ")
	return strings.EqualFold(same.Replace(a), same.Replace(b))
}
