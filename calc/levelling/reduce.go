package levelling

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Reduce works the sights out into a level book.
//
//	instrument = height of the backsight's point + backsight
//	height     = instrument − reading
//
// Without any sight there is no book: it is nil, and no fault.
//
// A reading below zero is a rod held upside down. A set-up starts from a bench
// mark or from any point read before it; a point that was read several times
// from one set-up hands on the mean. It reports a fault where a set-up starts
// from a point that has no height yet, and where a run misses the bench mark by
// more than its limit.
func Reduce(j *job.Job) (*Book, fault.List) {
	var faults fault.List
	if !j.AnySights() {
		return nil, faults
	}
	r := reduction{job: j, book: &Book{index: map[string]int{}}, last: map[string]ShotAt{}}
	for number, sights := range j.Ground.SetUps {
		if len(sights) == 0 {
			continue
		}
		if f, bad := r.setUp(number+1, sights); bad {
			faults.Add(f)
			return nil, faults
		}
	}
	faults.Join(r.close())
	r.markForesights()
	if !faults.Empty() {
		return nil, faults
	}
	r.points()
	r.book.Checks = r.book.arithmetic()
	return r.book, faults
}

// reduction is a level book on its way.
type reduction struct {
	job  *job.Job
	book *Book
	last map[string]ShotAt // where each point was last read
	back []ShotAt          // for each set-up the shot it starts from; Shot is −1 for the bench mark
}

// setUp books one set-up.
func (r *reduction) setUp(number int, sights []job.Sight) (fault.Fault, bool) {
	first := sights[0]
	s := SetUp{Number: number, From: first.Point, Backsight: first}
	origin := ShotAt{Shot: -1}
	if known, isMark := knownHeight(r.job, first.Point); isMark {
		s.FromHeight, s.Depth, s.Run = known, 1, len(r.book.Runs)
		r.book.Runs = append(r.book.Runs, LevelRun{})
	} else {
		at, known := r.last[first.Point]
		if !known {
			return unknownStart(number, first), true
		}
		before := r.book.SetUps[at.SetUp]
		s.FromHeight, s.Depth, s.Run = r.book.Shot(at).Height, before.Depth+1, before.Run
		origin = at
	}
	s.Instrument = s.FromHeight + first.Reading
	s.Shots = r.shots(sights[1:], s.Instrument)
	index := len(r.book.SetUps)
	r.book.SetUps = append(r.book.SetUps, s)
	r.back = append(r.back, origin)
	run := &r.book.Runs[s.Run]
	run.SetUps = append(run.SetUps, index)
	for i, shot := range s.Shots {
		if !isKnown(r.job, shot.Point) {
			r.last[shot.Point] = ShotAt{SetUp: index, Shot: i}
		}
	}
	return fault.Fault{}, false
}

// shots gathers the sights of one set-up by point, in the order first read. A
// bench mark is kept apart at each reading: it is there to show a change.
func (r *reduction) shots(sights []job.Sight, instrument measure.Length) []Shot {
	var list []Shot
	place := map[string]int{}
	for i, sight := range sights {
		at, seen := place[sight.Point]
		if !seen || isKnown(r.job, sight.Point) {
			at = len(list)
			place[sight.Point] = at
			list = append(list, Shot{Point: sight.Point})
		}
		list[at].Sights = append(list[at].Sights, sight)
		list[at].Numbers = append(list[at].Numbers, i+2)
	}
	for i := range list {
		var sum measure.Length
		for _, sight := range list[i].Sights {
			sum += sight.Reading
		}
		list[i].Reading = sum.Part(1, len(list[i].Sights))
		list[i].Height = instrument - list[i].Reading
	}
	return list
}

// markForesights marks the shots that carry the height on, those that close a
// run, and where neither is among a set-up's shots, the last one.
func (r *reduction) markForesights() {
	carried := make([]bool, len(r.book.SetUps))
	for _, origin := range r.back {
		if origin.Shot >= 0 {
			r.book.SetUps[origin.SetUp].Shots[origin.Shot].Foresight = true
			carried[origin.SetUp] = true
		}
	}
	for _, run := range r.book.Runs {
		if run.Closed && !carried[run.Closing.SetUp] {
			r.book.SetUps[run.Closing.SetUp].Shots[run.Closing.Shot].Foresight = true
			carried[run.Closing.SetUp] = true
		}
	}
	for i := range r.book.SetUps {
		shots := r.book.SetUps[i].Shots
		if !carried[i] && len(shots) > 0 {
			shots[len(shots)-1].Foresight = true
		}
	}
}

func unknownStart(number int, first job.Sight) fault.Fault {
	wrong := fmt.Sprintf("set-up %d starts from %q, which has no height yet", number, first.Point)
	remedy := "start it from a bench mark or from a point that an earlier set-up has read"
	if number == 1 {
		remedy = "read the bench mark first: all heights hang on it"
	}
	return fault.Fault{At: first.At, Path: sightsPath(number), Wrong: wrong, Remedy: remedy}
}

// sightsPath returns the job path of a set-up.
func sightsPath(number int) string { return fmt.Sprintf("ground.sights.%d", number) }
