package job

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Within brackets a comma parts values, so that a decimal comma, a comma in a text
// and one before what a hole ends in each leave a key without a value behind.

// scrap is a plain text within brackets, and where it stands.
type scrap struct {
	text         string
	line, column int
}

// joined returns the value before a comma with what the comma cut off it, where
// that belongs to it: the second half of a number, which is then told as a number
// with a comma, and what was found after the depth of a hole, as it stands on paper.
func joined(before, cut scrap) (string, bool) {
	if before.text == "" || cut.text == "" || before.line != cut.line {
		return "", false
	}
	last := before.text[len(before.text)-1]
	next := before.column + utf8.RuneCountInString(before.text) + 1
	switch {
	case digit(last) && digit(cut.text[0]) && cut.column == next:
		return before.text + "," + cut.text, true
	case digit(before.text[0]) && slices.Contains(foundWords, strings.ToLower(cut.text)):
		return before.text + " " + cut.text, true
	}
	return "", false
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

// cutText says what to do about the end of a text that a comma cut off: a key
// with blanks, or one after words. Otherwise it returns "".
func cutText(before, key scrap) (wrong, remedy string) {
	if before.text == "" || before.line != key.line {
		return "", ""
	}
	isText := strings.Contains(before.text, " ") && !digit(before.text[0])
	if !isText && !strings.Contains(key.text, " ") || strings.IndexFunc(before.text, unicode.IsLetter) < 0 {
		return "", ""
	}
	return fmt.Sprintf("%q stands alone after a comma", key.text), fmt.Sprintf("a comma parts values here: put a text that holds one in quotes, %q", before.text+", "+key.text)
}
