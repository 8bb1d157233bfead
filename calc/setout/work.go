package setout

import (
	"fmt"
	"slices"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// SetOut is all that the setting-out sheets show.
type SetOut struct {
	Frame, Piers Rectangle
	Beams        Rectangle // outer corners of the outer beam lines
	FrameLimits  Limits
	PierLimits   Limits
	Triangle     Triangle
	Boards       Boards
	Racking      []Racked // of the frame
	BeamRacking  []Racked // of the beams
	Strings      *Check   // nil until the strings were measured
	Sides        *Check   // the beams measured once they lie, nil until then

	system measure.System
}

// Check is one measuring of four sides and two diagonals.
type Check struct {
	Path       string // of the job key
	Of         string // what was measured: "strings" or "beams"
	Rectangle  Rectangle
	Adjustment Adjustment
	Limits     Limits
	Holds      [3]Hold
	Tolerance  measure.Length // a corner this near may stay: what a tape cannot show
	Difference measure.Length // first diagonal (from the hook corner) less the second
}

// Squareness is what the two diagonals say about the corners.
type Squareness string

// The three verdicts on the difference of the diagonals.
const (
	Square    Squareness = "square"
	Unsure    Squareness = "too near to tell: measure both diagonals again"
	OutOfTrue Squareness = "out of square"
)

// staysWithin is how many errors of one reading a corner may be off its place
// and stay: a tape could not show it, 95 times in 100.
const staysWithin = 2

// Work sets the frame out. It reports a fault for a measured set that lacks a
// side or a diagonal, or that makes no figure.
func Work(j *job.Job, f *frame.Frame) (*SetOut, fault.List) {
	var faults fault.List
	s := &SetOut{Frame: frameRectangle(f), Piers: pierRectangle(f), Beams: beamRectangle(j, f), system: j.Units}
	tape := TapeError(j.Units)
	s.FrameLimits = DiagonalLimits(s.Frame, tape)
	s.PierLimits = DiagonalLimits(s.Piers, tape)
	s.Triangle = LargestTriangle(s.Frame, j.Units)
	s.Boards = BatterBoards(s.Frame, digBeyondFrame(j, f), j.Units)
	step, rows := measure.Inch/4, measure.Length(8)
	if j.Units == measure.Metric {
		step = 5 * measure.Millimetre
	}
	s.Racking = RackingTable(s.Frame, step, rows*step)
	for i := range s.Racking {
		s.Racking[i].FarBoard = s.Boards.AtFarBoard(s.Racking[i].Slide, s.Frame.Width)
	}
	s.BeamRacking = RackingTable(s.Beams, step, rows*step)
	s.Strings = measuredCheck(j, "measured.strings", j.Measured.Strings, s.Frame, &faults)
	s.Sides = measuredCheck(j, "measured.frame", j.Measured.FrameSides, s.measuredRectangle(j.Measured.FrameSides), &faults)
	return s, faults
}

// measuredRectangle returns what was measured after the beams: their outer
// corners, or the frame's outside faces where the lengths come nearer to these.
func (s *SetOut) measuredRectangle(lengths map[string]measure.Length) Rectangle {
	six, missing := pickSix(lengths, s.Beams)
	if len(missing) == 0 && misses(six, s.Frame) < misses(six, s.Beams) {
		return s.Frame
	}
	return s.Beams
}

// misses returns by how much the four measured sides miss a rectangle's.
func misses(six Six, r Rectangle) measure.Length {
	return (six[0] - r.Length).Abs() + (six[1] - r.Width).Abs() + (six[2] - r.Length).Abs() + (six[3] - r.Width).Abs()
}

func frameRectangle(f *frame.Frame) Rectangle {
	return Rectangle{Name: "frame", Title: "outside faces of the frame", Corners: cornerNames(f), Length: f.Length, Width: f.Width}
}

// pierRectangle is the rectangle of the corner piers' centres.
func pierRectangle(f *frame.Frame) Rectangle {
	c := f.Corners()
	return Rectangle{Name: "piers", Title: "centres of the corner piers", Corners: cornerNames(f), Length: c[1].X - c[0].X, Width: c[3].Y - c[0].Y}
}

// beamRectangle is what can be measured once the beams lie.
func beamRectangle(j *job.Job, f *frame.Frame) Rectangle {
	line := f.Lines[0]
	return Rectangle{Name: "beams", Title: "outer corners of the outer beams", Corners: cornerNames(f), Length: line.End - line.Start, Width: f.Width - 2*j.Frame.Beams.Inset}
}

func cornerNames(f *frame.Frame) [4]string {
	var names [4]string
	for i, p := range f.Corners() {
		names[i] = p.Name
	}
	return names
}

// digBeyondFrame returns how far the holes reach beyond the frame's faces.
func digBeyondFrame(j *job.Job, f *frame.Frame) measure.Length {
	half := (j.Block.Base + 2*j.Stone.Margin) / 2
	beyond := -f.Length
	for _, p := range f.Piers {
		inside := min(p.X, p.Y, f.Length-p.X, f.Width-p.Y)
		beyond = max(beyond, half-inside)
	}
	return beyond
}

func measuredCheck(j *job.Job, path string, lengths map[string]measure.Length, r Rectangle, faults *fault.List) *Check {
	if len(lengths) == 0 {
		return nil
	}
	six, missing := pickSix(lengths, r)
	for _, name := range missing {
		faults.Add(fault.Fault{At: j.At(path), Path: path,
			Wrong:  fmt.Sprintf("the length %s is missing", name),
			Remedy: "measure all four sides and both diagonals: " + allSix(r)})
	}
	if len(missing) > 0 {
		return nil
	}
	tape := TapeError(j.Units)
	adjustment, err := Adjust(six, tape)
	if err != nil {
		faults.Add(fault.Fault{At: j.At(path), Path: path, Wrong: err.Error(),
			Remedy: "look for a length that is a foot or a digit off, and measure again"})
		return nil
	}
	adjustment.nameSlips(j.Units)
	c := &Check{Path: path, Of: "strings", Rectangle: r, Adjustment: adjustment, Limits: DiagonalLimits(r, tape),
		Tolerance: staysWithin * tape, Difference: six[4] - six[5]}
	if path == "measured.frame" {
		c.Of = "beams"
	}
	c.Holds = adjustment.Holds(r, c.Tolerance)
	return c
}

// Squareness says what the difference of the diagonals means, with what a tape
// may hide kept on the safe side of both limits.
func (c *Check) Squareness() Squareness {
	switch off := c.Difference.Abs(); {
	case off <= c.Limits.Accept:
		return Square
	case off > c.Limits.Stop:
		return OutOfTrue
	}
	return Unsure
}

// First returns the diagonal from the hook corner, as measured.
func (c *Check) First() measure.Length { return c.Adjustment.Measured[4] }

// Second returns the other diagonal, as measured.
func (c *Check) Second() measure.Length { return c.Adjustment.Measured[5] }

// Slide returns how far the side opposite the held one slides to make the
// measured frame square, without sign.
func (c *Check) Slide() measure.Length {
	return Slide(c.Rectangle.Length, max(c.First(), c.Second()), min(c.First(), c.Second()))
}

// MayMove says whether corners may be moved by these readings: not when one of
// them is a mistake.
func (c *Check) MayMove() bool { return c.Adjustment.Verdict != Mistake }

// InPlace says whether one of the choices leaves every corner where it is.
func (c *Check) InPlace() bool {
	return slices.ContainsFunc(c.Holds[:], func(h Hold) bool { return h.Stay == len(h.Moves) })
}

// Parts returns a move's two distances, each 0 when it is less than one error of
// the tape, which cannot show it.
func (c *Check) Parts(m Move) (along, across measure.Length) {
	shown := func(part measure.Length) measure.Length {
		if part.Abs() <= c.Adjustment.Sigma {
			return 0
		}
		return part
	}
	return shown(m.Along), shown(m.Across)
}

// Checks returns the measurings that were made, strings before frame.
func (s *SetOut) Checks() []*Check {
	var made []*Check
	for _, c := range []*Check{s.Strings, s.Sides} {
		if c != nil {
			made = append(made, c)
		}
	}
	return made
}

// pickSix finds the six lengths under either order of their corners.
func pickSix(lengths map[string]measure.Length, r Rectangle) (six Six, missing []string) {
	for i, e := range ends {
		from, to := r.Corners[e[0]], r.Corners[e[1]]
		length, ok := lengths[from+"-"+to]
		if !ok {
			length, ok = lengths[to+"-"+from]
		}
		if !ok {
			missing = append(missing, SideName(r, i))
		}
		six[i] = length
	}
	return six, missing
}

// SideName returns the name of one of the six lengths of a rectangle, such as
// A1-A5, in the order of [Six].
func SideName(r Rectangle, i int) string {
	return r.Corners[ends[i][0]] + "-" + r.Corners[ends[i][1]]
}

func allSix(r Rectangle) string {
	text := ""
	for i := range ends {
		if i > 0 {
			text += ", "
		}
		text += SideName(r, i)
	}
	return text
}

// AlongTowards names the corner towards which corner i goes along the length.
func (c *Check) AlongTowards(i int, m Move) string {
	return c.towards(i, m.Along, [4]int{1, 1, 2, 2}, [4]int{0, 0, 3, 3})
}

// AcrossTowards names the corner towards which corner i goes across.
func (c *Check) AcrossTowards(i int, m Move) string {
	return c.towards(i, m.Across, [4]int{3, 2, 2, 3}, [4]int{0, 1, 1, 0})
}

// towards names the corner at the growing or the falling end of a side, or says
// that the stake goes outward, away from the corner at its other end.
func (c *Check) towards(i int, move measure.Length, growing, falling [4]int) string {
	to, from := growing[i], falling[i]
	if move < 0 {
		to, from = from, to
	}
	if to == i {
		return "away from " + c.Rectangle.Corners[from]
	}
	return c.Rectangle.Corners[to]
}
