package order

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Joint is one row of the fastening schedule as it applies to this frame.
type Joint struct {
	Nail        trade.Nail
	Each        int            // at one place, 0 when they stand at a spacing
	Edge, Field measure.Length // spacing along panel edges or of a row, and between the edges of a panel
	Count       int            // in all

	part    string // "joists": names the figure that a step sheet prints
	words   string // in the middle of a sentence: "three 8d common nails toenailed at each beam"
	use     string // on the order: "joists to beams"
	working string // of the count: "13 joists × 3 beams × 3"
	source  string
	memory  bool
}

// Joint returns the first joint of the frame that a part takes and whether there
// is one.
func (o *Order) Joint(part string) (Joint, bool) {
	at := slices.IndexFunc(o.schedule, func(j Joint) bool { return j.part == part })
	if at < 0 {
		return Joint{}, false
	}
	return o.schedule[at], true
}

// scheduler works the joints of one frame out.
type scheduler struct {
	job   *job.Job
	frame *frame.Frame
	style measure.Style
	set   SettingOut
	strap Straps
	brace Braces
}

// schedule returns the joints of the frame with the nails each takes.
func schedule(in Input) []Joint {
	s := scheduler{in.Job, in.Frame, in.Job.Style(), in.SettingOut, in.Straps, in.Braces}
	var joints []Joint
	for _, row := range []Joint{s.joistsToBeams(), s.hangers(), s.rimsToJoists(), s.rimsToBeams(), s.plies(), s.blocks(), s.caps(), s.straps(), s.braces(), s.panels(), s.boards(), s.batterBoards()} {
		if row.Count > 0 {
			joints = append(joints, row)
		}
	}
	return joints
}

// joint takes the row of the schedule for a kind of joint through a piece of a
// thickness.
func (s scheduler) joint(part, of string, thickness measure.Length) Joint {
	row, system := trade.JointFor(of, thickness), s.style.System
	return Joint{part: part, Nail: row.Nail, Each: row.Each, Edge: row.Edge(system), Field: row.Field(system), source: row.Source, memory: row.Memory}
}

// some returns how many nails stand at a place: "three 8d common nails".
func (s scheduler) some(j Joint) string { return numbered(j.Each) + " " + s.call(j.Nail) }

func (s scheduler) call(n trade.Nail) string { return n.Called(s.style.System) + "s" }

// numbered writes a small number as a word.
func numbered(n int) string {
	words := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < 0 || n >= len(words) {
		return strconv.Itoa(n)
	}
	return words[n]
}

func (s scheduler) say(l measure.Length) string { return l.Print(s.style) }

// atPlaces counts the nails of so many places and says what they are for.
func (j Joint) atPlaces(places int, kind, words, use string) Joint {
	j.Count, j.words, j.use = j.Each*places, words, use
	j.working = fmt.Sprintf("%d %s × %d", places, kind, j.Each)
	return j
}

// joistsToBeams counts three toenails wherever a joist bears on a beam.
func (s scheduler) joistsToBeams() Joint {
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
	row := s.joint("joists", "joist to beam", s.frame.Sections.Joist.Width)
	return row.atPlaces(places, "crossings", s.some(row)+" toenailed at each beam", "joists to beams")
}

// hangers take what is usual; the hanger maker's table rules.
func (s scheduler) hangers() Joint {
	row := s.joint("joists", "joist hanger", 0)
	return row.atPlaces(hungEnds(s.frame), "hangers", s.some(row)+" in each hanger, or as its maker says", "joist hangers")
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

func (s scheduler) rimsToJoists() Joint {
	rim := s.frame.Sections.Rim.Width
	row := s.joint("rims", "rim to joist", rim)
	row.Nail = row.Nail.Through(rim)
	return row.atPlaces(endsAtRims(s.frame), "joist ends", s.some(row)+" through the rim into each joist end", "rims to joist ends")
}

// rimsToBeams counts the toenails of a rim that stands on an outer beam.
func (s scheduler) rimsToBeams() Joint {
	f, row := s.frame, s.joint("rims", "rim to beam", s.frame.Sections.Rim.Width)
	if f.BuildUp.Joist > 0 && len(f.Lines) > 0 && s.job.Frame.Beams.Inset < f.Sections.Rim.Width {
		for i, r := range f.Rims {
			line := f.Lines[0]
			if i > 0 {
				line = f.Lines[len(f.Lines)-1]
			}
			for _, p := range r.Pieces {
				row.Count += atSpacing(min(p.To, line.End)-max(p.From, line.Start), row.Edge)
			}
		}
	}
	row.words, row.use = fmt.Sprintf("%s toenailed %s apart into the outer beam", s.call(row.Nail), s.say(row.Edge)), "rims to the outer beams"
	row.working = fmt.Sprintf("each piece of rim on a beam / %s, both ends", s.say(row.Edge))
	return row
}

// plies counts a row of nails along the top edge and one along the bottom edge
// of every piece of ply but the first.
func (s scheduler) plies() Joint {
	f, row := s.frame, s.joint("beams", "ply", s.frame.Sections.Beam.Width)
	row.Nail = row.Nail.Through(f.Sections.Beam.Width)
	for _, line := range f.Lines {
		for _, ply := range line.Plies[min(1, len(line.Plies)):] {
			for _, p := range ply.Pieces {
				row.Count += 2 * atSpacing(p.Long(), row.Edge)
			}
		}
	}
	row.words = fmt.Sprintf("a row of %s along the top edge and one along the bottom edge of each ply, %s apart", s.call(row.Nail), s.say(row.Edge))
	row.use, row.working = "plies of built-up beams", fmt.Sprintf("2 × (each piece after the first ply / %s, both ends)", s.say(row.Edge))
	return row
}

func (s scheduler) blocks() Joint {
	row := s.joint("blocking", "blocking", 0)
	return row.atPlaces(2*len(s.frame.Blocking), "ends", s.some(row)+" toenailed at each end", "blocking")
}

// caps take what is usual; the cap maker's table rules.
func (s scheduler) caps() Joint {
	row := s.joint("caps", "post cap", 0)
	return row.atPlaces(len(s.frame.Piers), "caps", s.some(row)+" each, or as the maker says", "post caps")
}

// straps take as many nails in each end as the checks want.
func (s scheduler) straps() Joint {
	row := s.joint("strap-nails", "strap", 0)
	row.Each = s.strap.Nails
	ends, words := 2*len(s.frame.Piers), s.some(row)+" in each end, into the post"
	if s.strap.ToBeam {
		ends, words = 2*ends, s.some(row)+" in each end, into the beam's side, and as many into the post"
	}
	return row.atPlaces(ends, "ends", words, "straps under the blocks")
}

// braces take as many screws in each end as the checks want.
func (s scheduler) braces() Joint {
	row := s.joint("brace-screws", "brace", 0)
	row.Each = s.brace.Screws
	return row.atPlaces(4*s.brace.Posts, "ends", s.some(row)+" in each end", "knee braces")
}

// batterBoards are screwed to two stakes each.
func (s scheduler) batterBoards() Joint {
	row := s.joint("set-out", "batter board", 0)
	return row.atPlaces(s.set.Stakes, "stakes", s.some(row)+" at each stake", "batter boards")
}

// atSpacing returns how many fasteners stand along a length at no more than a
// spacing, both ends included.
func atSpacing(length, spacing measure.Length) int {
	if length <= 0 {
		return 0
	}
	return int(math.Ceil(length.Metres()/spacing.Metres()-1e-9)) + 1
}
