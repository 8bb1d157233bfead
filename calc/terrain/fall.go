package terrain

import (
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
)

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
			n.Height = g.Surface.At(n.X, n.Y)
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
