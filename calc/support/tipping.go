package support

import (
	"math"

	"pierbook/calc/measure"
)

// subgrade is the modulus of compacted gravel under a block, 200 lb/in3: the usual
// range of handbooks is 150 to 300, from memory. It only shares a force out among
// piers; what each can hold does not rest on it.
const subgrade = 200 * 271447.0 // N/m3

// Upholds returns the moment that keeps a block from tipping about its edge, the
// toe on a strip of bed that the load needs at its allowable bearing:
//
//	a = N/(q·B)   M = N·(B − a)/2
//
// Load is that of the combination with the block's own weight. Effective width
// after Meyerhof (1953), from memory; a rigid bed would give N·B/2.
func (b PierBlock) Upholds(load measure.Force) measure.Moment {
	if load <= 0 {
		return 0
	}
	side := b.Block.Base.Metres()
	toe := float64(load) / (float64(b.Rules.StoneBearing) * side)
	return measure.Moment(math.Max(0, float64(load)*(side-toe)/2))
}

// Rocks returns how stiffly a block stands on its bed: ks·B⁴/12, N·m.
func (b PierBlock) Rocks() float64 { return subgrade * math.Pow(b.Block.Base.Metres(), 4) / 12 }

// StrapSlope returns the share of a strap's pull that acts upright where it goes
// from the edge of the block's base up to the post on its seat.
func (b PierBlock) StrapSlope(post measure.Length) measure.Ratio {
	rise, run := b.Block.SeatHeight.Metres(), max(0, (b.Block.Base-post).Metres()/2)
	if rise <= 0 {
		return 0
	}
	return measure.Ratio(rise / math.Hypot(rise, run))
}
