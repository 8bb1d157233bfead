// Package bidi keeps text that somebody else wrote from turning around or
// repainting what stands beside it. Names in scripts that run from right to left
// are welcome; they are put between two signs that set them apart from their
// surroundings wherever they are printed, on paper, in a drawing or on a
// terminal.
//
// Source: Unicode Standard Annex #9, Unicode Bidirectional Algorithm, 2.4
// (explicit directional isolates) and 2.5 (terminating them).
package bidi

import "strings"

// The signs that set a text apart: first strong isolate and pop directional
// isolate.
const (
	apart = '\u2068'
	end   = '\u2069'
)

// Forbidden says whether a sign has no business in a text: control characters
// but line ends and tabs, signs that turn the direction of what follows them or
// end what sets a text apart, and what is no character.
func Forbidden(r rune) bool {
	switch {
	case r == '\n', r == '\t', r == '\r':
		return false
	case r < ' ', 0x7f <= r && r < 0xa0, r == 0xfeff, 0xfff9 <= r && r <= 0xfffb, 0xfdd0 <= r && r <= 0xfdef, r&0xfffe == 0xfffe:
		return true
	}
	return Turns(r)
}

// Turns says whether a sign changes the direction of the text after it.
func Turns(r rune) bool {
	return 0x202a <= r && r <= 0x202e || 0x2066 <= r && r <= 0x206f
}

// leftward says whether a letter belongs to a script that runs from right to
// left: the blocks whose unassigned characters are of class R or AL.
//
// Source: Unicode Character Database, DerivedBidiClass.txt, default values.
func leftward(r rune) bool {
	return 0x0590 <= r && r <= 0x08ff || 0xfb1d <= r && r <= 0xfdff || 0xfe70 <= r && r <= 0xfefe || 0x10800 <= r && r <= 0x10fff || 0x1e800 <= r && r <= 0x1efff ||
		r == 0x200f
}

// Isolated returns a text that is set apart from its surroundings when anything
// in it runs from right to left, and else the text itself.
func Isolated(text string) string {
	if strings.ContainsRune(text, apart) || strings.IndexFunc(text, leftward) < 0 {
		return text
	}
	return string(apart) + text + string(end)
}

// Bare returns the text without the signs that [Isolated] adds.
func Bare(text string) string { return strings.Trim(text, string(apart)+string(end)) }

// Closed ends what a cut has left open.
func Closed(text string) string {
	open := strings.Count(text, string(apart)) - strings.Count(text, string(end))
	return text + strings.Repeat(string(end), max(0, open))
}

// Shown returns the text as it may go to a terminal: forbidden signs are made
// visible, and every stretch that runs from right to left is set apart.
func Shown(text string) string {
	if strings.IndexFunc(text, func(r rune) bool { return Forbidden(r) || r == '\r' || leftward(r) }) < 0 {
		return text
	}
	var b strings.Builder
	rest := []rune(text)
	for i := 0; i < len(rest); i++ {
		length := 0
		if rest[i] == apart {
			length = isolate(rest[i:])
		}
		switch {
		case length > 0:
			b.WriteString(string(rest[i : i+length]))
			i += length - 1
		case leftward(rest[i]):
			length = stretch(rest[i:])
			b.WriteString(string(apart) + string(rest[i:i+length]) + string(end))
			i += length - 1
		case Forbidden(rest[i]) || rest[i] == '\r':
			b.WriteRune('\uFFFD')
		default:
			b.WriteRune(rest[i])
		}
	}
	return b.String()
}

// isolate returns the length of the text set apart that begins here, or 0 when
// it does not end properly on this line.
func isolate(text []rune) int {
	for i, r := range text[1:] {
		switch {
		case r == end:
			return i + 2
		case Forbidden(r) || r == '\n' || r == '\r':
			return 0
		}
	}
	return 0
}

// stretch returns the length of what runs from right to left here: up to the
// last such letter before a letter of another script or the end of the line.
func stretch(text []rune) int {
	last := 0
	for i, r := range text {
		switch {
		case leftward(r):
			last = i
		case 'a' <= r && r <= 'z', 'A' <= r && r <= 'Z', r >= 0xc0, r == '\n', r == '\r', r == ':', Forbidden(r):
			return last + 1
		}
	}
	return last + 1
}
