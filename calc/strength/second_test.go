package strength

import (
	"fmt"
	"math"
	"slices"

	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/timber"
)

// second works the members of a laid-out frame a second time: every joist, every
// piece of every ply, every rim past the beams, by whole stiffness matrices. It takes what acts
// (weights by area, walls, loads at a place) and the timber's values as given, and
// nothing of how they were carried down.
type second struct {
	t      require.TestingT
	trial  *Trial
	frame  *frame.Frame
	acting *loads.Acting
	worst  map[string]float64 // greatest ratio, by the id of the check
	piers  map[string][]cell  // what comes to each pier
}

// cell is a loading that is there or not as a whole.
type cell struct {
	kind   loads.Case
	always bool
	effect
}

// demand is a combination of ASCE 7-16 2.4.1 without wind, with the load-duration
// factor of the shortest load in it (NDS 2018 2.3.2).
type demand struct {
	duration float64
	factors  [loads.CaseCount]float64
}

var demands = []demand{
	{0.9, [loads.CaseCount]float64{1, 1}}, {1, [loads.CaseCount]float64{1, 1, 1}}, {1.15, [loads.CaseCount]float64{1, 1, 0, 1}},
	{1.25, [loads.CaseCount]float64{1, 1, 0, 0, 1}}, {1.15, [loads.CaseCount]float64{1, 1, .75, .75}}, {1.25, [loads.CaseCount]float64{1, 1, .75, 0, .75}},
}

// shortTerm are the loads under which deflection is looked at.
var shortTerm = [][loads.CaseCount]float64{{0, 0, 1}, {0, 0, 0, 1}, {0, 0, 0, 0, 1}, {0, 0, .75, .75}}

// range returns the most and the least of a value over all ways of having the
// loadings that may be there or not, the building at its heaviest or lightest.
func (s *second) reach(cells []cell, factors [loads.CaseCount]float64, value func(effect) float64) (most, least float64) {
	building := 0.0
	for i := range cells {
		v := value(cells[i].effect) * factors[cells[i].kind]
		switch {
		case cells[i].kind == loads.BuildingCase:
			building += v
		case cells[i].always:
			most, least = most+v, least+v
		default:
			most, least = most+max(0, v), least+min(0, v)
		}
	}
	light := building * s.acting.LightShare
	return most + max(building, light), least + min(building, light)
}

func (s *second) keep(id string, ratio float64) { s.worst[id] = max(s.worst[id], ratio) }

// secondOf works a frame a second time.
func secondOf(t require.TestingT, trial *Trial) *second {
	s := &second{t: t, trial: trial, frame: trial.frame, acting: trial.Loads, worst: map[string]float64{}, piers: map[string][]cell{}}
	s.joists()
	for i := range s.frame.Lines {
		s.line(i)
	}
	return s
}

// bay is a stretch of a member between supports, or past them.
type stretch struct {
	from, to float64
	overhang bool
}

func stretches(start, end float64, supports []float64) []stretch {
	var all []stretch
	if supports[0]-start > 1e-6 {
		all = append(all, stretch{start, supports[0], true})
	}
	for i := range len(supports) - 1 {
		all = append(all, stretch{supports[i], supports[i+1], false})
	}
	if last := supports[len(supports)-1]; end-last > 1e-6 {
		all = append(all, stretch{last, end, true})
	}
	return all
}

// crossing is how joists stand: over all lines, from line to line, or from rim to rim.
type crossing struct {
	models []*model
	lines  [][]int // by model: the lines that its supports stand on
	spans  [][]stretch
}

func (s *second) marks() []float64 {
	var places []float64
	for _, strip := range s.acting.Strips {
		places = append(places, strip.Y1, strip.Y2)
	}
	for _, p := range s.acting.Patches {
		places = append(places, p.Y.Metres(), (p.Y + p.Width).Metres())
	}
	return places
}

