package measure

import (
	"math"
	"math/bits"
	"strings"
)

// number is an exact non-negative number, read without a float.
type number struct {
	numerator, denominator uint64
	mixed                  bool // written with a fraction or a decimal point
}

func (n number) float() float64 { return float64(n.numerator) / float64(n.denominator) }

// times returns n·unit to the nearest whole, halves up, and whether the result
// stays inside an int64.
func (n number) times(unit uint64) (uint64, bool) {
	hi, lo := bits.Mul64(n.numerator, unit)
	if hi >= n.denominator {
		return 0, false
	}
	quotient, rest := bits.Div64(hi, lo, n.denominator)
	if rest >= n.denominator-rest {
		quotient++
	}
	return quotient, quotient <= math.MaxInt64
}

// Limits that keep every product of a number inside 64 bits: 19 digits fill
// a uint64, and a fraction of an inch finer than 1/1024 is a slip.
const (
	mostDigits      = 19
	mostDenominator = 1024
)

// scanner reads numbers and words from the plain form of a text.
type scanner struct {
	rest string
}

func (s *scanner) blanks() { s.rest = strings.TrimLeft(s.rest, " ") }

// digits takes a run of digits; ok is false when there is none or it is too long.
func (s *scanner) digits() (value uint64, length int, ok bool) {
	for length < len(s.rest) && isDigit(s.rest[length]) {
		length++
	}
	if length == 0 || length > mostDigits {
		return 0, length, false
	}
	for _, c := range []byte(s.rest[:length]) {
		value = value*10 + uint64(c-'0')
	}
	s.rest = s.rest[length:]
	return value, length, true
}

// number takes 12, 0.5, .5, 3/4, 3 3/4 or 3-3/4.
func (s *scanner) number() (number, bool) {
	if strings.HasPrefix(s.rest, ".") {
		return s.decimal(0, 0)
	}
	whole, length, ok := s.digits()
	if !ok {
		return number{}, false
	}
	switch {
	case strings.HasPrefix(s.rest, "."):
		return s.decimal(whole, length)
	case strings.HasPrefix(s.rest, "/"):
		return s.fraction(0, whole)
	}
	return s.mixed(whole)
}

// decimal takes the point and the digits after it.
func (s *scanner) decimal(whole uint64, wholeDigits int) (number, bool) {
	s.rest = s.rest[1:]
	part, length, ok := s.digits()
	if !ok || wholeDigits+length > mostDigits {
		return number{}, false
	}
	scale := uint64(1)
	for range length {
		scale *= 10
	}
	return number{numerator: whole*scale + part, denominator: scale, mixed: true}, true
}

// fraction takes the slash and the denominator.
func (s *scanner) fraction(whole, numerator uint64) (number, bool) {
	s.rest = s.rest[1:]
	denominator, _, ok := s.digits()
	if !ok || denominator == 0 || denominator > mostDenominator || numerator > 1e6 || whole > 1e12 {
		return number{}, false
	}
	return number{numerator: whole*denominator + numerator, denominator: denominator, mixed: true}, true
}

// mixed takes the fraction that follows a whole number after blanks or one
// hyphen, if there is one.
func (s *scanner) mixed(whole uint64) (number, bool) {
	ahead := scanner{rest: s.rest}
	if strings.HasPrefix(ahead.rest, "-") {
		ahead.rest = ahead.rest[1:]
	} else {
		ahead.blanks()
	}
	numerator, _, ok := ahead.digits()
	if !ok || len(ahead.rest) == 0 || ahead.rest[0] != '/' || len(ahead.rest) == len(s.rest) {
		return number{numerator: whole, denominator: 1}, true
	}
	n, ok := ahead.fraction(whole, numerator)
	if !ok || numerator >= n.denominator {
		return number{}, false
	}
	*s = ahead
	return n, true
}

// word takes everything up to the next digit, point, hyphen, minus or blank.
// A foot or inch mark is a word of its own.
func (s *scanner) word() string {
	if s.rest == "" {
		return ""
	}
	if s.rest[0] == '\'' || s.rest[0] == '"' {
		word := s.rest[:1]
		s.rest = s.rest[1:]
		return word
	}
	end := strings.IndexAny(s.rest, " 0123456789-'\"")
	if end < 0 {
		end = len(s.rest)
	}
	word := s.rest[:end]
	s.rest = s.rest[end:]
	return word
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

var vulgarFractions = map[rune]string{
	'¼': "1/4", '½': "1/2", '¾': "3/4", '⅐': "1/7", '⅑': "1/9", '⅒': "1/10", '⅓': "1/3", '⅔': "2/3",
	'⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
	'⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8", '↉': "0/3",
}

// plain brings the characters that people and word processors use for one
// thing to one: primes and curly quotes, minus signs, no-break spaces, ready
// made fractions. Letters become lower case.
func plain(text string) string {
	var b strings.Builder
	b.Grow(len(text) + 4)
	digit := false // the last character was one
	for _, r := range text {
		fraction, vulgar := vulgarFractions[r]
		switch {
		case vulgar:
			if digit {
				b.WriteByte(' ')
			}
			b.WriteString(fraction)
		case 'A' <= r && r <= 'Z':
			b.WriteRune(r + 'a' - 'A')
		default:
			b.WriteRune(plainRune(r))
		}
		digit = vulgar || '0' <= r && r <= '9'
	}
	return strings.Trim(strings.ReplaceAll(b.String(), "''", `"`), " ")
}

func plainRune(r rune) rune {
	switch r {
	case '\u00a0', '\u2007', '\u2009', '\u202f', '\t':
		return ' '
	case '′', '’', '‘', 'ʹ', '`', '´':
		return '\''
	case '″', '”', '“', 'ʺ', '„':
		return '"'
	case '−', '–', '‐', '‑':
		return '-'
	case '⁄', '∕':
		return '/'
	}
	return r
}
