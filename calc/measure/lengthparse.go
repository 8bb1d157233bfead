package measure

import (
	"fmt"
	"math"
	"strings"
)

// ParseError says why a text is not the quantity that was wanted. Both texts
// are ready for a fault.
type ParseError struct {
	Wrong  string // `"15 o.c" is not a length`
	Remedy string // what would be right
}

// Error returns what is wrong.
func (e *ParseError) Error() string { return e.Wrong }

const lengthRemedy = `write a length with its unit, such as 16" or 400 mm`

var lengthUnits = map[string]Length{
	"'": Foot, "ft": Foot, "ft.": Foot, "foot": Foot, "feet": Foot,
	`"`: Inch, "in": Inch, "in.": Inch, "inch": Inch, "inches": Inch,
	"mm": Millimetre, "cm": 10 * Millimetre, "m": Metre,
}

// ParseLength reads an exact length: 16', 12' 3 1/2", 12'-3 1/2",
// 12 ft 3-1/2 in, 147.5 in, 4.19 ft, 3740 mm, 3.74 m, 120 cm. Primes, curly
// quotes, ready made fractions and a minus sign are read too. A number without
// a unit is an error, except 0. What is not a whole number of nanometres, such
// as 1/3 in, goes to the nearest. The error is a [*ParseError].
func ParseLength(text string) (Length, error) { return ParseLengthIn(text, 0) }

// ParseLengthIn reads as [ParseLength] and takes a bare number in the unit
// bare; 0 allows none.
func ParseLengthIn(text string, bare Length) (Length, error) {
	s := scanner{rest: plain(text)}
	negative := strings.HasPrefix(s.rest, "-")
	if negative {
		s.rest = s.rest[1:]
		s.blanks()
	}
	first, unit, err := s.lengthPart(text, bare)
	if err != nil {
		return 0, err
	}
	total := first
	if s.rest != "" && unit == Foot {
		inches, err := s.inchesAfterFeet(text, first)
		if err != nil {
			return 0, err
		}
		total += inches
	}
	if s.rest != "" {
		return 0, notALength(text)
	}
	if total > math.MaxInt64 {
		return 0, tooLong(text)
	}
	if negative {
		return -Length(total), nil
	}
	return Length(total), nil
}

// lengthPart takes one number with its unit, in nanometres.
func (s *scanner) lengthPart(text string, bare Length) (uint64, Length, error) {
	n, ok := s.number()
	if !ok {
		return 0, 0, notALength(text)
	}
	s.blanks()
	word := s.word()
	unit, known := lengthUnits[word]
	switch {
	case word == "" && s.rest == "" && n.numerator == 0:
		return 0, Millimetre, nil
	case word == "" && s.rest == "" && bare > 0:
		unit = bare
	case word == "" && s.rest == "":
		return 0, 0, &ParseError{fmt.Sprintf("%q has no unit", text), fmt.Sprintf(`write the unit, such as %s" or %s mm`, strings.TrimSpace(text), strings.TrimSpace(text))}
	case strings.HasPrefix(word, ","):
		return 0, 0, &ParseError{fmt.Sprintf("%q has a comma in a number", text), "write a decimal point, and no mark between thousands"}
	case !known:
		return 0, 0, notALength(text)
	}
	value, ok := n.times(uint64(unit))
	if !ok {
		return 0, 0, tooLong(text)
	}
	if unit == Foot && n.mixed && strings.Trim(s.rest, " ") != "" {
		return 0, 0, &ParseError{fmt.Sprintf("%q has a fraction of a foot and inches too", text), `write whole feet and inches, such as 4' 3 1/2"`}
	}
	s.blanks()
	return value, unit, nil
}

// inchesAfterFeet takes what follows whole feet: a hyphen perhaps, and inches
// below 12.
func (s *scanner) inchesAfterFeet(text string, feet uint64) (uint64, error) {
	s.rest = strings.TrimPrefix(s.rest, "-")
	s.blanks()
	ahead := scanner{rest: s.rest}
	if _, ok := ahead.number(); ok && strings.Trim(ahead.rest, " ") == "" {
		return 0, &ParseError{fmt.Sprintf("%q has no unit after the feet", text), fmt.Sprintf(`end it with an inch mark: %s"`, strings.TrimSpace(text))}
	}
	inches, unit, err := s.lengthPart(text, 0)
	if err != nil {
		return 0, err
	}
	if unit != Inch {
		return 0, notALength(text)
	}
	if inches >= uint64(Foot) {
		return 0, &ParseError{fmt.Sprintf("%q has 12 inches or more beside the feet", text), "carry them over to the feet, or write inches alone"}
	}
	return inches, nil
}

func notALength(text string) error {
	switch trimmed := strings.TrimSpace(text); {
	case strings.Contains(trimmed, ";"):
		return &ParseError{fmt.Sprintf("%q has a semicolon in it", text), "take it out: two lengths stand on a line each, or in brackets with a comma between them"}
	case strings.HasSuffix(trimmed, ","):
		return &ParseError{fmt.Sprintf("%q ends in a comma", text), "take the comma out: it parts values only within brackets"}
	case strings.Contains(trimmed, ","):
		return &ParseError{fmt.Sprintf("%q has a comma in it", text), `write a decimal point, or feet and inches without a comma: 4' 3 1/2"`}
	}
	return &ParseError{fmt.Sprintf("%q is not a length", text), lengthRemedy}
}

func tooLong(text string) error {
	return &ParseError{fmt.Sprintf("%q is too long to be a length here", text), lengthRemedy}
}
