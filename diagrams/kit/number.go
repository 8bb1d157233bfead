package kit

import (
	"bytes"
	"encoding/xml"
	"math"
	"strconv"
	"strings"
)

// decimals is how finely coordinates are written: a hundredth of a millimetre.
const decimals = 2

// rounded returns v to the precision that is written, never a negative zero.
// A value that is not finite spoils the sheet and becomes 0.
func (s *Sheet) rounded(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > 1e6 {
		if s.err == nil {
			s.err = errNotANumber
		}
		return 0
	}
	v = math.Round(v*100) / 100
	if v == 0 {
		return 0
	}
	return v
}

// number writes v for an attribute, without trailing zeros.
func (s *Sheet) number(v float64) string { return string(s.appendNumber(nil, v)) }

// appendNumber appends v as [Sheet.number] writes it.
func (s *Sheet) appendNumber(to []byte, v float64) []byte {
	hundredths := int64(math.Round(s.rounded(v) * 100))
	if hundredths < 0 {
		to, hundredths = append(to, '-'), -hundredths
	}
	to = strconv.AppendInt(to, hundredths/100, 10)
	switch rest := hundredths % 100; {
	case rest == 0:
		return to
	case rest%10 == 0:
		return append(to, '.', byte('0'+rest/10))
	default:
		return append(to, '.', byte('0'+rest/10), byte('0'+rest%10))
	}
}

func (s *Sheet) appendPoint(to []byte, p Point) []byte {
	to = append(s.appendNumber(to, p.X), ' ')
	return s.appendNumber(to, p.Y)
}

// attribute writes one attribute with a space before it, its value escaped.
func attribute(name, value string) string { return " " + name + `="` + escape(value) + `"` }

func trimmed(attribute string) string { return strings.TrimPrefix(attribute, " ") }

// escape makes words safe in an element or a quoted attribute.
func escape(words string) string {
	var b bytes.Buffer
	// A bytes.Buffer never refuses a write.
	_ = xml.EscapeText(&b, []byte(words))
	return b.String()
}
