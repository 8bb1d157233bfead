package sizing

import (
	"pierbook/calc/job"
)

// SectionOf returns the section of a size such as 2x8 or 45x145 mm, standing on
// edge, and whether it is one.
func SectionOf(size string, plies int) (job.Section, bool) {
	section, ok := job.ParseSize(size)
	section.Plies = plies
	return section, ok
}
