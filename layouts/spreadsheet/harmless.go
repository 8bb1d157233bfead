package spreadsheet

import (
	"strings"
	"unicode"
)

// starters begin a formula, or a call into another program, in one spreadsheet
// or another: = + - @ and | as typed, their full-width and other look-alikes,
// which some programs fold to the plain sign, and % of old ones.
const starters = "=+-@|%" + "＝＋－＠｜％" + "﹦﹢﹣﹫" + "⁼⁺⁻₌₊₋" + "−‐‑‒–—"

// words makes text harmless: it stands on one line without signs that cannot be
// seen, and where its first sign would start a formula there is an apostrophe
// before it. Blanks and quotes before that sign do not count, since programs
// that trim them, or take a leading apostrophe for a sign of text and drop it,
// would come to it.
func words(s string) string {
	s = oneLine(s)
	bare := strings.TrimLeftFunc(s, skipped)
	if first := firstRune(bare); bare != "" && strings.ContainsRune(starters, first) {
		return "'" + s
	}
	return s
}

func firstRune(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}

// skipped signs may stand before the one that counts.
func skipped(r rune) bool {
	return unicode.IsSpace(r) || strings.ContainsRune("'\"`‘’‚‛“”„", r)
}

// oneLine turns every run of blanks, tabs and line ends into one blank and drops
// control signs and signs without width, so that no part of a text can stand at
// the start of a line or a cell of its own.
func oneLine(s string) string {
	var b strings.Builder
	blank := false
	for _, r := range s {
		switch {
		case r == '\u00a0':
			b.WriteRune(r)
			blank = false
		case unicode.IsSpace(r):
			blank = true
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
		default:
			if blank && b.Len() > 0 {
				b.WriteByte(' ')
			}
			b.WriteRune(r)
			blank = false
		}
	}
	return b.String()
}
