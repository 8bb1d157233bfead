package ground

import (
	"math"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Spoil is the soil out of the holes.
type Spoil struct {
	Holes measure.Volume // in the bank, as dug
	Back  measure.Volume // in the bank, what goes back beside the blocks
	Bank  measure.Volume // Holes − Back
	Loose measure.Volume // Bank × swell: what has to go somewhere
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
		s.Holes += side.Times(side).Deep(p.Hole.Dig)
		if j.Stone.BesideBlock == "soil" {
			s.Back += besideBlock(j, p.Hole.Cover())
		}
	}
	s.Bank = s.Holes - s.Back
	s.Loose = measure.Volume(float64(s.Bank) * float64(j.Site.Soil.Swell))
	s.Heap = measure.FromMetres(math.Cbrt(9 * float64(s.Loose)))
	return s
}
