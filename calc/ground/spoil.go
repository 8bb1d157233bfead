package ground

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Spoil is the soil out of the holes.
type Spoil struct {
	Holes measure.Volume // in the bank, as dug
	Back  measure.Volume // in the bank, what goes back beside the blocks
	Bank  measure.Volume // Holes − Back
	Loose measure.Volume // Bank × swell: what has to go somewhere
	Level measure.Length // height to which the bank volume, trodden down, fills the low side under the frame
	Heap  measure.Length // side of a square heap with slopes of 1 in 1.5, and as high as that makes it
}

// spoilOf works out the spoil of straight-sided holes.
//
//	bank  = Σ side² × D − Σ what goes back          loose = bank × swell
//
// The heap is a square pyramid with slopes of 1 up in 1.5 out: side³ / 9.
func spoilOf(j *job.Job, piers []Pier) *Spoil {
	s := &Spoil{}
	side := sideOf(j)
	for _, p := range piers {
		s.Holes += Pit(side, side, p.Hole.Dig, 0)
		if j.Stone.BesideBlock == "soil" {
			s.Back += besideBlock(j, p.Hole.Cover())
		}
	}
	s.Bank = s.Holes - s.Back
	s.Loose = measure.Volume(float64(s.Bank) * float64(j.Site.Soil.Swell))
	s.Heap = measure.FromMetres(math.Cbrt(9 * float64(s.Loose)))
	return s
}

// spoilLevel returns the height up to which a volume fills the low side of the
// ground under the frame, no higher than its highest place.
func (g *Ground) spoilLevel(f *frame.Frame, volume measure.Volume) measure.Length {
	grid, low, high := g.gridUnder(f)
	for high-low > 10*measure.Micrometre {
		middle := low + (high-low)/2
		if _, fill := grid.CutAndFill(middle); fill < volume {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// gridUnder returns the ground under the frame on a grid, with its lowest and
// highest height.
func (g *Ground) gridUnder(f *frame.Frame) (grid Grid, low, high measure.Length) {
	const steps = 8
	grid = Grid{AlongX: f.Length.Part(1, steps), AlongY: f.Width.Part(1, steps)}
	for k := 0; k <= steps; k++ {
		row := make([]measure.Length, steps+1)
		for i := range row {
			row[i] = g.Surface.At(f.Length.Part(i, steps), f.Width.Part(k, steps))
			if i+k == 0 {
				low, high = row[0], row[0]
			}
			low, high = min(low, row[i]), max(high, row[i])
		}
		grid.Heights = append(grid.Heights, row)
	}
	return grid, low, high
}
