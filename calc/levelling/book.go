package levelling

import (
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// BenchMark is the name under which the readings call the bench mark.
const BenchMark = "bench_mark"

// knownHeight returns the height of a bench mark, the first or a further one, and
// whether the point is one.
func knownHeight(j *job.Job, point string) (measure.Length, bool) {
	if point == BenchMark {
		return j.Ground.BenchMark.Height, true
	}
	if spot := j.Ground.Spots[point]; spot.Known != nil {
		return *spot.Known, true
	}
	return 0, false
}

func isKnown(j *job.Job, point string) bool {
	_, known := knownHeight(j, point)
	return known
}

// knownKey returns the key of the figure that holds the height of a bench mark.
func knownKey(point string) string {
	if point == BenchMark {
		return "bench_mark.height"
	}
	return "ground.spots." + point
}

// Book is the level book, reduced.
type Book struct {
	SetUps []SetUp
	Runs   []LevelRun    // one for each time the work starts again from a bench mark
	Points []PointHeight // every point read but the bench marks, in the order first read
	Checks Arithmetic
	// Network is the adjustment of a book in which points were read from more
	// than one set-up; nil for one that goes from point to point.
	Network *Network

	index map[string]int // point to its place in Points
}

// SetUp is one stand of the instrument.
type SetUp struct {
	Number     int            // from 1, as in the job file
	Run        int            // index into Book.Runs
	Depth      int            // set-ups from a bench mark to here, this one counted
	From       string         // the point of the backsight
	FromHeight measure.Length // its height before any share of the misclosure
	Backsight  job.Sight
	Instrument measure.Length // height of instrument = FromHeight + backsight
	Shots      []Shot
}

// count returns the sights of the set-up, the backsight too.
func (s SetUp) count() int {
	n := 1
	for _, shot := range s.Shots {
		n += len(shot.Sights)
	}
	return n
}

// Shot is a point read from one set-up, its re-sights taken together.
type Shot struct {
	Point      string
	Sights     []job.Sight    // one or more readings, in the order taken
	Numbers    []int          // of those sights in the set-up, from 1; the backsight is 1
	Reading    measure.Length // their mean
	Height     measure.Length // instrument − reading, before any share of the misclosure
	Correction measure.Length // share of the misclosure, −misclosure × set-ups so far ÷ all set-ups, or what the network corrects its set-up by
	Foresight  bool           // the next set-up starts from it, or the run ends on it
}

// Reduced returns the height with its share of the misclosure.
func (s Shot) Reduced() measure.Length { return s.Height + s.Correction }

// LevelRun is a chain of set-ups that starts at a bench mark.
type LevelRun struct {
	SetUps     []int          // indices into Book.SetUps
	Closed     bool           // it ends on a bench mark
	Count      int            // set-ups from its start to the closing sight; all of them when not closed
	Closing    ShotAt         // the shot that closes it, when Closed
	Misclosure measure.Length // found − known height at the closing sight
	Allowed    measure.Length // job's allowance for one set-up × √Count
}

// PointHeight is the height of a point from all sights on it.
type PointHeight struct {
	Name   string
	Height measure.Length // mean over all sights, each with its correction
	Sights int
	Spread measure.Length // highest less lowest, 0 when read once
	From   []ShotAt       // the shots it was worked out from
	Behind []int          // set-ups whose backsights on it count as well, in a network
	Error  measure.Length // standard error in a network, else 0
}

// ShotAt is the place of a shot in the book.
type ShotAt struct{ SetUp, Shot int }

// Shot returns the shot at a place in the book.
func (b *Book) Shot(at ShotAt) Shot { return b.SetUps[at.SetUp].Shots[at.Shot] }

// Point returns the height of a point and whether it was read.
func (b *Book) Point(name string) (PointHeight, bool) {
	i, ok := b.index[name]
	if !ok {
		return PointHeight{}, false
	}
	return b.Points[i], true
}

// Closed holds when every run ends on a bench mark: one that does not has
// nothing to be held against.
func (b *Book) Closed() bool {
	for _, run := range b.Runs {
		if !run.Closed {
			return false
		}
	}
	return len(b.Runs) > 0
}

// Worst returns the closed run whose misclosure takes the greatest part of its
// limit, and whether any run closes.
func (b *Book) Worst() (LevelRun, bool) {
	var worst LevelRun
	found := false
	for _, run := range b.Runs {
		if run.Closed && (!found || used(run) > used(worst)) {
			worst, found = run, true
		}
	}
	return worst, found
}

// used returns the part of its limit that a run's misclosure takes.
func used(r LevelRun) float64 {
	if r.Allowed == 0 {
		return float64(r.Misclosure.Abs())
	}
	return float64(r.Misclosure.Abs()) / float64(r.Allowed)
}
