package frame

import (
	"fmt"
	"strconv"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// joists lays the joists: first where they stand along the length, then how far
// each reaches across it.
func (l *layout) joists() {
	if !l.joistsFit() {
		return
	}
	f := l.frame
	near := joistMarks(f.Length, f.Sections.Joist.Width, l.job.Frame.Joists.Spacing)
	for i := 1; i < len(near); i++ {
		f.WidestBay = max(f.WidestBay, near[i]-near[i-1])
	}
	bays := l.bays()
	f.Joists = make([]Joist, 0, len(near)*len(bays))
	for _, b := range bays {
		for i, at := range near {
			f.Joists = append(f.Joists, l.joist(i, at, b, len(bays) > 1))
		}
	}
	l.adviseWideBay()
	l.joistsPastBeams()
	l.joistStock()
}

func (l *layout) joist(i int, near measure.Length, b bay, many bool) Joist {
	thick := l.frame.Sections.Joist.Width
	name := "J" + strconv.Itoa(i+1)
	if many {
		name += "/" + strconv.Itoa(b.number)
	}
	line := l.frame.Lines[0]
	return Joist{
		Name: name, Number: i + 1, Bay: b.number,
		Near: near, Centre: near + thick/2, MarkSide: "beyond",
		From: b.from, To: b.to, Overhang: b.overhang,
		BeyondBeams: near+thick <= line.Start || near >= line.End,
	}
}

// leastClear is the least gap between the last two joists: less than half an
// inch is no gap to build. Common practice, no source.
const leastClear = measure.Inch / 2

// joistMarks returns the running marks, the near faces of the joists along x:
//
//	0;  k × spacing − thickness/2 for k = 1, 2, …;  length − thickness
//
// so that centres count from the frame end and the outer faces of the first and
// last joist are the frame's ends. Every joist stands beyond its mark. The last
// running joist is left out where it would overlap the end joist or leave less
// than [leastClear] between them.
func joistMarks(length, thick, spacing measure.Length) []measure.Length {
	last := length - thick
	near := make([]measure.Length, 1, int(last/spacing)+2)
	for k := measure.Length(1); ; k++ {
		mark := k*spacing - thick/2
		if mark+thick+leastClear > last {
			break
		}
		near = append(near, mark)
	}
	return append(near, last)
}

// joistsFit refuses joists that would touch one another.
func (l *layout) joistsFit() bool {
	thick, spacing := l.frame.Sections.Joist.Width, l.job.Frame.Joists.Spacing
	switch {
	case spacing < 2*thick:
		l.wrong("frame.joists.spacing", fmt.Sprintf("write %s or more", l.sayUp(2*thick)), "joists %s thick overlap or touch at %s", l.say(thick), l.say(spacing))
	case l.frame.Length < 3*thick:
		l.wrong("platform.length", fmt.Sprintf("write far more than %s", l.say(3*thick)), "%s has no room for two joists", l.say(l.frame.Length))
	default:
		return true
	}
	return false
}

// bay is a strip across which joists reach in one piece.
type bay struct {
	number   int
	from, to measure.Length
	overhang bool
}

// bays returns the strips by rising y. Joists on beams have one, from rim to
// rim. Joists between beams have one between each pair of neighbours, all of one
// length (the least of them, should the last nanometre differ), and where the
// outer beams stand in from the rims a short one at each side, bay 0 and the last.
func (l *layout) bays() []bay {
	f, rim := l.frame, l.rimThickness()
	if !l.between() {
		return []bay{{number: 1, from: rim, to: f.Width - rim}}
	}
	half := f.Sections.Beam.Across() / 2
	var bays []bay
	inset := l.job.Frame.Beams.Inset
	if inset > rim {
		bays = append(bays, bay{number: 0, from: rim, to: inset, overhang: true})
	}
	clear := f.Width
	for i := 1; i < len(f.Lines); i++ {
		clear = min(clear, f.Lines[i].Y-f.Lines[i-1].Y-2*half)
	}
	for i := 1; i < len(f.Lines); i++ {
		from := f.Lines[i-1].Y + half
		bays = append(bays, bay{number: i, from: from, to: from + clear})
	}
	if inset > rim {
		bays = append(bays, bay{number: len(f.Lines), from: f.Width - inset, to: f.Width - rim, overhang: true})
	}
	return bays
}

// adviseWideBay tells when leaving a joist out made the last bay wider than the spacing.
func (l *layout) adviseWideBay() {
	f, spacing := l.frame, l.job.Frame.Joists.Spacing
	if f.WidestBay <= spacing {
		return
	}
	saying := fmt.Sprintf("The last two joists stand %s apart by centre, more than the spacing of %s, since there is no room for one between them. A length of %s brings them to the spacing.",
		l.say(f.WidestBay), l.say(spacing), l.sayDown(f.Length-(f.WidestBay-spacing)))
	if rating := trade.RatedSpacing(l.job.Platform.Surface.SpanRating); l.job.Platform.Surface.Kind == "panels" && rating > 0 && f.WidestBay > rating {
		saying += fmt.Sprintf(" It is also more than the span rating of the panels, %s.", l.say(rating))
	}
	l.advise("platform.length", "%s", saying)
}

// joistsPastBeams looks at end joists that the beams, set back, do not reach.
func (l *layout) joistsPastBeams() {
	back, thick := l.job.Frame.Beams.SetBack, l.frame.Sections.Joist.Width
	switch {
	case back == 0:
	case l.between() && back >= thick:
		l.wrong("frame.beams.set_back", "write 0: joists between beams hang from their sides", "beams set back by %s leave the end joists nothing to hang from", l.say(back))
	case back >= thick: // the rims carry them: that is checked
	default:
		l.unsettled("frame.beams.set_back", "The beams end %s inside the frame: the end joists, %s thick, do not bear on them with their whole thickness.", l.say(back), l.say(thick))
	}
}

// joistStock checks that a joist can be had in one piece.
func (l *layout) joistStock() {
	stock, known := l.stock(l.frame.Sections.Joist)
	longest, joist := stock[len(stock)-1], l.frame.longestJoist()
	if joist <= longest {
		return
	}
	free := fmt.Sprintf("list a stock length of %s or more in the yard, make the platform narrower, or let the joists sit between_beams", l.sayUp(joist+l.job.Yard.EndTrim))
	if !known {
		l.advise("frame.joists", "A joist is %s long; ask the yard whether %s is sold that long before anything else is ordered.", l.say(joist), nameOr(l.frame.Sections.Joist, "its size"))
		return
	}
	l.wrong("frame.joists.size", free, "a joist is %s long and the longest %s in the yard gives %s", l.say(joist), nameOr(l.frame.Sections.Joist, "stick"), l.sayDown(longest))
}

func (f *Frame) longestJoist() measure.Length {
	var longest measure.Length
	for _, j := range f.Joists {
		longest = max(longest, j.Long())
	}
	return longest
}
