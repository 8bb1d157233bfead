package frame

import (
	"fmt"

	"pierbook/calc/measure"
)

// lineLetters name the beam lines: no I and no O, which read as 1 and 0.
const lineLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

// lineName returns the name of the i-th line, from 0: A … Z, then AA, AB …
func lineName(i int) string {
	n := len(lineLetters)
	if i < n {
		return lineLetters[i : i+1]
	}
	return lineName(i/n-1) + lineLetters[i%n:i%n+1]
}

// lines places the beams across the width: the outer face of the first and the
// last is inset from the frame side, the others are equally spaced by centre.
//
//	y(i) = first + i (last − first) / (lines − 1),  first = inset + beam/2,  last = width − first
func (l *layout) lines() {
	f, beams := l.frame, l.job.Frame.Beams
	across := f.Sections.Beam.Across()
	if beams.Lines < 2 {
		l.wrong("frame.beams.lines", "write 2 or more", "%d beam lines cannot hold a platform level", beams.Lines)
		return
	}
	start, end := beams.SetBack, f.Length-beams.SetBack
	if end <= start {
		l.wrong("frame.beams.set_back", fmt.Sprintf("the platform is %s long: set the beams back by far less than half of that", l.say(f.Length)),
			"%s at each end leaves no beam", l.say(beams.SetBack))
	}
	first := beams.Inset + across/2
	reach := f.Width - 2*first
	if l.linesCollide(reach, across) {
		return
	}
	f.Lines = make([]Line, beams.Lines)
	for i := range f.Lines {
		f.Lines[i] = Line{Name: lineName(i), Y: first + reach.Part(i, beams.Lines-1), Start: start, End: end}
	}
	l.joistsMeetBeams(across)
}

// linesCollide faults beams that overlap, and blocks or holes that do.
func (l *layout) linesCollide(reach, across measure.Length) bool {
	lines := l.job.Frame.Beams.Lines
	apart := reach.Part(1, lines-1)
	base := l.job.Block.Base
	switch {
	case reach <= 0 || apart <= across:
		l.wrong("frame.beams.lines", "take fewer lines, a smaller inset or a wider platform",
			"%d beams %s wide overlap or touch within %s", lines, l.say(across), l.say(l.frame.Width))
	case apart < base:
		l.wrong("frame.beams.lines", fmt.Sprintf("take fewer lines: blocks %s wide need lines at least that far apart", l.say(base)),
			"%d lines stand %s apart, closer than the block is wide", lines, l.say(apart))
	case apart < l.hole():
		l.wrong("frame.beams.lines", fmt.Sprintf("take fewer lines or less stone.margin: holes %s wide need lines at least that far apart", l.say(l.hole())),
			"%d lines stand %s apart, and the holes under them overlap", lines, l.say(apart))
	default:
		return false
	}
	return true
}

// joistsMeetBeams checks that joists on beams reach far enough over the outer
// beams, behind the rim: bearing = inset + beam − the greater of rim and inset.
func (l *layout) joistsMeetBeams(across measure.Length) {
	if l.between() {
		return
	}
	inset, rim := l.job.Frame.Beams.Inset, l.frame.Sections.Rim.Width
	bearing := inset + across - max(inset, rim)
	free := fmt.Sprintf("set the beams in by %s or take a wider beam", l.sayUp(max(0, rim+l.leastBearing()-across)))
	if bearing <= 0 {
		l.wrong("frame.beams.inset", free, "the joists end behind the rim and miss the outer beam, %s wide", l.say(across))
	}
}
