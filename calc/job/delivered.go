package job

import (
	"fmt"
	"maps"
	"slices"
)

// checkDelivered holds that timber came in sticks and everything else by count.
func (j *Job) checkDelivered(r *reader) {
	for _, good := range slices.Sorted(maps.Keys(j.Measured.Delivered)) {
		path, d := "measured.delivered."+good, j.Measured.Delivered[good]
		if r.spoilt(path) {
			continue
		}
		_, timber := ParseSize(good)
		switch {
		case timber && len(d.Sticks) == 0 && d.Count > 0:
			r.wrong(path, r.at(path), fmt.Sprintf("%d sticks came, of no length", d.Count), fmt.Sprintf("write how many of which length, such as {16': %d}", d.Count))
		case !timber && len(d.Sticks) > 0:
			r.wrong(path, r.at(path), good+" is counted, and comes in no lengths", "write how many came, such as 6")
		}
	}
}
