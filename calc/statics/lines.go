package statics

import (
	"cmp"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// Beside is how near to a support a beam that is loaded on its side has a station
// on the left of it, in metres: at the support itself a load over it shows.
const Beside = 1e-6

// LoadedPly is one ply of a beam: it runs on between its own splices and takes
// its share of the line's load. Plies that are spliced alike are worked once.
type LoadedPly struct {
	Bar
	hinges []bool
	count  int    // plies alike
	live   Effect // whole live load, for the sums
}

// LoadedLine is one beam line with what its loads do to it.
type LoadedLine struct {
	Line      int
	Load      OnLine
	Plies     []LoadedPly
	Reactions [loads.CaseCount]struct{ Most, Least, Whole []float64 } // by pier along the line
}

// HeaviestFirst returns the order of the lines by falling live load.
func HeaviestFirst(lines []OnLine) []int {
	order := make([]int, len(lines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(lines[b].LiveMost, lines[a].LiveMost) })
	return order
}

// CarryLine works one beam line out under its load. It fails where a piece of
// the beam has fewer than two piers under it.
func (x *Floor) CarryLine(index int, load OnLine, store *Gauges) (LoadedLine, error) {
	l := LoadedLine{Line: index, Load: load}
	r := x.beamRun(index)
	marks := pointPlaces(load, r)
	var borders []float64
	for _, p := range load.Patches {
		borders = append(borders, p.From, p.To)
	}
	if x.Between { // the shear of a beam loaded on its side counts right beside its supports
		for _, at := range r.Supports {
			borders = append(borders, at-Beside)
		}
	}
	plies := x.Frame.Lines[index].Plies
	for _, ply := range plies {
		hinges := r.Joints(spliceMarks(ply))
		if at := slices.IndexFunc(l.Plies, func(p LoadedPly) bool { return slices.Equal(p.hinges, hinges) }); at >= 0 {
			l.Plies[at].count++
			continue
		}
		jointed := r
		jointed.Hinges = hinges
		g, err := store.Of(jointed, marks, borders...)
		if err != nil {
			return l, err
		}
		bar := x.beamBar(index, g)
		l.Plies = append(l.Plies, LoadedPly{Bar: bar, hinges: hinges, count: 1})
	}
	for i := range l.Plies {
		l.Plies[i].put(load, len(plies), x.Loads.LightShare, x.Frame.Length.Metres())
	}
	l.sum(len(r.Supports))
	return l, nil
}

// beamRun returns the run of a line's beam. An outer one whose rim stands out past it
// runs on under the rim: what hangs there turns on the end of the beam.
func (x *Floor) beamRun(index int) Run {
	r := BeamRun(x.Frame, index)
	if index > 0 && index < len(x.Frame.Lines)-1 {
		return r
	}
	near, far := x.Hung()
	if near > 0 {
		r.Start = 0
	}
	if far > 0 {
		r.End = x.Frame.Length.Metres()
	}
	return r
}

// beamBar returns a ply of a line without its loads.
func (x *Floor) beamBar(index int, g *Gauge) Bar {
	line, section := x.Frame.Lines[index], x.Frame.Sections.Beam
	what, held := "beam "+line.Name, "the joists on it"
	if section.Plies > 1 {
		what = "a ply of beam " + line.Name
	}
	if x.Between {
		held = "the joists beside it"
	}
	bar := newBar("beam."+line.Name, what, g, section.Width, section.Depth, section.Across(), held)
	bar.SideLoaded = x.Between
	bar.start, bar.end = line.Start.Metres(), line.End.Metres()
	return bar
}

func spliceMarks(ply frame.Ply) []measure.Length {
	var joints []measure.Length
	for _, piece := range ply.Pieces[1:] {
		joints = append(joints, piece.From)
	}
	return joints
}

// pointPlaces returns where point loads stand on a line, rising.
func pointPlaces(load OnLine, r Run) []float64 {
	var places []float64
	for _, list := range load.Fixed {
		for _, p := range list {
			if p.IsPoint() && p.From > r.Start && p.From < r.End && !slices.Contains(places, p.From) {
				places = append(places, p.From)
			}
		}
	}
	slices.Sort(places)
	return places
}

// put puts the ply's share of the line's load on it, where the building may weigh
// as little as a share of its most and the floor is so long.
func (p *LoadedPly) put(load OnLine, plies int, lightShare, length float64) {
	share := 1 / float64(plies)
	for kind, list := range load.Fixed {
		if len(list) == 0 {
			continue
		}
		p.Cases[kind] = p.Gauge.Empty()
		p.fixed(p.Cases[kind], list, share)
	}
	if b := p.Cases[loads.BuildingCase]; b.Most.Shear != nil {
		b.Lighter(lightShare)
	}
	live := p.Gauge.Empty()
	for _, u := range p.Gauge.Unit {
		live.Patterned(u, load.LiveMost*share)
		live.Patterned(u, load.LiveLeast*share)
	}
	p.live = p.Gauge.NewEffect()
	p.live.Add(p.Gauge.Whole, load.LiveAll*share)
	outside := p.Gauge.Run.Outside(length)
	for _, at := range outside {
		f := p.Gauge.Under([]Push{{From: at.From, To: at.From, Size: at.Size * share}})
		live.Patterned(f, load.LiveMost)
		live.Patterned(f, load.LiveLeast)
		p.live.Add(f, load.LiveAll)
	}
	for _, push := range load.ByRims {
		for _, part := range p.Gauge.Parts {
			if from, to := max(push.From, part.From), min(push.To, part.From+part.Long); from < to {
				f := p.Gauge.Under([]Push{{From: from, To: to, Size: push.Size * share}})
				live.Patterned(f, 1)
			}
		}
	}
	for _, push := range load.Moved {
		p.live.Add(p.Gauge.Under(p.Gauge.Run.Inside(push)), share)
	}
	for _, patch := range load.Patches {
		f := p.Gauge.Under(p.Gauge.Run.Inside(patch))
		live.Patterned(f, share)
		p.live.Add(f, share)
	}
	p.Cases[loads.LiveCase] = live
}

// fixed adds loads that are there all along their length: those over the whole
// run by the prepared effects, the rest solved for.
func (p *LoadedPly) fixed(e Envelope, list []Push, share float64) {
	var rest []Push
	r := p.Gauge.Run
	for _, l := range list {
		for _, in := range r.Inside(l) {
			if in.From == r.Start && in.To == r.End {
				e.Always(p.Gauge.Whole, in.Size*share)
				continue
			}
			rest = append(rest, in)
		}
	}
	if len(rest) > 0 {
		e.Always(p.Gauge.Under(rest), share)
	}
}

// sum adds the plies' reactions up.
func (l *LoadedLine) sum(piers int) {
	for kind := range l.Reactions {
		r := &l.Reactions[kind]
		r.Most, r.Least, r.Whole = make([]float64, piers), make([]float64, piers), make([]float64, piers)
		for _, p := range l.Plies {
			if p.Cases[kind].Most.Shear == nil {
				continue
			}
			most, least := p.Cases[kind].Most.Reactions, p.Cases[kind].Least.Reactions
			for i := range piers {
				all := Whole(most[i], least[i])
				if loads.Case(kind) == loads.LiveCase {
					all = p.live.Reactions[i]
				}
				r.Most[i] += most[i] * float64(p.count)
				r.Least[i] += least[i] * float64(p.count)
				r.Whole[i] += all * float64(p.count)
			}
		}
	}
}

// Bars returns the plies to check, each kind once.
func (l *LoadedLine) Bars() []Bar {
	bars := make([]Bar, len(l.Plies))
	for i := range l.Plies {
		bars[i] = l.Plies[i].Bar
	}
	return bars
}

// Heavier lets the own weight of the floor and the line grow by a factor.
func (l *LoadedLine) Heavier(factor float64) {
	for _, p := range l.Plies {
		dead := p.Cases[loads.DeadCase]
		dead.Most.Add(dead.Most, factor-1)
		dead.Least.Add(dead.Least, factor-1)
	}
}
