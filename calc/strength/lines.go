package strength

import (
	"cmp"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// plyResult is one ply of a beam: it runs on between its own splices and takes
// its share of the line's load. Plies that are spliced alike are worked once.
type plyResult struct {
	gauge  *statics.Gauge
	hinges []bool
	count  int // plies alike
	cases  [caseCount]statics.Envelope
	live   statics.Field // whole live load, for the sums
}

// lineResult is one beam line with what its loads do to it.
type lineResult struct {
	line      int
	load      onLine
	plies     []plyResult
	reactions [caseCount]struct{ most, least, whole []float64 } // by pier along the line
}

// carry works out every beam line.
func (c *checker) carry() bool {
	loads := c.lineLoads()
	for i := range c.frame.Lines {
		l, ok := c.workLine(i, loads[i])
		if !ok {
			return false
		}
		c.lines = append(c.lines, l)
	}
	return true
}

// carryHeaviestFirst works and checks the lines by falling load and stops at the
// first that fails; those after it are left out.
func (c *checker) carryHeaviestFirst() bool {
	loads := c.lineLoads()
	order := make([]int, len(loads))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(loads[b].liveMost, loads[a].liveMost) })
	for _, i := range order {
		l, ok := c.workLine(i, loads[i])
		if !ok {
			return false
		}
		c.lines = append(c.lines, l)
		c.checkLine(&c.lines[len(c.lines)-1])
		if c.failed {
			return true
		}
	}
	slices.SortFunc(c.lines, func(a, b lineResult) int { return cmp.Compare(a.line, b.line) })
	return true
}

func (c *checker) workLine(index int, load onLine) (lineResult, bool) {
	l := lineResult{line: index, load: load}
	r := c.beamRun(index)
	marks := pointPlaces(load, r)
	for _, ply := range c.frame.Lines[index].Plies {
		hinges := r.Joints(spliceMarks(ply))
		if at := slices.IndexFunc(l.plies, func(p plyResult) bool { return slices.Equal(p.hinges, hinges) }); at >= 0 {
			l.plies[at].count++
			continue
		}
		jointed := r
		jointed.Hinges = hinges
		g, err := c.store.Of(jointed, marks)
		if err != nil {
			c.wrong("frame.piers.per_line", "a piece of beam "+c.frame.Lines[index].Name+" has fewer than two piers under it", "write 2 or more piers per line, and splice over piers")
			return l, false
		}
		l.plies = append(l.plies, plyResult{gauge: g, hinges: hinges, count: 1})
	}
	for i := range l.plies {
		c.loadPly(&l.plies[i], load, len(c.frame.Lines[index].Plies))
	}
	l.sum(len(r.Supports))
	return l, true
}

func spliceMarks(ply frame.Ply) []measure.Length {
	var joints []measure.Length
	for _, piece := range ply.Pieces[1:] {
		joints = append(joints, piece.From)
	}
	return joints
}

// pointPlaces returns where point loads stand on a line, rising.
func pointPlaces(load onLine, r statics.Run) []float64 {
	var places []float64
	for _, list := range load.fixed {
		for _, p := range list {
			if p.IsPoint() && p.From > r.Start && p.From < r.End && !slices.Contains(places, p.From) {
				places = append(places, p.From)
			}
		}
	}
	slices.Sort(places)
	return places
}

// loadPly puts one ply's share of the line's load on it.
func (c *checker) loadPly(p *plyResult, load onLine, plies int) {
	share := 1 / float64(plies)
	for kind, list := range load.fixed {
		if len(list) == 0 {
			continue
		}
		p.cases[kind] = p.gauge.Empty()
		p.fixed(p.cases[kind], list, share)
	}
	if b := p.cases[buildingCase]; b.Most.Shear != nil {
		b.Lighter(c.lightShare())
	}
	live := p.gauge.Empty()
	for _, u := range p.gauge.Unit {
		live.Patterned(u, load.liveMost*share)
		live.Patterned(u, load.liveLeast*share)
	}
	p.live = p.gauge.NewField()
	p.live.Add(p.gauge.Whole, load.liveAll*share)
	outside := p.gauge.Run.Outside(c.frame.Length.Metres())
	for _, at := range outside {
		f := p.gauge.Under([]statics.Push{{From: at.From, To: at.From, Size: at.Size * share}})
		live.Patterned(f, load.liveMost)
		p.live.Add(f, load.liveAll)
	}
	for _, patch := range load.patches {
		f := p.gauge.Under(p.gauge.Run.Inside(patch))
		live.Patterned(f, share)
		p.live.Add(f, share)
	}
	p.cases[liveCase] = live
}

// fixed adds loads that are there all along their length: those over the whole
// run by the prepared fields, the rest solved for.
func (p *plyResult) fixed(e statics.Envelope, list []statics.Push, share float64) {
	var rest []statics.Push
	r := p.gauge.Run
	for _, l := range list {
		for _, in := range r.Inside(l) {
			if in.From == r.Start && in.To == r.End {
				e.Always(p.gauge.Whole, in.Size*share)
				continue
			}
			rest = append(rest, in)
		}
	}
	if len(rest) > 0 {
		e.Always(p.gauge.Under(rest), share)
	}
}

// sum adds the plies' reactions up.
func (l *lineResult) sum(piers int) {
	for kind := range l.reactions {
		r := &l.reactions[kind]
		r.most, r.least, r.whole = make([]float64, piers), make([]float64, piers), make([]float64, piers)
		for _, p := range l.plies {
			if p.cases[kind].Most.Shear == nil {
				continue
			}
			most, least := p.cases[kind].Most.Reactions, p.cases[kind].Least.Reactions
			for i := range piers {
				all := statics.Whole(most[i], least[i])
				if loadCase(kind) == liveCase {
					all = p.live.Reactions[i]
				}
				r.most[i] += most[i] * float64(p.count)
				r.least[i] += least[i] * float64(p.count)
				r.whole[i] += all * float64(p.count)
			}
		}
	}
}