// crossingOf returns the joists of the floor, or the end joists that hang on the rims.
func (s *second) crossingOf(ends bool) crossing {
	f, wide := s.frame, s.frame.Width.Metres()
	var x crossing
	add := func(start, end float64, supports []float64, lines ...int) {
		var inside []float64
		for _, m := range s.marks() {
			if m > start && m < end {
				inside = append(inside, m)
			}
		}
		x.models = append(x.models, newModel(s.t, start, end, supports, inside))
		x.lines, x.spans = append(x.lines, lines), append(x.spans, stretches(start, end, supports))
	}
	ys := make([]float64, len(f.Lines))
	all := make([]int, len(ys))
	for i, l := range f.Lines {
		ys[i], all[i] = l.Y.Metres(), i
	}
	switch thick := f.Sections.Rim.Width.Metres(); {
	case ends:
		add(0, wide, []float64{thick / 2, wide - thick/2}, 0, len(ys)-1)
	case s.trial.hung():
		for i := range len(ys) - 1 {
			add(ys[i], ys[i+1], ys[i:i+2], i, i+1)
		}
	default:
		add(0, wide, ys, all...)
	}
	return x
}

// within cuts a load to a model; what lies past its end rests on the end.
func within(m *model, l bear) []bear {
	start, end := m.nodes[0], m.nodes[len(m.nodes)-1]
	if l.from == l.to {
		if l.from < start-1e-9 || l.from > end+1e-9 {
			return nil
		}
		return []bear{{min(max(l.from, start), end), min(max(l.from, start), end), l.size}}
	}
	if from, to := max(l.from, start), min(l.to, end); to > from {
		return []bear{{from, to, l.size}}
	}
	return nil
}

// member is what is checked of a member with its loadings.
type member struct {
	id           string
	model        *model
	spans        []stretch
	cells        []cell
	width, depth float64
	braced       float64
	atSupport    bool // loaded on its side: the shear counts at the support itself
	values       Member
}

func (s *second) work(m *member) {
	v := m.values.(timber.Member).Values
	modulus, area, inertia := m.width*m.depth*m.depth/6, m.width*m.depth, m.width*math.Pow(m.depth, 3)/12
	longest, overhang := 0.0, 0.0
	for _, span := range m.spans {
		if span.overhang {
			overhang = max(overhang, span.to-span.from)
		} else {
			longest = max(longest, span.to-span.from)
		}
	}
	stretch, out := measure.FromMetres(longest/4), measure.FromMetres(overhang)
	for _, d := range demands {
		allowed := float64(v.Bending) * d.duration
		hogging := float64(timber.HoggingFactor(v.ElasticMin, measure.Stress(allowed), stretch, out, measure.FromMetres(m.depth), measure.FromMetres(m.braced)))
		for i := range m.model.nodes {
			most, least := s.reach(m.cells, d.factors, func(e effect) float64 { return e.moment[i] })
			s.keep(m.id+".bending", most/modulus/allowed)
			s.keep(m.id+".bending", -least/modulus/allowed/max(hogging, 1e-12))
		}
		s.shear(m, d, float64(v.Shear)*d.duration*area/1.5)
	}
	for n, factors := range append(slices.Clone(shortTerm), shortTerm...) {
		id, lasting, limit := ".live_deflection", 0.0, float64(s.trial.rules.LiveLimit)
		if n >= len(shortTerm) {
			id, lasting, limit = ".total_deflection", 1.5, float64(s.trial.rules.TotalLimit)
			if m.values.(timber.Member).Service.Wet {
				lasting = 2
			}
		}
		factors[loads.DeadCase], factors[loads.BuildingCase] = lasting, lasting
		for _, span := range m.spans {
			allowed := (span.to - span.from) / limit
			if span.overhang {
				if span.to-span.from < 0.15 {
					continue
				}
				allowed *= 2
			}
			for i, x := range m.model.nodes {
				if x < span.from-1e-9 || x > span.to+1e-9 {
					continue
				}
				most, least := s.reach(m.cells, factors, func(e effect) float64 { return e.sag[i] })
				s.keep(m.id+id, max(most, -least)/float64(v.Elastic)/inertia/allowed)
			}
		}
	}
}

// shear looks a depth away from every support, on both sides of it: a uniform
// load nearer than that is left out (NDS 2018 3.4.3.1). Concentrated loads nearer
// than that would add to it and are left out here.
func (s *second) shear(m *member, d demand, capacity float64) {
	for _, span := range m.spans {
		reach := min(m.depth, span.to-span.from)
		if !span.overhang {
			reach = min(m.depth, (span.to-span.from)/2)
		}
		if m.atSupport {
			reach = 0
		}
		first, last := m.model.supports[0], m.model.supports[len(m.model.supports)-1]
		if span.from >= m.model.nodes[first]-1e-9 {
			s.shearAt(m, d, span.from+reach, true, capacity)
		}
		if span.to <= m.model.nodes[last]+1e-9 {
			s.shearAt(m, d, span.to-reach, false, capacity)
		}
	}
}

