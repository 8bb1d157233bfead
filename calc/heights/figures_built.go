package heights

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// built adds the finished floor as it was read, and how level it came out.
func (l *ledger) built(h *Heights) {
	var read []string
	for _, p := range h.Piers {
		key := "pier." + p.Name + ".finished"
		means := []string{key + "_reading", "reading on the finished floor over " + p.Name, key, "height of the finished floor over " + p.Name, key + "_over", "finished floor over the plan, over " + p.Name}
		if point, ok := h.AsBuilt.point(p.Name); ok {
			l.builtPoint(h.AsBuilt, point, means)
			read = append(read, key)
		} else {
			l.Blank(means...)
		}
	}
	if h.AsBuilt == nil {
		l.Blank("built.range", "highest less lowest point of the finished floor", "built.high", "highest point of the finished floor", "built.low", "lowest point of the finished floor",
			"built.step", "greatest step between neighbours")
		l.builtPlane(nil, nil)
		return
	}
	l.builtRange(h.AsBuilt, read)
	l.builtPlane(h.AsBuilt, read)
}

// point returns the reading over a pier and whether there is one.
func (a *FinishedFloor) point(pier string) (FloorPoint, bool) {
	if a == nil {
		return FloorPoint{}, false
	}
	for _, p := range a.Points {
		if p.Name == pier {
			return p, true
		}
	}
	return FloorPoint{}, false
}

// builtPoint adds one reading, the height it makes, and what that is over the
// plan. The keys and meanings come in pairs.
func (l *ledger) builtPoint(b *FinishedFloor, p FloorPoint, keys []string) {
	l.Add(figure.Figure{Key: keys[0], Means: keys[1], Value: measure.Reading(p.Reading), Origin: figure.Measured, At: l.job.At("measured.finished." + p.Name)})
	bench := b.Instrument - l.job.Ground.BenchMark.Height
	l.Add(figure.Figure{Key: keys[2], Means: keys[3], Value: p.Height, Formula: "height of the bench mark + its reading that day − reading",
		Working: l.Sum(p.Height, figure.Plus(l.job.Ground.BenchMark.Height), figure.Plus(measure.Reading(bench)), figure.Minus(measure.Reading(p.Reading))), From: []string{"bench_mark.height", keys[0]}})
	l.Add(figure.Figure{Key: keys[4], Means: keys[5], Value: p.Over, Formula: "height − floor",
		Working: l.Sum(p.Over, figure.Plus(p.Height), figure.Minus(p.Height-p.Over)), From: []string{keys[2], "floor.height"}})
}

// builtRange adds the extremes and the greatest step between neighbours.
func (l *ledger) builtRange(b *FinishedFloor, read []string) {
	l.Add(figure.Figure{Key: "built.range", Means: "highest less lowest point of the finished floor", Value: b.Range, Rounding: measure.Up, Formula: "highest − lowest",
		Working: l.Sum(b.Range, figure.Plus(b.High.Height), figure.Minus(b.Low.Height)), From: []string{"built.high", "built.low"}})
	l.Add(figure.Figure{Key: "built.high", Means: "highest point of the finished floor, over " + b.High.Name, Value: b.High.Height, Formula: "the greatest of the heights",
		Working: l.Print(b.High.Height) + " over " + b.High.Name, From: []string{"pier." + b.High.Name + ".finished"}})
	l.Add(figure.Figure{Key: "built.low", Means: "lowest point of the finished floor, over " + b.Low.Name, Value: b.Low.Height, Formula: "the least of the heights",
		Working: l.Print(b.Low.Height) + " over " + b.Low.Name, From: []string{"pier." + b.Low.Name + ".finished"}})
	step := figure.Figure{Key: "built.step", Means: "greatest step between neighbours", Value: b.WorstStep, Rounding: measure.Up, Formula: "greatest difference of two neighbours",
		Working: l.Print(b.WorstStep), From: read}
	if b.WorstStep > 0 {
		step.Working = fmt.Sprintf("%s, from %s to %s", step.Working, b.WorstNeighbour[0].Name, b.WorstNeighbour[1].Name)
		step.From = []string{"pier." + b.WorstNeighbour[0].Name + ".finished", "pier." + b.WorstNeighbour[1].Name + ".finished"}
	}
	l.Add(step)
}

// builtPlane adds the tilt of the best plane and what stands out of it.
func (l *ledger) builtPlane(b *FinishedFloor, read []string) {
	if b == nil || !b.Plane {
		l.Blank("built.tilt_along", "tilt of the finished floor along the lines", "built.tilt_across", "tilt of the finished floor across the lines",
			"built.hump", "greatest hump or hollow of the finished floor")
		return
	}
	tilt := func(key, means string, value measure.Length) {
		l.Add(figure.Figure{Key: key, Means: means, Value: value, Formula: "rise of the best plane from the first pier to the last", Working: l.Print(value), From: read})
	}
	tilt("built.tilt_along", "tilt of the finished floor along the lines", b.TiltX)
	tilt("built.tilt_across", "tilt of the finished floor across the lines", b.TiltY)
	hump := figure.Figure{Key: "built.hump", Means: "greatest hump or hollow of the finished floor", Value: b.HumpBy, Formula: "height − best plane", Working: l.Print(b.HumpBy), From: read}
	if b.HumpBy != 0 {
		hump.Means += ", over " + b.Hump.Name
		hump.Working += " over " + b.Hump.Name
	}
	l.Add(hump)
}
