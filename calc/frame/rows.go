package frame

import "pierbook/calc/measure"

// floor is what the cutting up of a floor into panels depends on.
type floor struct {
	length, width   measure.Length
	face, faceWidth measure.Length // of a whole sheet, along x and y
	gap, kerf       measure.Length
	near            []measure.Length // faces of the joists
	thick           measure.Length   // of a joist
	bays            int              // a piece covers at least so many
	mates           bool             // long edges with tongue and groove
	hold            measure.Length   // of a joist that the end of a panel must cover
	narrow          measure.Length   // panel that carries a floor between joists, its edges free
	edgeRest        measure.Length   // how wide the rim or beam under the last long edge is
	mark            measure.Length   // finest of the tape
}

// cut is one piece in a row: from and to along x, and the joist under its far
// end, 0 at the end of the row.
type cut struct {
	from, to measure.Length
	joist    int
}

// end returns where a panel that begins at x ends on a joist: a whole sheet when
// both ends at the joint keep their hold on the joist, else cut so that the gap
// is over the joist's middle. It returns false when no sheet is long enough.
func (p *floor) end(x measure.Length, joist int) (measure.Length, bool) {
	near, whole := p.near[joist], x+p.face
	hold := min(p.hold, (p.thick-p.gap)/2)
	if near+hold <= whole && whole+p.gap <= near+p.thick-hold {
		return whole, true
	}
	middle := near + p.thick/2 - p.gap/2
	return middle, middle <= whole
}

// row cuts a row of panels whose first joint is over the given joist, each later
// panel as long as it can be. Every piece covers the bays asked for; a row that
// cannot do that is no row. What is left within one gap of the end stays open.
func (p *floor) row(first int) ([]cut, bool) {
	last := len(p.near) - 1
	var cuts []cut
	x, at := measure.Length(0), 0
	for p.length-x > p.face+p.gap {
		joist := first
		if at > 0 {
			joist = p.farthest(x, at)
		}
		joist = min(joist, last-p.bays)
		to, reached := p.end(x, joist)
		if joist-at < p.bays || !reached {
			return nil, false
		}
		cuts = append(cuts, cut{from: x, to: to, joist: joist})
		x, at = to+p.gap, joist
	}
	return append(cuts, cut{from: x, to: min(p.length, x+p.face)}), true
}

// farthest returns the last joist that a panel beginning at x over joist at can end on.
func (p *floor) farthest(x measure.Length, at int) int {
	far := at
	for i := at + 1; i < len(p.near); i++ {
		if _, reached := p.end(x, i); !reached {
			break
		}
		far = i
	}
	return far
}

// rows returns the different ways of cutting a row, the longest first piece first.
func (p *floor) rows() [][]cut {
	if p.length <= p.face+p.gap {
		return [][]cut{{{to: min(p.length, p.face)}}}
	}
	var ways [][]cut
	for first := p.farthest(0, 0); first >= p.bays; first-- {
		if way, ok := p.row(first); ok && !sameAsLast(ways, way) {
			ways = append(ways, way)
		}
	}
	return ways
}

func sameAsLast(ways [][]cut, way []cut) bool {
	return len(ways) > 0 && ways[len(ways)-1][0].joist == way[0].joist
}

// stepBetween returns how many joists the end joints of two rows stay apart, most
// when there is nothing to keep apart.
func stepBetween(a, b []cut, most int) int {
	step := most
	for _, i := range a[:len(a)-1] {
		for _, k := range b[:len(b)-1] {
			step = min(step, max(i.joist-k.joist, k.joist-i.joist))
		}
	}
	return step
}

// rowWidths returns the widths of the rows across the floor, from y = 0. What
// would remain within one gap of the far side stays open. A last row too narrow
// to be laid shares the narrowing with the first: both are ripped to half of what
// the two measure together, the first to a whole mark.
//
//	rows = ⌈(width + gap) / (face width + gap)⌉
//	last = width − (rows − 1) (face width + gap)
func (p *floor) rowWidths() []measure.Length {
	pitch := p.faceWidth + p.gap
	whole := int((p.width + p.gap) / pitch)
	widths := make([]measure.Length, whole, whole+1)
	for i := range widths {
		widths[i] = p.faceWidth
	}
	last := p.width - measure.Length(whole)*pitch
	if last <= 0 {
		return widths
	}
	widths = append(widths, last)
	if whole > 0 && last < p.narrowest() {
		both := p.faceWidth + last
		widths[0] = both.Part(1, 2).RoundTo(p.mark)
		widths[whole] = both - widths[0]
	}
	return widths
}

// across returns how many strips of a ripped row come side by side from one
// sheet. A strip that has to mate with the row before needs the sheet's own
// edge, so there is one; not so when it lies wholly on the rim or beam.
func (p *floor) across(width measure.Length) int {
	if p.mates && width+p.gap > p.edgeRest {
		return 1
	}
	return int((p.faceWidth + p.kerf) / (width + p.kerf))
}