// shearAt keeps the shear at x, on the side away from its support.
func (s *second) shearAt(m *member, d demand, x float64, rightward bool, capacity float64) {
	n := m.model.nodes
	e := 0 // the element that x lies in, or begins or ends
	for e < len(n)-2 && (n[e+1] < x-1e-9 || rightward && n[e+1] <= x+1e-9) {
		e++
	}
	if rightward && x >= n[len(n)-1]-1e-9 || !rightward && x <= n[0]+1e-9 {
		return // nothing stands further out
	}
	part := (x - n[e]) / (n[e+1] - n[e])
	most, least := s.reach(m.cells, d.factors, func(f effect) float64 { return f.shearRight[e]*(1-part) + f.shearLeft[e+1]*part })
	s.keep(m.id+".shear", max(most, -least)/capacity)
}

// joistCentres returns the places of the joists and the borders of their strips.
func (s *second) joistCentres() (centres, borders []float64) {
	for _, j := range s.frame.Joists {
		centres = append(centres, j.Centre.Metres())
	}
	slices.Sort(centres)
	centres = slices.Compact(centres)
	borders = []float64{0}
	for i := 1; i < len(centres); i++ {
		borders = append(borders, (centres[i-1]+centres[i])/2)
	}
	return centres, append(borders, s.frame.Length.Metres())
}

// lever returns what a joist takes of a load from one x to another: the floor
// between two joists is a simple span, past the last it rests on that.
func lever(centres []float64, joist int, from, to float64) float64 {
	share := func(x float64) float64 {
		switch c := centres[joist]; {
		case x <= c && joist == 0, x >= c && joist == len(centres)-1:
			return 1
		case x <= c:
			return max(0, 1-(c-x)/(c-centres[joist-1]))
		default:
			return max(0, 1-(x-c)/(centres[joist+1]-c))
		}
	}
	if from == to {
		return share(from)
	}
	sum := 0.0
	const steps = 400
	for k := range steps {
		sum += share(from+(to-from)*(float64(k)+.5)/steps) / steps
	}
	return sum
}

// wallOn returns what a joist takes of a wall along it: all when the wall, 3 1/2 in
// thick, stands over the joist, 1 1/2 in thick, none when it stands so over another.
func wallOn(centres []float64, joist int, at float64) float64 {
	for i, c := range centres {
		if math.Abs(c-at) < 2.5*.0254 && !slices.ContainsFunc(centres, func(o float64) bool { return math.Abs(o-at) < math.Abs(c-at) }) {
			if i == joist {
				return 1
			}
			return 0
		}
	}
	return lever(centres, joist, at, at)
}

// beyond returns how many joists at each end stand past the beams.
func (s *second) beyond() (near, far int) {
	centres, _ := s.joistCentres()
	line, half := s.frame.Lines[0], s.frame.Sections.Joist.Width.Metres()/2
	if s.trial.hung() || len(s.frame.Rims) == 0 {
		return 0, 0
	}
	for _, c := range centres {
		if c+half <= line.Start.Metres()+1e-9 {
			near++
		}
		if c-half >= line.End.Metres()-1e-9 {
			far++
		}
	}
	return near, far
}

// joists works every joist, those past the beams from rim to rim.
func (s *second) joists() {
	centres, borders := s.joistCentres()
	near, far := s.beyond()
	on, ends := s.crossingOf(false), crossing{}
	if near+far > 0 {
		ends = s.crossingOf(true)
	}
	thrust := map[string][]cell{} // end and side: what the end joists put on the rims
	for i := range centres {
		x, id := on, "joist"
		if i < near || i >= len(centres)-far {
			x, id = ends, "end_joist"
		}
		for k, m := range x.models {
			one := s.joist(id, x, k, m, centres, borders, i)
			s.work(one)
			if id == "joist" {
				s.bearing(one, x.lines[k])
				continue
			}
			arm := s.frame.Lines[0].Start.Metres() - centres[i]
			end := "near"
			if i >= near {
				arm, end = centres[i]-s.frame.Lines[0].End.Metres(), "far"
			}
			for side := range 2 {
				for _, c := range one.cells {
					key := fmt.Sprint(end, side)
					thrust[key] = append(thrust[key], cell{c.kind, c.always, effect{moment: []float64{-c.reactions[side] * arm}, shearLeft: []float64{c.reactions[side]}}})
				}
			}
		}
	}
	s.rims(thrust)
}

