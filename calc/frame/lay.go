package frame

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Lay lays the whole platform out: the skeleton, the surface on it, the blocking
// that the surface wants, the openings in it, and the advice. The frame is nil when there is a fault.
//
// The sections must be resolved: a section, a spacing or a number that is still
// to be picked is a fault. A search over sizes sets them in a copy of the job and
// calls [Skeleton], which leaves surface, blocking and advice on sizes out.
func Lay(j *job.Job) (*Frame, fault.List) {
	f, faults := Skeleton(j)
	if f == nil {
		return nil, faults
	}
	l := layout{job: j, frame: f, faults: faults}
	l.surface()
	if !l.faults.Empty() {
		return l.result()
	}
	l.blocking()
	l.openings()
	l.savings()
	return l.result()
}

// Skeleton lays out all that carries the surface: lines, beams with their
// splices, piers with what they carry, rims and joists. The frame is nil when
// there is a fault.
func Skeleton(j *job.Job) (*Frame, fault.List) {
	l := layout{job: j, frame: &Frame{Length: j.Platform.Length, Width: j.Platform.Width}}
	l.sections()
	if !l.faults.Empty() {
		return l.result()
	}
	l.lines()
	if !l.faults.Empty() {
		return l.result()
	}
	l.piers()
	if !l.faults.Empty() {
		return l.result()
	}
	l.tributaries()
	l.splices()
	l.joists()
	if !l.faults.Empty() {
		return l.result()
	}
	l.rims()
	return l.result()
}

// layout is a frame in the making.
type layout struct {
	job    *job.Job
	frame  *Frame
	faults fault.List
}

func (l *layout) result() (*Frame, fault.List) {
	if !l.faults.Empty() {
		return nil, l.faults
	}
	return l.frame, l.faults
}

// wrong puts a fault at the place of a key.
func (l *layout) wrong(path, remedy, format string, values ...any) {
	l.faults.Add(fault.Fault{At: l.job.At(path), Path: path, Wrong: fmt.Sprintf(format, values...), Remedy: remedy})
}

func (l *layout) advise(path, format string, values ...any) {
	l.frame.Advice = append(l.frame.Advice, Advice{Path: path, Saying: fmt.Sprintf(format, values...)})
}

// unsettled tells of what the checks take on trust.
func (l *layout) unsettled(path, format string, values ...any) {
	l.frame.Advice = append(l.frame.Advice, Advice{Path: path, Saying: fmt.Sprintf(format, values...), Standing: "not counted"})
}

// others tells of what somebody else has to provide.
func (l *layout) others(path, format string, values ...any) {
	l.frame.Advice = append(l.frame.Advice, Advice{Path: path, Saying: fmt.Sprintf(format, values...), Standing: "by others"})
}

// say prints a length as the job prints it, to the nearest mark.
func (l *layout) say(length measure.Length) string { return length.Print(l.job.Style()) }

// leastBearing is how much of a member's end must lie on wood or metal.
func (l *layout) leastBearing() measure.Length { return trade.BearingLeast.In(l.job.Units) }

// sayDown and sayUp print a bound so that the printed figure keeps it.
func (l *layout) sayDown(length measure.Length) string {
	style := l.job.Style()
	style.Rounding = measure.Down
	return length.Print(style)
}

func (l *layout) sayUp(length measure.Length) string {
	style := l.job.Style()
	style.Rounding = measure.Up
	return length.Print(style)
}

// between says whether the joists hang between the beams, tops flush.
func (l *layout) between() bool { return l.job.Frame.Joists.Sit == "between_beams" }

// hasRims says whether a rim runs along the long sides: not where joists hang
// between beams that are themselves the sides.
func (l *layout) hasRims() bool { return !l.between() || l.job.Frame.Beams.Inset > 0 }

// rimThickness is the rim's width, 0 without rims.
func (l *layout) rimThickness() measure.Length {
	if !l.hasRims() {
		return 0
	}
	return l.frame.Sections.Rim.Width
}
