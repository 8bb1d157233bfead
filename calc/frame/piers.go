package frame

import (
	"fmt"
	"strconv"

	"pierbook/calc/measure"
)

// mostPiers bounds the piers under one line; splices are kept as bits of a word.
const mostPiers = 60

// piers places the piers under every line alike.
//
//	x(i) = first + i (last − first) / (piers − 1)
//
// First and last stand half a post from the beam's ends unless the job says
// otherwise. Under a greatest spacing s there are as few as keep it.
func (l *layout) piers() {
	f, wish := l.frame, l.job.Frame.Piers
	half := f.Sections.Post.Width / 2
	start, end := f.Lines[0].Start, f.Lines[0].End
	first, last := start+orElse(wish.First, half), end-orElse(wish.Last, half)
	if !l.outerPiers(first, last, start, end) {
		return
	}
	perLine := l.perLine(last - first)
	if perLine == 0 {
		return
	}
	f.Piers = make([]Pier, 0, perLine*len(f.Lines))
	for i, line := range f.Lines {
		for n := range perLine {
			f.Piers = append(f.Piers, Pier{
				Name: line.Name + strconv.Itoa(n+1), Line: i, Number: n + 1,
				X: first + (last-first).Part(n, perLine-1), Y: line.Y,
			})
		}
	}
}

func orElse(given *measure.Length, usual measure.Length) measure.Length {
	if given != nil {
		return *given
	}
	return usual
}

// outerPiers checks where the first and last pier are to stand.
func (l *layout) outerPiers(first, last, start, end measure.Length) bool {
	for _, outer := range []struct {
		path string
		from measure.Length
	}{{"frame.piers.first", first - start}, {"frame.piers.last", end - last}} {
		if outer.from < 0 {
			l.wrong(outer.path, "write 0 or more: it counts from the beam's end inwards", "%s puts the pier past the beam's end", l.say(outer.from))
		}
	}
	if last <= first {
		l.wrong("platform.length", "make the platform longer, or move the outer piers outwards",
			"a beam %s long has no room for two piers", l.say(end-start))
	}
	return l.faults.Empty()
}

// perLine returns how many piers stand under a line, 0 after a fault.
func (l *layout) perLine(reach measure.Length) int {
	wish := l.job.Frame.Piers
	n, path := wish.PerLine, "frame.piers.per_line"
	if n == 0 && wish.Spacing > 0 {
		path = "frame.piers.spacing"
		n = int(min((reach+wish.Spacing-1)/wish.Spacing, mostPiers)) + 1
	}
	base := l.job.Block.Base
	switch {
	case n < 2:
		l.wrong(path, "write 2 or more, or a spacing", "%d piers cannot hold a beam", n)
		return 0
	case n > mostPiers:
		l.wrong(path, fmt.Sprintf("write %d or fewer", mostPiers), "%d piers under one line are more than can be laid out", n)
		return 0
	case base > 0 && reach.Part(1, n-1) < base:
		l.wrong(path, fmt.Sprintf("write %d or fewer: the blocks are %s wide", int(reach/base)+1, l.say(base)),
			"%d piers stand %s apart, closer than the block is wide", n, l.say(reach.Part(1, n-1)))
		return 0
	case base > 0 && reach.Part(1, n-1) < l.hole():
		l.wrong(path, fmt.Sprintf("write %d or fewer, or less stone.margin: the holes are %s wide", int(reach/l.hole())+1, l.say(l.hole())),
			"%d piers stand %s apart, and the holes under them overlap", n, l.say(reach.Part(1, n-1)))
		return 0
	}
	return n
}

// hole returns the side of the hole under a pier: the block and the stone beside
// it. Where holes keep clear of each other so do the beds in them, and no soil
// carries two piers.
func (l *layout) hole() measure.Length { return l.job.Block.Base + 2*l.job.Stone.Margin }

// tributaries shares the floor out to the piers: each takes half of the bays
// beside it, the outer ones all that lies beyond them. The borders between
// neighbours are worked from the origin, so the shares add up to the floor exactly.
func (l *layout) tributaries() {
	f := l.frame
	perLine := len(f.Piers) / len(f.Lines)
	for i := range f.Piers {
		p := &f.Piers[i]
		near, far := measure.Length(0), f.Length
		if p.Number > 1 {
			near = middle(f.Piers[i-1].X, p.X)
		}
		if p.Number < perLine {
			far = middle(p.X, f.Piers[i+1].X)
		}
		p.TributaryLength = far - near
		near, far = 0, f.Width
		if p.Line > 0 {
			near = middle(f.Lines[p.Line-1].Y, p.Y)
		}
		if p.Line < len(f.Lines)-1 {
			far = middle(p.Y, f.Lines[p.Line+1].Y)
		}
		p.TributaryWidth = far - near
	}
}

func middle(a, b measure.Length) measure.Length { return a + (b-a)/2 }