// rims takes the rims past the beams as cantilevers.
func (s *second) rims(thrust map[string][]cell) {
	section := s.frame.Sections.Rim
	b, d := section.Across().Metres(), section.Depth.Metres()
	for _, cells := range thrust {
		v := s.trial.rim.(timber.Member).Values
		for _, c := range demands {
			_, least := s.reach(cells, c.factors, func(e effect) float64 { return e.moment[0] })
			s.keep("rim.bending", -least/(b*d*d/6)/float64(v.Bending)/c.duration)
		}
	}
}

func (s *second) joist(id string, x crossing, k int, m *model, centres, borders []float64, i int) *member {
	section := s.frame.Sections.Joist
	one := &member{id: id, model: m, spans: x.spans[k], width: section.Across().Metres(), depth: section.Depth.Metres(), braced: section.Across().Metres(), values: s.trial.joist}
	wide := borders[i+1] - borders[i]
	put := func(kind loads.Case, always bool, list ...bear) {
		var inside []bear
		for _, l := range list {
			inside = append(inside, within(m, l)...)
		}
		if len(inside) > 0 {
			one.cells = append(one.cells, cell{kind, always, m.solve(s.t, inside)})
		}
	}
	whole := bear{m.nodes[0], m.nodes[len(m.nodes)-1], 1}
	for kind, area := range s.acting.Area {
		switch {
		case area == 0:
		case loads.Case(kind) == loads.LiveCase:
			for _, span := range one.spans {
				put(loads.LiveCase, false, bear{span.from, span.to, area * wide})
			}
		default:
			put(loads.Case(kind), true, bear{whole.from, whole.to, area * wide})
		}
	}
	for _, strip := range s.acting.Strips {
		if strip.AlongX() {
			if overlap := min(strip.X2, borders[i+1]) - max(strip.X1, borders[i]); overlap > 0 {
				put(strip.Kind, true, bear{strip.Y1, strip.Y1, strip.Size * overlap})
			}
		} else if share := wallOn(centres, i, strip.X1); share > 0 {
			put(strip.Kind, true, bear{strip.Y1, strip.Y2, strip.Size * share})
		}
	}
	for _, p := range s.acting.Patches {
		if share := lever(centres, i, p.X.Metres(), (p.X + p.Length).Metres()); share > 0 {
			put(loads.LiveCase, false, bear{p.Y.Metres(), (p.Y + p.Width).Metres(), float64(p.Load) / p.Width.Metres() * share})
		}
	}
	return one
}

// bearing presses a joist on the beams, or into its hangers.
func (s *second) bearing(one *member, lines []int) {
	f, half := s.frame, s.frame.Sections.Beam.Across()/2
	v := one.values.(timber.Member).Values
	for n, line := range lines {
		long := 0.0381
		if !s.trial.hung() {
			long = (min(f.Lines[line].Y+half, f.Joists[0].To) - max(f.Lines[line].Y-half, f.Joists[0].From)).Metres()
		}
		for _, d := range demands {
			most, _ := s.reach(one.cells, d.factors, func(e effect) float64 { return e.reactions[n] })
			s.keep("joist.bearing", most/one.width/max(long, 1e-6)/float64(v.BearingAcross))
		}
	}
}

// line works every piece of every ply of a beam line under what the joists bring, as a
// load along it.
func (s *second) line(index int) {
	f := s.frame
	line, section := f.Lines[index], f.Sections.Beam
	near, far := s.beyond()
	_, borders := s.joistCentres()
	outer := index == 0 || index == len(f.Lines)-1
	on := brought(s.crossingOf(false), index)
	var hung lineShare
	if near+far > 0 {
		hung = brought(s.crossingOf(true), index)
	}
	zones := []zone{{borders[near], borders[len(borders)-1-far], on}}
	if near > 0 {
		zones = append(zones, zone{0, borders[near], hung})
	}
	if far > 0 {
		zones = append(zones, zone{borders[len(borders)-1-far], f.Length.Metres(), hung})
	}
	for _, ply := range line.Plies {
		for _, piece := range ply.Pieces {
			start, end := piece.From.Metres(), piece.To.Metres()
			first, last := piece.From == line.Start, piece.To == line.End
			if first && near > 0 && outer {
				start = 0 // what hangs on the rim past the beam turns on its end
			}
			if last && far > 0 && outer {
				end = f.Length.Metres()
			}
			s.piece(index, start, end, first, last, 1/float64(len(line.Plies)), zones, section.Width.Metres())
		}
	}
}

