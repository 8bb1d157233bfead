package levelling

import (
	"math/big"

	"pierbook/calc/measure"
)

// points takes all sights on each point together. The mean is worked in whole
// fractions and rounded once.
func (r *reduction) points() {
	b := r.book
	for i, s := range b.SetUps {
		for k, shot := range s.Shots {
			if isKnown(r.job, shot.Point) {
				continue
			}
			at, seen := b.index[shot.Point]
			if !seen {
				at = len(b.Points)
				b.index[shot.Point] = at
				b.Points = append(b.Points, PointHeight{Name: shot.Point})
			}
			b.Points[at].From = append(b.Points[at].From, ShotAt{SetUp: i, Shot: k})
		}
	}
	if b.Network != nil {
		for i, s := range b.SetUps {
			if at, seen := b.index[s.From]; seen {
				b.Points[at].Behind = append(b.Points[at].Behind, i)
			}
		}
	}
	for i := range b.Points {
		b.average(&b.Points[i])
	}
}

// average fills in the mean of a point, its spread and its error.
func (b *Book) average(p *PointHeight) {
	sum := new(big.Rat)
	var low, high measure.Length
	var setUps []int
	take := func(setUp int, before measure.Length) {
		height := new(big.Rat).SetInt64(int64(before))
		sum.Add(sum, height.Add(height, b.correction(setUp)))
		rounded := nearest(height)
		if p.Sights == 0 || rounded < low {
			low = rounded
		}
		if p.Sights == 0 || rounded > high {
			high = rounded
		}
		p.Sights++
		setUps = append(setUps, setUp)
	}
	for _, at := range p.From {
		for _, sight := range b.Shot(at).Sights {
			take(at.SetUp, b.SetUps[at.SetUp].Instrument-sight.Reading)
		}
	}
	for _, setUp := range p.Behind {
		take(setUp, b.SetUps[setUp].FromHeight)
	}
	p.Height = nearest(sum.Quo(sum, new(big.Rat).SetInt64(int64(p.Sights))))
	p.Spread = high - low
	if b.Network != nil {
		p.Error = b.Network.error(setUps)
	}
}

// correction returns what all heights from a set-up are corrected by.
func (b *Book) correction(setUp int) *big.Rat {
	if b.Network != nil {
		return new(big.Rat).SetInt64(int64(b.Network.Corrections[setUp]))
	}
	s := b.SetUps[setUp]
	run := b.Runs[s.Run]
	if !run.Closed {
		return new(big.Rat)
	}
	return big.NewRat(-int64(run.Misclosure)*int64(min(s.Depth, run.Count)), int64(run.Count))
}

// nearest returns the whole number of nanometres nearest to r, halves away from zero.
func nearest(r *big.Rat) measure.Length {
	twice := new(big.Int).Mul(new(big.Int).Abs(r.Num()), big.NewInt(2))
	twice.Add(twice, r.Denom())
	quotient := twice.Quo(twice, new(big.Int).Mul(r.Denom(), big.NewInt(2)))
	return measure.Length(int64(r.Sign()) * quotient.Int64())
}
