package earthwork

import (
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/terrain"
)

// Earthwork is what the holes take and give. Stone, Spoil and Odds are nil while
// no hole is known.
type Earthwork struct {
	Stone *StoneTakeoff
	Spoil *Spoil
	Odds  *StoneOdds // nil as well when too few probes differ to say anything of chance

	unforeseen int // beds that the order takes at their least
}

// Work adds up the holes of the piers.
func Work(j *job.Job, f *frame.Frame, ground *terrain.Ground, piers []heights.PierHeights) *Earthwork {
	e := &Earthwork{}
	if len(piers) == 0 || piers[0].Hole == nil {
		return e
	}
	e.Stone = stoneOf(j, piers)
	e.Spoil = spoilOf(j, ground.Cuts(), piers)
	e.Spoil.spread(gridUnder(f, ground))
	if e.Odds = oddsOf(j, e.Stone, piers); e.Odds == nil {
		_, _, e.unforeseen, _ = beds(j, piers)
	}
	return e
}