// zone is a length of the floor whose joists stand alike.
type zone struct {
	from, to float64
	lineShare
}

// lineShare tells what a line gets of loads across the floor, for 1 N/m2 or 1 N.
type lineShare struct {
	x     crossing
	index int
}

func brought(x crossing, index int) lineShare { return lineShare{x, index} }

// of returns the line's reaction to a load across the floor.
func (l lineShare) of(t require.TestingT, load bear) float64 {
	sum := 0.0
	for k, m := range l.x.models {
		list := within(m, load)
		start, end := m.nodes[0], m.nodes[len(m.nodes)-1]
		if load.from == load.to && k > 0 && load.from <= start+1e-9 {
			list = nil // counted in the bay before
		}
		// What lies outside of all rests on the outer ends.
		if k == 0 {
			if out := min(load.to, start) - load.from; out > 0 {
				list = append(list, bear{start, start, load.size * out})
			} else if load.from == load.to && load.from < start-1e-9 {
				list = append(list, bear{start, start, load.size})
			}
		}
		if k == len(l.x.models)-1 {
			if out := load.to - max(load.from, end); out > 0 {
				list = append(list, bear{end, end, load.size * out})
			} else if load.from == load.to && load.from > end+1e-9 {
				list = append(list, bear{end, end, load.size})
			}
		}
		if len(list) == 0 {
			continue
		}
		e := m.solve(t, list)
		for n, line := range l.x.lines[k] {
			if line == l.index {
				sum += e.reactions[n]
			}
		}
	}
	return sum
}

func (s *second) piece(index int, start, end float64, first, last bool, share float64, zones []zone, width float64) {
	f := s.frame
	section := f.Sections.Beam
	var supports []float64
	var names []string
	for _, p := range f.Piers {
		if x := p.X.Metres(); p.Line == index && x > start-1e-3 && x < end+1e-3 {
			supports, names = append(supports, x), append(names, p.Name)
		}
	}
	require.GreaterOrEqual(s.t, len(supports), 2)
	start, end = min(start, supports[0]), max(end, supports[len(supports)-1])
	var places []float64
	for _, z := range zones {
		places = append(places, z.from, z.to)
	}
	for _, strip := range s.acting.Strips {
		places = append(places, strip.X1, strip.X2)
	}
	for _, p := range s.acting.Patches {
		places = append(places, p.X.Metres(), (p.X + p.Length).Metres())
	}
	for _, x := range supports {
		places = append(places, x-section.Depth.Metres(), x+section.Depth.Metres())
	}
	m := newModel(s.t, start, end, supports, places)
	one := &member{id: "beam." + f.Lines[index].Name, model: m, spans: stretches(start, end, supports), width: width, depth: section.Depth.Metres(),
		braced: section.Across().Metres(), atSupport: s.trial.hung(), values: s.trial.beam}
	put := func(kind loads.Case, always bool, list ...bear) {
		var mine []bear
		for _, l := range list {
			l.size *= share
			mine = append(mine, onPiece(l, start, end, first, last)...)
		}
		if len(mine) > 0 {
			one.cells = append(one.cells, cell{kind, always, m.solve(s.t, mine)})
		}
	}
	s.bring(one, put, zones, first, last)
	put(loads.DeadCase, true, bear{f.Lines[index].Start.Metres(), f.Lines[index].End.Metres(), s.acting.Beam})
	s.work(one)
	s.onPosts(one, index)
	for n, name := range names {
		for _, c := range one.cells {
			s.piers[name] = append(s.piers[name], cell{c.kind, c.always, effect{reactions: []float64{c.reactions[n]}}})
		}
	}
}

// onPiece cuts a load to a piece of a beam. What lies past the beam's own end rests
// on the end; a load over a joint rests on the piece before it.
func onPiece(l bear, start, end float64, first, last bool) []bear {
	var list []bear
	if l.from == l.to {
		switch {
		case l.from < start && first:
			return []bear{{start, start, l.size}}
		case l.from > end && last:
			return []bear{{end, end, l.size}}
		case l.from > start+1e-9 && l.from <= end+1e-9, first && l.from >= start-1e-9 && l.from <= end:
			return []bear{{min(l.from, end), min(l.from, end), l.size}}
		}
		return nil
	}
	if out := min(l.to, start) - l.from; first && out > 1e-9 {
		list = append(list, bear{start, start, l.size * out})
	}
	if out := l.to - max(l.from, end); last && out > 1e-9 {
		list = append(list, bear{end, end, l.size * out})
	}
	if from, to := max(l.from, start), min(l.to, end); to-from > 1e-9 {
		list = append(list, bear{from, to, l.size})
	}
	return list
}

