package ground

import (
	"fmt"
	"math"
	"math/big"

	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// close finds where each run comes back to the bench mark, holds the misclosure
// against its limit and shares it out inside the limit.
//
//	misclosure = found − known          allowed = allowance for one set-up × √N
//	correction = −misclosure × set-ups so far ÷ N
//
// Every sight gets the share of the set-up it was taken from. A misclosure
// beyond the limit is a mistake, not an error, and is never spread: the book is
// refused.
func (r *reduction) close() fault.List {
	var faults fault.List
	for i := range r.book.Runs {
		run := &r.book.Runs[i]
		r.findClosing(run)
		faults.Join(r.beyondLimit(*run))
		r.share(*run)
	}
	return faults
}

// findClosing takes the last sight on the bench mark as the closing one and the
// others as re-shots.
func (r *reduction) findClosing(run *Run) {
	for _, index := range run.SetUps {
		s := r.book.SetUps[index]
		run.Count = max(run.Count, s.Depth)
		for i, shot := range s.Shots {
			if shot.Point == BenchMark {
				run.Reshots = append(run.Reshots, Reshot{
					At:         ShotAt{SetUp: index, Shot: i},
					Difference: shot.Height - r.job.Ground.BenchMark.Height, Allowed: r.allowed(s.Depth)})
			}
		}
	}
	if len(run.Reshots) == 0 {
		return
	}
	last := run.Reshots[len(run.Reshots)-1]
	run.Reshots = run.Reshots[:len(run.Reshots)-1]
	run.Closed, run.Closing = true, last.At
	run.Count = r.book.SetUps[last.At.SetUp].Depth
	run.Misclosure, run.Allowed = last.Difference, last.Allowed
}

// allowed returns the misclosure that n set-ups may have.
func (r *reduction) allowed(n int) measure.Length {
	return r.job.Ground.CloseTo.Scale(math.Sqrt(float64(n)))
}

// beyondLimit reports the sights on the bench mark that miss it by too much.
func (r *reduction) beyondLimit(run Run) fault.List {
	var faults fault.List
	style := r.job.Style()
	refuse := func(at ShotAt, difference, allowed measure.Length, setUps int, remedy string) {
		faults.Add(fault.Fault{At: r.book.Shot(at).Sights[0].At, Path: sightsPath(r.book.SetUps[at.SetUp].Number),
			Wrong: fmt.Sprintf("the readings miss the bench mark by %s; %s may miss it by %s",
				difference.Abs().Print(style), counted(setUps, "set-up"), allowed.Print(style)),
			Remedy: remedy})
	}
	for _, shot := range run.Reshots {
		if shot.Difference.Abs() > shot.Allowed {
			refuse(shot.At, shot.Difference, shot.Allowed, r.book.SetUps[shot.At.SetUp].Depth,
				"the instrument was knocked or a rod misread: take the set-up again")
		}
	}
	if run.Closed && !run.Within() {
		refuse(run.Closing, run.Misclosure, run.Allowed, run.Count, slipRemedy(r.slips(run), style))
	}
	return faults
}

// share gives every shot of a closed run its part of the misclosure.
func (r *reduction) share(run Run) {
	if !run.Closed {
		return
	}
	for _, index := range run.SetUps {
		s := &r.book.SetUps[index]
		for i := range s.Shots {
			s.Shots[i].Correction = -run.Misclosure.Part(min(s.Depth, run.Count), run.Count)
		}
	}
}

// points takes all sights on each point together. The mean is worked in whole
// fractions and rounded once.
func (r *reduction) points() {
	b := r.book
	for i, s := range b.SetUps {
		for k, shot := range s.Shots {
			if shot.Point == BenchMark {
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
	for i := range b.Points {
		b.average(&b.Points[i])
	}
}

// average fills in the mean and the spread of a point.
func (b *Book) average(p *PointHeight) {
	sum := new(big.Rat)
	var low, high measure.Length
	for _, at := range p.From {
		s := b.SetUps[at.SetUp]
		run := b.Runs[s.Run]
		share := new(big.Rat)
		if run.Closed {
			share.SetFrac64(-int64(run.Misclosure)*int64(min(s.Depth, run.Count)), int64(run.Count))
		}
		for _, sight := range s.Shots[at.Shot].Sights {
			height := new(big.Rat).SetInt64(int64(s.Instrument - sight.Reading))
			sum.Add(sum, height.Add(height, share))
			rounded := nearest(height)
			if p.Sights == 0 || rounded < low {
				low = rounded
			}
			if p.Sights == 0 || rounded > high {
				high = rounded
			}
			p.Sights++
		}
	}
	p.Height = nearest(sum.Quo(sum, new(big.Rat).SetInt64(int64(p.Sights))))
	p.Spread = high - low
}

// nearest returns the whole number of nanometres nearest to r, halves away from zero.
func nearest(r *big.Rat) measure.Length {
	twice := new(big.Int).Mul(new(big.Int).Abs(r.Num()), big.NewInt(2))
	twice.Add(twice, r.Denom())
	quotient := twice.Quo(twice, new(big.Int).Mul(r.Denom(), big.NewInt(2)))
	return measure.Length(int64(r.Sign()) * quotient.Int64())
}

// counted returns "1 set-up", "2 set-ups".
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
