package terrain

import (
	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

// Hump is ground that comes too near the frame between the piers.
type Hump struct {
	Under  string // "beam A" or "the joists between A and B"
	X, Y   measure.Length
	Ground measure.Length
	Gap    measure.Length // to what is above it
	Lower  measure.Length // how much to take off, for the clearance wanted
}

// stepsInBay is how many times the ground is looked at between two piers, and
// between two lines.
const stepsInBay = 4

// Humps looks under a floor along every beam line, and between the lines under
// the joists, for ground nearer than the clearance wanted, and returns the worst
// place of each; nil without readings. Under the beams the ground is held against the tops of the posts, as at
// the piers; under the joists, against the underside of the joists.
func (g *Ground) Humps(f *frame.Frame, floor, clearance measure.Length) []Hump {
	if g.Surface == nil {
		return nil
	}
	var humps []Hump
	look := func(under string, underside measure.Length, ys ...measure.Length) {
		var worst Hump
		for _, y := range ys {
			if h := g.hump(f, y, underside, clearance); h.Lower > worst.Lower {
				worst = h
			}
		}
		if worst.Lower > 0 {
			worst.Under = under
			humps = append(humps, worst)
		}
	}
	postTops := floor - f.BuildUp.Total()
	joists := floor - f.BuildUp.Surface - f.BuildUp.Joist
	if f.BuildUp.Joist == 0 {
		joists = postTops
	}
	for i, line := range f.Lines {
		look("beam "+line.Name, postTops, line.Y)
		if i == 0 {
			continue
		}
		before := f.Lines[i-1]
		var between []measure.Length
		for k := 1; k < stepsInBay; k++ {
			between = append(between, before.Y+(line.Y-before.Y).Part(k, stepsInBay))
		}
		look("the joists between "+before.Name+" and "+line.Name, joists, between...)
	}
	return humps
}

// hump returns the place along one y where the ground comes nearest; nothing is
// to be taken off where it comes too near nowhere.
func (g *Ground) hump(f *frame.Frame, y, underside, clearance measure.Length) Hump {
	perLine := 1
	for i := range f.Lines {
		perLine = max(perLine, f.PerLine(i))
	}
	steps := stepsInBay * max(1, perLine-1)
	var worst Hump
	for i := 0; i <= steps; i++ {
		x := f.Length.Part(i, steps)
		height := g.Surface.At(x, y)
		if lower := height + clearance - underside; lower > worst.Lower {
			worst = Hump{X: x, Y: y, Ground: height, Gap: underside - height, Lower: lower}
		}
	}
	return worst
}