// bring puts on a piece what each zone of the floor brings to its line.
func (s *second) bring(one *member, put func(loads.Case, bool, ...bear), zones []zone, first, last bool) {
	wide := s.frame.Width.Metres()
	for _, z := range zones {
		for kind, area := range s.acting.Area {
			if area != 0 && loads.Case(kind) != loads.LiveCase {
				put(loads.Case(kind), true, bear{z.from, z.to, area * z.of(s.t, bear{0, wide, 1})})
			}
		}
		// The floor load on every span of the joists by every span of the beam.
		var bays []stretch
		for k := range z.x.models {
			bays = append(bays, z.x.spans[k]...)
		}
		bays[0].from, bays[len(bays)-1].to = min(bays[0].from, 0), max(bays[len(bays)-1].to, wide)
		for _, bay := range bays {
			size := s.acting.Area[loads.LiveCase] * z.of(s.t, bear{bay.from, bay.to, 1})
			for n, span := range one.spans {
				from, to := max(z.from, span.from), min(z.to, span.to)
				if n == 0 && first {
					from = z.from
				}
				if n == len(one.spans)-1 && last {
					to = z.to
				}
				if to-from > 1e-9 {
					put(loads.LiveCase, false, bear{from, to, size})
				}
			}
		}
		for _, strip := range s.acting.Strips {
			if strip.AlongX() {
				if from, to := max(z.from, strip.X1), min(z.to, strip.X2); to-from > 1e-9 {
					put(strip.Kind, true, bear{from, to, strip.Size * z.of(s.t, bear{strip.Y1, strip.Y1, 1})})
				}
			} else if strip.X1 >= z.from && (strip.X1 < z.to || strip.X1 >= s.frame.Length.Metres()-1e-9 && z.to >= strip.X1-1e-9) {
				put(strip.Kind, true, bear{strip.X1, strip.X1, strip.Size * z.of(s.t, bear{strip.Y1, strip.Y2, 1})})
			}
		}
	}
	for _, p := range s.acting.Patches {
		var list []bear
		for _, z := range zones {
			if from, to := max(z.from, p.X.Metres()), min(z.to, (p.X+p.Length).Metres()); to-from > 1e-9 {
				size := float64(p.Load) / p.Length.Metres() / p.Width.Metres()
				list = append(list, bear{from, to, size * z.of(s.t, bear{p.Y.Metres(), (p.Y + p.Width).Metres(), 1})})
			}
		}
		put(loads.LiveCase, false, list...)
	}
}

// onPosts presses a ply on the posts.
func (s *second) onPosts(one *member, index int) {
	post, v := s.frame.Sections.Post, one.values.(timber.Member).Values
	section, line := s.frame.Sections.Beam, s.frame.Lines[index]
	contact := min(section.Across(), post.Depth).Metres() / float64(section.Plies)
	for n, at := range one.model.supports {
		x := measure.FromMetres(one.model.nodes[at])
		// A piece ends at a joint over the middle of its post.
		from, to := line.Start, line.End
		if at == 0 && x > line.Start+measure.Millimetre {
			from = x
		}
		if at == len(one.model.nodes)-1 && x < line.End-measure.Millimetre {
			to = x
		}
		long := min(x+post.Width/2, to) - max(x-post.Width/2, from)
		factor := 1.0
		if long == post.Width {
			factor = float64(timber.BearingFactor(post.Width, min(x-from, to-x)-post.Width/2))
		}
		for _, d := range demands {
			most, _ := s.reach(one.cells, d.factors, func(e effect) float64 { return e.reactions[n] })
			s.keep(one.id+".bearing", most/float64(v.BearingAcross)/factor/contact/long.Metres())
		}
	}
}

// pier returns the most that comes to a pier and the least, its post's weight left out.
func (s *second) pier(name string) (most, least float64) {
	most, least = math.Inf(-1), math.Inf(1)
	for _, d := range demands {
		up, down := s.reach(s.piers[name], d.factors, func(e effect) float64 { return e.reactions[0] })
		most, least = max(most, up), min(least, down)
	}
	return most, least
}
