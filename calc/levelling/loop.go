package levelling

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// loop is a closed way through the book: back to the bench mark, to a point that
// another set-up has read before, or to a point read once more from one set-up.
type loop struct {
	closes  job.Sight      // the sight that closes it
	setUp   int            // number of its set-up
	setUps  int            // set-ups that the loop goes through
	misses  measure.Length // found − known, or second − first
	allowed measure.Length // allowance for one set-up × √setUps
	legs    []leg
	reshot  bool // the bench mark, read on the way
}

// leg is one sight of a loop.
type leg struct {
	at    sightAt
	sight job.Sight
	sign  measure.Length // +1 when a larger reading raises what the loop misses by, −1 when it lowers it
	of    int            // sights on the point from that set-up, of which the mean goes on
}

// sightAt tells one sight from all others, so that loops which share it are seen
// to: the number of its set-up and its own in it, the backsight being 1.
type sightAt struct{ setUp, number int }

func (l loop) within() bool { return l.misses.Abs() <= l.allowed }

// allowed returns the misclosure that n set-ups may have.
func (r *reduction) allowed(n int) measure.Length {
	return r.job.Ground.CloseTo.Scale(math.Sqrt(float64(n)))
}

// loops returns every loop of the book, in the order of their closing sights.
func (r *reduction) loops() []loop {
	var list []loop
	first := map[string]ShotAt{}
	for i, s := range r.book.SetUps {
		for k, shot := range s.Shots {
			at := ShotAt{SetUp: i, Shot: k}
			list = append(list, r.resights(s, shot)...)
			if known, isMark := knownHeight(r.job, shot.Point); isMark {
				list = append(list, r.toBenchMark(at, known))
			} else if before, seen := first[shot.Point]; seen {
				list = append(list, r.secondWay(before, at))
			} else {
				first[shot.Point] = at
			}
		}
	}
	return list
}

// resights holds each further sight of a shot against its first.
func (r *reduction) resights(s SetUp, shot Shot) []loop {
	var list []loop
	for i, again := range shot.Sights[1:] {
		first := shot.Sights[0]
		list = append(list, loop{closes: again, setUp: s.Number, setUps: 1,
			misses: first.Reading - again.Reading, allowed: r.allowed(1),
			legs: []leg{{at: sightAt{s.Number, shot.Numbers[i+1]}, sight: again, sign: -1, of: 1},
				{at: sightAt{s.Number, shot.Numbers[0]}, sight: first, sign: +1, of: 1}}})
	}
	return list
}

func (r *reduction) toBenchMark(at ShotAt, known measure.Length) loop {
	s, shot := r.book.SetUps[at.SetUp], r.book.Shot(at)
	run := r.book.Runs[s.Run]
	reshot := run.Closing != at && shot.Point == r.book.SetUps[run.SetUps[0]].From
	return loop{closes: shot.Sights[0], setUp: s.Number, setUps: s.Depth,
		misses: shot.Height - known, allowed: r.allowed(s.Depth),
		legs: r.way(at, +1), reshot: reshot}
}

// secondWay closes a loop on a point that an earlier set-up has read. What both
// ways have in common cancels.
func (r *reduction) secondWay(first, again ShotAt) loop {
	there, back := r.way(again, +1), r.way(first, -1)
	for len(there) > 0 && len(back) > 0 && there[len(there)-1].at == back[len(back)-1].at {
		there, back = there[:len(there)-1], back[:len(back)-1]
	}
	legs := append(there, back...)
	through := map[int]bool{}
	for _, l := range legs {
		through[l.at.setUp] = true
	}
	shot := r.book.Shot(again)
	return loop{closes: shot.Sights[0], setUp: r.book.SetUps[again.SetUp].Number, setUps: len(through),
		misses: shot.Height - r.book.Shot(first).Height, allowed: r.allowed(len(through)), legs: legs}
}

// way lists the sights from a shot back to the bench mark, with the sign that
// they have when a higher shot counts as sign.
func (r *reduction) way(at ShotAt, sign measure.Length) []leg {
	var legs []leg
	for at.Shot >= 0 {
		s, shot := r.book.SetUps[at.SetUp], r.book.Shot(at)
		for i, sight := range shot.Sights {
			legs = append(legs, leg{at: sightAt{s.Number, shot.Numbers[i]}, sight: sight, sign: -sign, of: len(shot.Sights)})
		}
		legs = append(legs, leg{at: sightAt{s.Number, 1}, sight: s.Backsight, sign: sign, of: 1})
		at = r.back[at.SetUp]
	}
	return legs
}

// beyondLimit reports the loops that do not close within their limits. When a
// slip in one reading would close all of them, they are one mistake, and the
// loop that misses most stands for it.
func (r *reduction) beyondLimit(loops []loop) fault.List {
	var faults fault.List
	open := slices.DeleteFunc(slices.Clone(loops), loop.within)
	if len(open) == 0 {
		return faults
	}
	slips := r.slips(loops)
	if len(slips) > 0 {
		open = []loop{slices.MaxFunc(open, func(a, b loop) int { return cmp.Compare(a.misses.Abs(), b.misses.Abs()) })}
	}
	for _, l := range open {
		faults.Add(fault.Fault{At: l.closes.At, Path: sightsPath(l.setUp), Wrong: r.missed(l), Remedy: r.remedy(l, slips)})
	}
	return faults
}

func (r *reduction) missed(l loop) string {
	style := r.job.Style()
	misses, allowed := l.misses.Abs().Print(style), l.allowed.Print(style)
	switch {
	case isKnown(r.job, l.closes.Point):
		return fmt.Sprintf("the readings miss the %s by %s; %s may miss it by %s", markName(l.closes.Point), misses, measure.Counted(l.setUps, "set-up"), allowed)
	case len(l.legs) == 2:
		return fmt.Sprintf("two readings on %s from set-up %d differ by %s; they may differ by %s", l.closes.Point, l.setUp, misses, allowed)
	}
	return fmt.Sprintf("the heights of %s from two ways differ by %s; over %s they may differ by %s", l.closes.Point, misses, measure.Counted(l.setUps, "set-up"), allowed)
}

// remedy names the readings to look at first. When no slip mends the whole book,
// those that mend this loop alone are named.
func (r *reduction) remedy(l loop, slips []Slip) string {
	if l.reshot {
		return "the instrument was knocked or a rod misread: take the set-up again"
	}
	if len(slips) == 0 {
		slips = r.slips([]loop{l})
	}
	return slipRemedy(slips, r.job.Style())
}
