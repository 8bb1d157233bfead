package earthwork

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// Spoil is the soil out of the holes and of the cuts made before them, in the three volumes of earthwork: in the
// bank as it lay, loose as dug, and packed as it is trodden down again.
type Spoil struct {
	Holes  measure.Volume // in the bank
	Back   measure.Volume // in the bank, what goes back beside the blocks
	Cut    measure.Volume // in the bank, off the ground before the holes are dug
	Bank   measure.Volume // Holes + Cut − Back
	Loose  measure.Volume // Bank × swell: what has to go somewhere
	Packed measure.Volume // Bank × packed: what it fills
	Level  measure.Length // height to which the packed volume fills the low side under the frame
	Deep   measure.Length // of that fill at the lowest place
	Heap   measure.Length // side of a square heap with slopes of 1 in 1.5, and a third as high
}

// spoilOf works out the spoil of straight-sided holes.
//
//	bank  = Σ side² × D + cuts − Σ what goes back / packed
//	loose = bank × swell          packed volume = bank × packed
//
// The heap is a square pyramid with slopes of 1 up in 1.5 out: side³ / 9.
func spoilOf(j *job.Job, cuts []terrain.Cut, piers []heights.PierHeights) *Spoil {
	s := &Spoil{}
	packed := 1 / float64(j.Site.Soil.Packed)
	side := sideOf(j)
	for _, p := range piers {
		s.Holes += Pit(side, side, p.Hole.Dig, 0)
		if j.Stone.BesideBlock == "soil" {
			s.Back += measure.Volume(float64(besideBlock(j, p.Hole.Cover())) * packed)
		}
	}
	for _, c := range cuts {
		s.Cut += c.Volume
	}
	s.Bank = max(0, s.Holes+s.Cut-s.Back)
	s.loosen(j.Site.Soil)
	s.Heap = measure.FromMetres(math.Cbrt(9 * float64(s.Loose)))
	return s
}

// loosen works out the other two volumes from that in the bank.
func (s *Spoil) loosen(soil job.Soil) {
	s.Loose = measure.Volume(float64(s.Bank) * float64(soil.Swell))
	s.Packed = measure.Volume(float64(s.Bank) * float64(soil.Packed))
}

// spread finds the height up to which the packed soil fills the low side of the
// ground under the frame, no higher than its highest place.
func (s *Spoil) spread(grid HeightGrid, lowest, highest measure.Length) {
	low, high := lowest, highest
	for high-low > 10*measure.Micrometre {
		middle := low + (high-low)/2
		if _, fill := grid.CutAndFill(middle); fill < s.Packed {
			low = middle
		} else {
			high = middle
		}
	}
	s.Level, s.Deep = low, low-lowest
}

// gridUnder returns the ground under the frame on a grid, with its lowest and
// highest height.
func gridUnder(f *frame.Frame, ground *terrain.Ground) (grid HeightGrid, low, high measure.Length) {
	const steps = 8
	grid = HeightGrid{AlongX: f.Length.Part(1, steps), AlongY: f.Width.Part(1, steps)}
	for k := 0; k <= steps; k++ {
		row := make([]measure.Length, steps+1)
		for i := range row {
			row[i] = ground.Surface.At(f.Length.Part(i, steps), f.Width.Part(k, steps))
			if i+k == 0 {
				low, high = row[0], row[0]
			}
			low, high = min(low, row[i]), max(high, row[i])
		}
		grid.Heights = append(grid.Heights, row)
	}
	return grid, low, high
}
