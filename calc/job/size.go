package job

import (
	"fmt"
	"regexp"
	"strings"

	"pierbook/calc/measure"
)

// dressed are the dry dressed sizes of nominal lumber, in sixteenths of an
// inch. Design uses the dry size; unseasoned lumber is larger.
//
// Source: American Softwood Lumber Standard PS 20-15 (2015), minimum dressed
// sizes. 6x8 and 8x8 are the dry sizes, 3/4 in under nominal.
var dressed = []struct {
	nominal      string
	width, depth measure.Length // in sixteenths
}{
	{"2x4", 24, 56}, {"2x6", 24, 88}, {"2x8", 24, 116}, {"2x10", 24, 148}, {"2x12", 24, 180},
	{"3x4", 40, 56}, {"3x6", 40, 88}, {"3x8", 40, 116}, {"3x10", 40, 148}, {"3x12", 40, 180},
	{"4x4", 56, 56}, {"4x6", 56, 88}, {"4x8", 56, 116}, {"4x10", 56, 148}, {"4x12", 56, 180},
	{"6x6", 88, 88}, {"6x8", 88, 116}, {"8x8", 116, 116}, {"5/4x6", 16, 88},
}

// SizeNames returns the nominal sizes that have a dressed size, small ones first.
func SizeNames() []string {
	names := make([]string, len(dressed))
	for i, d := range dressed {
		names[i] = d.nominal
	}
	return names
}

// metricSize is a size in millimetres as it is spoken, 45x145: no nominal size
// in inches has two figures on both sides and is not in the table.
var metricSize = regexp.MustCompile(`^[1-9][0-9]{1,2} ?x ?[1-9][0-9]{1,2}$`)

// ParseSize reads a nominal size, 2x6, or a width and a depth: 45x145 mm, 45x145,
// 1 3/4" x 9 1/2". A member stands on edge: the first number is its width, the
// second its depth. Plies are left at 0.
func ParseSize(text string) (Section, bool) {
	text = strings.ReplaceAll(strings.ToLower(strings.TrimSpace(text)), "×", "x")
	for _, d := range dressed {
		if d.nominal == text {
			return Section{Size: d.nominal, Width: d.width * measure.Sixteenth, Depth: d.depth * measure.Sixteenth}, true
		}
	}
	first, second, found := strings.Cut(text, "x")
	if !found {
		return Section{}, false
	}
	bare := measure.Length(0)
	if strings.HasSuffix(text, "mm") || metricSize.MatchString(text) {
		bare = measure.Millimetre
	}
	depth, err := measure.ParseLengthIn(second, bare)
	if err != nil || depth <= 0 {
		return Section{}, false
	}
	width, err := measure.ParseLengthIn(first, bare)
	if err != nil || width <= 0 || width > longest || depth > longest {
		return Section{}, false
	}
	return Section{Size: SizeName(width, depth), Width: width, Depth: depth}, true
}

// SizeName returns the one name of a cross-section: its nominal size when it has
// one, else width and depth: 45x145 mm, or 1 3/4"x9 1/2". [ParseSize] reads it.
func SizeName(width, depth measure.Length) string {
	for _, d := range dressed {
		if d.width*measure.Sixteenth == width && d.depth*measure.Sixteenth == depth {
			return d.nominal
		}
	}
	if width%measure.Millimetre == 0 && depth%measure.Millimetre == 0 {
		return fmt.Sprintf("%dx%d mm", width/measure.Millimetre, depth/measure.Millimetre)
	}
	return width.String() + "x" + depth.String()
}
