package earthwork

import (
	"math"

	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// StoneOdds is the order of stone when the beds of some piers are known from
// their probes and the others must be foreseen from the scatter of those.
type StoneOdds struct {
	Probed, Unknown int             // piers
	Mean, Scatter   measure.Length  // of the probed beds, compacted
	Even, NineInTen StoneOrder      // enough with even odds, and nine times in ten
	Enough          measure.Percent // chance that the rounded order of the plan is enough
	OneMoreSaves    measure.Volume  // what the nine-in-ten order drops by if one more probe finds the mean
}

// StoneOrder is an amount of stone to have.
type StoneOrder struct {
	StoneSupply
	Chance measure.Percent // that the rounded order is enough
}

// oddsOf works the order out from the scatter of the probed beds. It returns nil
// when it cannot be honest: with no pier left to foresee, with fewer than two
// probes, or with probes that all give the same bed. What one bed can be is
// capped by the least and the most stone.
func oddsOf(j *job.Job, stone *StoneTakeoff, piers []heights.PierHeights) *StoneOdds {
	probed, known, unknown, most := beds(j, piers)
	sample := SampleOf(probed)
	if unknown == 0 || !sample.Honest() {
		return nil
	}
	o := &StoneOdds{Probed: len(probed), Unknown: unknown, Mean: measure.FromMetres(sample.Mean), Scatter: measure.FromMetres(sample.Scatter)}
	fixed := stone.Beside
	order := func(s Sample, known float64, m int, p float64) StoneOrder {
		total := min(s.Total(m, p), most)
		bed := measure.Volume((known + total) * float64(stone.Side.Times(stone.Side)))
		return StoneOrder{StoneSupply: supplyOf(j, bed+fixed)}
	}
	o.Even, o.NineInTen = order(sample, known, unknown, 0.5), order(sample, known, unknown, float64(trade.Often))
	chance := func(volume measure.Volume) measure.Percent {
		compacted := float64(volume) / float64(j.Stone.Loose) / (1 + float64(j.Stone.Waste))
		total := (compacted-float64(fixed))/float64(stone.Side.Times(stone.Side)) - known
		if total >= most {
			return 1
		}
		return measure.Percent(sample.Chance(unknown, total))
	}
	o.Even.Chance, o.NineInTen.Chance, o.Enough = chance(o.Even.Order), chance(o.NineInTen.Order), chance(stone.Order)
	if unknown > 1 {
		more := Sample{Count: sample.Count + 1, Mean: sample.Mean, Scatter: sample.Scatter * math.Sqrt(float64(sample.Count-1)/float64(sample.Count))}
		most -= piers[0].Hole.StoneMost.Metres()
		o.OneMoreSaves = max(0, o.NineInTen.WithWaste-order(more, known+sample.Mean, unknown-1, float64(trade.Often)).WithWaste)
	}
	return o
}

// beds returns the beds of the piers that were probed or dug, their sum, how
// many piers were not, and the most that those can take, all in metres.
func beds(j *job.Job, piers []heights.PierHeights) (probed []float64, known float64, unknown int, most float64) {
	for _, p := range piers {
		_, bar := j.Ground.Probes[p.Name]
		if _, dug := j.Measured.Holes[p.Name]; bar || dug {
			probed = append(probed, p.Hole.Stone.Metres())
			known += p.Hole.Stone.Metres()
			continue
		}
		unknown++
		most += p.Hole.StoneMost.Metres()
	}
	return probed, known, unknown, most
}
