package order

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// box is how nails are sold: by the pound, or by the half kilogram.
func box(system measure.System) (measure.Mass, string) {
	if system == measure.Metric {
		return 0.5, "boxes of 0.5 kg"
	}
	return measure.Pound, "boxes of 1 lb"
}

// spareNails are bought beyond the count: one in ten, for bent and lost ones
// (common practice, no source).
const spareNails = 0.10

// spareOf returns the spare nails for a count, rounded up.
func spareOf(count int) int { return int(math.Ceil(float64(count)*spareNails - 1e-9)) }

// byNail gathers joints that take the same nail, in their order.
func byNail(joints []Joint) [][]Joint {
	var groups [][]Joint
	index := map[string]int{}
	for _, row := range joints {
		at, seen := index[row.Nail.Key]
		if !seen {
			at = len(groups)
			index[row.Nail.Key] = at
			groups = append(groups, nil)
		}
		groups[at] = append(groups[at], row)
	}
	return groups
}

// grams prints the weight of one nail.
func grams(m measure.Mass) string { return fmt.Sprintf("%.1f g", float64(m)*1000) }

// fastenerLines gathers the joints by nail: one line each kind, in boxes.
func fastenerLines(j *job.Job, joints []Joint) []Line {
	mass, unit := box(j.Units)
	style := j.Style()
	var lines []Line
	for _, rows := range byNail(joints) {
		nail := rows[0].Nail
		l := Line{Key: "order.fastener." + nail.Key, Group: Fasteners, What: nail.Name(style), Unit: unit, Each: mass, Memory: nail.Memory}
		var uses, sums, sources []string
		for _, row := range rows {
			uses = append(uses, row.use+ofThem(row, rows))
			sums = append(sums, row.use+": "+row.working)
			sources = append(sources, row.source)
			l.Pieces += row.Count
			l.Memory = l.Memory || row.memory
		}
		l.Weighed = fmt.Sprintf("a box as it is sold; one nail weighs π/4 · d² · length · density of steel = %s", grams(nail.Mass()))
		perBox := int(float64(mass) / float64(nail.Mass()))
		l.Spare = spareOf(l.Pieces)
		l.Count = (l.Pieces + l.Spare + perBox - 1) / perBox
		l.Use, l.Source = strings.Join(uses, ", "), strings.Join(sources, "; ")
		l.Working = fmt.Sprintf("%s; (%d + %d spare) / %d in a box = %d", strings.Join(sums, "; "), l.Pieces, l.Spare, perBox, l.Count)
		l.Formula = "(Σ count + one in ten spare) / nails in a box, rounded up"
		l.Price = price(j, "nails")
		if nail.Screw {
			l.Price = price(j, "screws")
		}
		lines = append(lines, l)
	}
	return lines
}

// ofThem says how many of a line's nails one of several joints takes.
func ofThem(row Joint, rows []Joint) string {
	if len(rows) == 1 {
		return ""
	}
	return fmt.Sprintf(" (%d)", row.Count)
}
