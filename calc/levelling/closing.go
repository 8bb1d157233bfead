package levelling

import "pierbook/calc/fault"

// close finds where each run comes back to the bench mark, holds every loop of
// the book against its limit and shares out what the runs miss by inside it.
//
//	misclosure = found − known          allowed = allowance for one set-up × √N
//	correction = −misclosure × set-ups so far ÷ N
//
// Every sight gets the share of the set-up it was taken from. Where points were
// read from more than one set-up, there is more than one way to them, and the
// book is adjusted by least squares instead: see [Network]. What misses by more
// than the limit is a mistake, not an error, and is never spread: the book is
// refused.
func (r *reduction) close() fault.List {
	for i := range r.book.Runs {
		r.findClosing(&r.book.Runs[i])
	}
	if faults := r.beyondLimit(r.loops()); !faults.Empty() {
		return faults
	}
	if r.severalWays() {
		r.book.Network = r.adjust()
	} else {
		for _, run := range r.book.Runs {
			r.share(run)
		}
	}
	return fault.List{}
}

// findClosing takes the last sight on a bench mark as the closing one. Those
// before it are loops of their own.
func (r *reduction) findClosing(run *LevelRun) {
	for _, index := range run.SetUps {
		s := r.book.SetUps[index]
		if !run.Closed {
			run.Count = max(run.Count, s.Depth)
		}
		for i, shot := range s.Shots {
			if known, isMark := knownHeight(r.job, shot.Point); isMark {
				run.Closed, run.Closing, run.Count = true, ShotAt{SetUp: index, Shot: i}, s.Depth
				run.Misclosure, run.Allowed = shot.Height-known, r.allowed(s.Depth)
			}
		}
	}
}

// share gives every shot of a closed run its part of the misclosure.
func (r *reduction) share(run LevelRun) {
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
