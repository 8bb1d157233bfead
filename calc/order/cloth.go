package order

import (
	"math"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Cloth is the ground cloth as it is laid: strips along the length, each
// lapping the next, and joints across a strip where a roll ends.
type Cloth struct {
	Strips int
	Rolls  int
	Joints int // across strips, each with a lap
	Pins   int
}

// leastTail is the shortest end of a roll worth laying: 3 ft. Common practice,
// no source.
const leastTail = 3 * measure.Foot

// pinEvery is how far the pins of the cloth stand apart along laps and edges.
// Common practice, no source.
const pinEvery = measure.Metre

// clothFor lays strips roll by roll.
//
//	strips = (width − lap) / (roll − lap), rounded up
//
// A strip that starts with the tail of one roll goes on with the next, a lap
// over it. A roll no wider than its lap covers nothing.
func clothFor(r job.Roll, length, width measure.Length) Cloth {
	if r.Width <= r.Lap || r.Length <= r.Lap || length <= 0 {
		return Cloth{}
	}
	c := Cloth{Strips: max(1, int(math.Ceil((width-r.Lap).Metres()/(r.Width-r.Lap).Metres()-1e-9)))}
	left := measure.Length(0)
	for range c.Strips {
		need := length
		for need > 0 {
			if left == 0 || left < need && left < max(leastTail, 2*r.Lap) {
				c.Rolls++
				left = r.Length
			}
			if left >= need {
				left -= need
				break
			}
			need += r.Lap - left
			c.Joints++
			left = 0
		}
	}
	c.Pins = (c.Strips + 1) * (int(math.Ceil(length.Metres()/pinEvery.Metres())) + 1)
	return c
}
