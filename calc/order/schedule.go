package order

import (
	"fmt"
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// joint is one row of the fastening schedule as it applies to this frame.
type joint struct {
	part    string // "joists": names the figure that a step sheet prints
	nail    Nail
	count   int
	words   string // in the middle of a sentence: "three 8d common nails toenailed at each beam"
	use     string // on the order: "joists to beams"
	working string // of the count: "13 joists × 3 beams × 3"
	source  string
	memory  bool
}

// scheduler works the joints of one frame out.
type scheduler struct {
	job   *job.Job
	frame *frame.Frame
	style measure.Style
	set   SettingOut
}

// schedule returns the joints of the frame with the nails each takes.
func schedule(in Input) []joint {
	s := scheduler{in.Job, in.Frame, in.Job.Style(), in.SettingOut}
	var joints []joint
	for _, row := range []joint{s.joistsToBeams(), s.hangers(), s.rimsToJoists(), s.rimsToBeams(), s.plies(), s.blocks(), s.caps(), s.panels(), s.boards(), s.batterBoards()} {
		if row.count > 0 {
			joints = append(joints, row)
		}
	}
	return joints
}

func (s scheduler) call(n Nail) string { return n.Called(s.style.System) + "s" }

// spaced returns a spacing of the schedule, and its round metric size in a
// metric job: 6 in is 150 mm, 12 in 300 mm, 16 in 400 mm.
func (s scheduler) spaced(inches measure.Length) measure.Length {
	if s.style.System == measure.Metric {
		return inches * 25 * measure.Millimetre
	}
	return inches * measure.Inch
}

func (s scheduler) say(l measure.Length) string { return l.Print(s.style) }

// joistsToBeams counts three toenails wherever a joist bears on a beam.
func (s scheduler) joistsToBeams() joint {
	f, places := s.frame, 0
	if f.BuildUp.Joist > 0 {
		half, thick := f.Sections.Beam.Across()/2, f.Sections.Joist.Width
		for _, j := range f.Joists {
			for _, line := range f.Lines {
				if j.From < line.Y+half && j.To > line.Y-half && j.Near < line.End && j.Near+thick > line.Start {
					places++
				}
			}
		}
	}
	n := nail8dCommon
	return joint{part: "joists", nail: n, count: 3 * places, words: "three " + s.call(n) + " toenailed at each beam", use: "joists to beams",
		working: fmt.Sprintf("%d crossings × 3", places), source: "IRC 2021 Table R602.3(1), joist to sill or girder: three 8d common toenails"}
}

// nailsInHanger is what a joist hanger takes; its maker's table rules.
const nailsInHanger = 10

func (s scheduler) hangers() joint {
	ends := hungEnds(s.frame)
	n := nailHanger
	return joint{part: "joists", nail: n, count: nailsInHanger * ends, words: "ten " + s.call(n) + " in each hanger, or as its maker says", use: "joist hangers",
		working: fmt.Sprintf("%d hangers × %d", ends, nailsInHanger), source: "common practice, no source: the maker's table rules"}
}

// hungEnds counts the joist ends that hang on the side of a beam: all ends of
// joists between beams but those that meet a rim.
func hungEnds(f *frame.Frame) int {
	if f.BuildUp.Joist > 0 {
		return 0
	}
	return 2*len(f.Joists) - endsAtRims(f)
}

// endsAtRims counts the joist ends that meet the inner face of a rim.
func endsAtRims(f *frame.Frame) int {
	if len(f.Rims) == 0 {
		return 0
	}
	count, rim := 0, f.Sections.Rim.Width
	for _, j := range f.Joists {
		if j.From == rim {
			count++
		}
		if j.To == f.Width-rim {
			count++
		}
	}
	return count
}

func (s scheduler) rimsToJoists() joint {
	ends, n := endsAtRims(s.frame), through(s.frame.Sections.Rim.Width)
	return joint{part: "rims", nail: n, count: 3 * ends, words: "three " + s.call(n) + " through the rim into each joist end", use: "rims to joist ends",
		working: fmt.Sprintf("%d joist ends × 3", ends), source: "IRC 2021 Table R602.3(1), rim to joist, end nail: three 16d common"}
}

// rimsToBeams counts the toenails of a rim that stands on an outer beam.
func (s scheduler) rimsToBeams() joint {
	f, every, count := s.frame, s.spaced(6), 0
	if f.BuildUp.Joist > 0 && len(f.Lines) > 0 && s.job.Frame.Beams.Inset < f.Sections.Rim.Width {
		for i, r := range f.Rims {
			line := f.Lines[0]
			if i > 0 {
				line = f.Lines[len(f.Lines)-1]
			}
			for _, p := range r.Pieces {
				count += atSpacing(min(p.To, line.End)-max(p.From, line.Start), every)
			}
		}
	}
	n := nail8dCommon
	return joint{part: "rims", nail: n, count: count, words: fmt.Sprintf("%s toenailed %s apart into the outer beam", s.call(n), s.say(every)), use: "rims to the outer beams",
		working: fmt.Sprintf("each piece of rim on a beam / %s, both ends", s.say(every)), source: "IRC 2021 Table R602.3(1), rim to sill: 8d common at 6 in"}
}

// plies counts a row of nails along the top edge and one along the bottom edge
// of every piece of ply but the first.
func (s scheduler) plies() joint {
	f, every, count := s.frame, s.spaced(16), 0
	for _, line := range f.Lines {
		for _, ply := range line.Plies[min(1, len(line.Plies)):] {
			for _, p := range ply.Pieces {
				count += 2 * atSpacing(p.Long(), every)
			}
		}
	}
	n, source := plyNail(f.Sections.Beam.Width)
	return joint{part: "beams", nail: n, count: count, words: fmt.Sprintf("a row of %s along the top edge and one along the bottom edge of each ply, %s apart", s.call(n), s.say(every)), use: "plies of built-up beams",
		working: fmt.Sprintf("2 × (each piece after the first ply / %s, both ends)", s.say(every)), source: source}
}

func (s scheduler) blocks() joint {
	n, ends := nail8dCommon, 2*len(s.frame.Blocking)
	return joint{part: "blocking", nail: n, count: 3 * ends, words: "three " + s.call(n) + " toenailed at each end", use: "blocking",
		working: fmt.Sprintf("%d ends × 3", ends), source: "IBC 2018 Table 2304.10.1, blocking between joists, each end: three 8d common"}
}

// screwsInCap is what a post cap takes; its maker's table rules.
const screwsInCap = 8

func (s scheduler) caps() joint {
	n := screwCap
	return joint{part: "caps", nail: n, count: screwsInCap * len(s.frame.Piers), words: "eight " + s.call(n) + " each, or as the maker says", use: "post caps",
		working: fmt.Sprintf("%d caps × %d", len(s.frame.Piers), screwsInCap), source: "common practice, no source: the maker's table rules"}
}

// batterBoards takes two screws at each of a board's two stakes.
func (s scheduler) batterBoards() joint {
	n := screwBatter
	return joint{part: "set-out", nail: n, count: 4 * s.set.Boards, words: "two " + s.call(n) + " at each stake", use: "batter boards",
		working: fmt.Sprintf("%d boards × 2 stakes × 2", s.set.Boards), source: "common practice, no source"}
}

// atSpacing returns how many fasteners stand along a length at no more than a
// spacing, both ends included.
func atSpacing(length, spacing measure.Length) int {
	if length <= 0 {
		return 0
	}
	return int(math.Ceil(length.Metres()/spacing.Metres()-1e-9)) + 1
}
