package strength

import (
	"strings"
	"sync"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Size is a nominal size with its dressed, dry dimensions.
type Size struct {
	Nominal         string
	Thickness, Wide measure.Length
	Class           string // dimension, post_timber or decking_board
	Source          string
}

// Sizes returns the nominal sizes of the tables in their order.
var Sizes = sync.OnceValue(func() []Size {
	var all []Size
	for _, r := range readTable("sizes.csv") {
		all = append(all, Size{Nominal: r["nominal"], Thickness: inches(r.number("thickness_in")), Wide: inches(r.number("width_in")),
			Class: r["class"], Source: r["source"]})
	}
	return all
})

func inches(v float64) measure.Length { return measure.Inch.Scale(v) }

// SectionOf returns the section of a nominal size such as 2x8, standing on edge,
// and whether the tables know it.
func SectionOf(nominal string, plies int) (job.Section, bool) {
	wanted := strings.ReplaceAll(strings.ToLower(nominal), "×", "x")
	for _, s := range Sizes() {
		if s.Nominal == wanted {
			return job.Section{Size: s.Nominal, Width: s.Thickness, Depth: s.Wide, Plies: plies}, true
		}
	}
	return job.Section{}, false
}

func psf(v float64) measure.Stress { return measure.Stress(v) * measure.PoundPerSquareFt }
