package ground

import (
	"slices"

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

// Humps looks along every beam line, and between the lines under the joists,
// for ground nearer than the clearance wanted, and returns the worst place of
// each. Under the beams the ground is held against the tops of the posts, as at
// the piers; under the joists, against the underside of the joists.
func (g *Ground) Humps(f *frame.Frame) []Hump {
	if g.Floor == nil || g.Surface == nil {
		return nil
	}
	var humps []Hump
	look := func(under string, underside measure.Length, ys ...measure.Length) {
		var worst Hump
		for _, y := range ys {
			if h := g.hump(f, y, underside); h.Lower > worst.Lower {
				worst = h
			}
		}
		if worst.Lower > 0 {
			worst.Under = under
			humps = append(humps, worst)
		}
	}
	joists := g.Floor.Height - f.BuildUp.Surface - f.BuildUp.Joist
	if f.BuildUp.Joist == 0 {
		joists = g.Floor.PostTops
	}
	for i, line := range f.Lines {
		look("beam "+line.Name, g.Floor.PostTops, line.Y)
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
func (g *Ground) hump(f *frame.Frame, y, underside measure.Length) Hump {
	perLine := 1
	for i := range f.Lines {
		perLine = max(perLine, f.PerLine(i))
	}
	steps := stepsInBay * max(1, perLine-1)
	var worst Hump
	for i := 0; i <= steps; i++ {
		x := f.Length.Part(i, steps)
		height := g.Surface.At(x, y)
		if lower := height + g.terms.Clear - underside; lower > worst.Lower {
			worst = Hump{X: x, Y: y, Ground: height, Gap: underside - height, Lower: lower}
		}
	}
	return worst
}

// Fall is how the ground lies under the platform.
type Fall struct {
	SlopeX, SlopeY measure.Percent // rise of the best plane along x and along y, over the run
	High, Low      Node            // highest and lowest ground under the frame, on a grid and at what was read
	Difference     measure.Length
	WaterGathers   bool // the lowest ground lies inside the frame and not at its edge
}

// Fall returns how the ground falls under the platform, nil without readings.
func (g *Ground) Fall(f *frame.Frame) *Fall {
	if g.Surface == nil {
		return nil
	}
	var nodes []Node
	const steps = 16
	for i := 0; i <= steps; i++ {
		for k := 0; k <= steps; k++ {
			x, y := f.Length.Part(i, steps), f.Width.Part(k, steps)
			nodes = append(nodes, Node{X: x, Y: y, Height: g.Surface.At(x, y)})
		}
	}
	for _, n := range g.Surface.Nodes {
		if n.X >= 0 && n.X <= f.Length && n.Y >= 0 && n.Y <= f.Width {
			nodes = append(nodes, n)
		}
	}
	byHeight := func(a, b Node) int {
		switch {
		case a.Height < b.Height:
			return -1
		case a.Height > b.Height:
			return 1
		}
		return 0
	}
	fall := &Fall{Low: slices.MinFunc(nodes, byHeight), High: slices.MaxFunc(nodes, byHeight),
		SlopeX: measure.Percent(g.Surface.Plane.SlopeX), SlopeY: measure.Percent(g.Surface.Plane.SlopeY)}
	fall.Difference = fall.High.Height - fall.Low.Height
	edge := fall.Low.X <= 0 || fall.Low.X >= f.Length || fall.Low.Y <= 0 || fall.Low.Y >= f.Width
	fall.WaterGathers = !edge
	return fall
}
