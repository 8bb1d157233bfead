package sizing

import (
	"fmt"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Cost is what a frame takes: money where the yard's prices are known, else
// timber and piers.
type Cost struct {
	Money  measure.Money
	Priced bool
	Timber measure.Volume // of joists, rims and beams
	Piers  int
}

// pierInTimber is how much timber one pier counts for where prices are not
// known: block, bed, post and the digging. Common practice, no source.
const pierInTimber measure.Volume = 0.03

// size returns the number that a search makes least.
func (c Cost) size() float64 {
	if c.Priced {
		return float64(c.Money)
	}
	return float64(c.Timber + pierInTimber*measure.Volume(c.Piers))
}

// Print returns the cost as money, or as timber and piers.
func (c Cost) Print(s measure.Style) string {
	if c.Priced {
		return c.Money.Print(s)
	}
	return fmt.Sprintf("%s of timber and %d piers", c.Timber.Print(s), c.Piers)
}

// Less returns what c costs more than other, in words: "$12.40 more", "2 piers fewer".
func (c Cost) Less(other Cost, s measure.Style) string {
	if c.Priced && other.Priced {
		if c.Money >= other.Money {
			return (c.Money - other.Money).Print(s) + " more"
		}
		return (other.Money - c.Money).Print(s) + " less"
	}
	var parts []string
	switch timber := c.Timber - other.Timber; {
	case timber > timberTold:
		parts = append(parts, timber.Print(s)+" more timber")
	case timber < -timberTold:
		parts = append(parts, (-timber).Print(s)+" less timber")
	}
	switch piers := c.Piers - other.Piers; {
	case piers > 0:
		parts = append(parts, fmt.Sprintf("%d more piers", piers))
	case piers < 0:
		parts = append(parts, fmt.Sprintf("%d fewer piers", -piers))
	}
	if len(parts) == 0 {
		return nothingMore
	}
	return strings.Join(parts, ", ")
}

// nothingMore is the price of a change that takes no more timber and piers.
const nothingMore = "nothing more"

// timberTold is the least difference of timber that is put into words.
const timberTold measure.Volume = 1e-4

// prices knows what a metre of each size and a pier cost.
type prices struct {
	yard   job.Yard
	metres map[string]float64
	pier   float64
	known  bool // timber of some joist and beam, and blocks
}

// pricesOf reads the yard's list. A size costs its cheapest stick by the metre;
// a pier its block, cap, a foot of post and the least bed of stone, as far as
// they are priced.
func pricesOf(j *job.Job) prices {
	p := prices{yard: j.Yard, metres: map[string]float64{}}
	for size, stock := range j.Yard.Stock {
		for _, s := range stock {
			if s.Price == nil || s.Length <= 0 {
				continue
			}
			if rate := float64(*s.Price) / s.Length.Metres(); p.metres[size] == 0 || rate < p.metres[size] {
				p.metres[size] = rate
			}
		}
	}
	block, known := j.Yard.Prices["block"]
	p.known = known && len(p.metres) > 0
	p.pier = float64(block) + float64(j.Yard.Prices["cap"]) + p.metres[j.Frame.Posts.Size]*measure.Foot.Metres()
	if stone, ok := j.Yard.Prices["stone"]; ok && j.Stone.SoldBy > 0 {
		side := j.Block.Base + 2*j.Stone.Margin
		p.pier += float64(stone) * float64(side.Times(side).Deep(j.Stone.Least)/j.Stone.SoldBy)
	}
	return p
}

// of returns the cost of a laid-out frame, and false when one of its sizes has
// no price though others have.
func (p prices) of(f *frame.Frame) (Cost, bool) {
	var joists, rims, beams measure.Length
	for _, j := range f.Joists {
		joists += j.Long()
	}
	for _, r := range f.Rims {
		for _, piece := range r.Pieces {
			rims += piece.Long()
		}
	}
	for _, l := range f.Lines {
		beams += (l.End - l.Start) * measure.Length(f.Sections.Beam.Plies)
	}
	return p.sum(f.Sections, joists, rims, beams, len(f.Piers))
}

// sum returns the cost of so much of each section and so many piers.
func (p prices) sum(s frame.Sections, joists, rims, beams measure.Length, piers int) (Cost, bool) {
	c := Cost{Piers: piers, Priced: p.known}
	for _, part := range []struct {
		section job.Section
		long    measure.Length
	}{{s.Joist, joists}, {s.Rim, rims}, {s.Beam, beams}} {
		c.Timber += part.section.Width.Times(part.section.Depth).Deep(part.long)
		rate, ok := p.metres[part.section.Size]
		if p.known && !ok && part.long > 0 {
			return Cost{}, false
		}
		c.Money += measure.Money(rate * part.long.Metres())
	}
	c.Money += measure.Money(p.pier * float64(piers))
	return c, true
}
