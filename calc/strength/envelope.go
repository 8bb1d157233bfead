package strength

// Stations are the places along a run where shear, moment and deflection are
// worked out: so many equal steps in each span, fewer in an overhang, and every
// place where a point load may stand.
const (
	stepsInSpan     = 40
	stepsInOverhang = 8
)

// station is one such place, seen from inside one part, so that a support has
// one station on its left and one on its right.
type station struct {
	part int
	x    float64 // from the run's origin
}

// field holds what one loading does to a run: by station, and by support.
// Deflections are times EI.
type field struct {
	shear, moment, sag []float64
	reactions          []float64
}

// slab hands out room for fields, and takes all of it back at once when a search
// is done with a candidate.
type slab struct {
	room []float64
	used int
}

const slabSize = 1 << 15

func (s *slab) take(n int) []float64 {
	if s.used+n > len(s.room) {
		s.room, s.used = make([]float64, max(n, slabSize, 2*len(s.room))), 0 // the old room lives on in its fields
	}
	taken := s.room[s.used : s.used+n : s.used+n]
	s.used += n
	clear(taken)
	return taken
}

// reset takes the room back; fields handed out before are no longer good.
func (s *slab) reset() { s.used = 0 }

func (s *slab) field(stations, supports int) field {
	return layField(s.take(3*stations+supports), stations)
}

func newField(stations, supports int) field {
	return layField(make([]float64, 3*stations+supports), stations)
}

func layField(all []float64, stations int) field {
	return field{all[:stations:stations], all[stations : 2*stations : 2*stations], all[2*stations : 3*stations : 3*stations], all[3*stations:]}
}

// each calls f with every list of values of both fields.
func (f field) each(other field, do func(mine, others []float64)) {
	do(f.shear, other.shear)
	do(f.moment, other.moment)
	do(f.sag, other.sag)
	do(f.reactions, other.reactions)
}

// add adds other, times a factor, to f.
func (f field) add(other field, times float64) {
	if times == 0 {
		return
	}
	f.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += float64(v * times)
		}
	})
}

// envelope is the most and the least that a set of loadings does, each present
// or not as is worst at each place.
type envelope struct{ most, least field }

// patterned adds a loading that may be present or not.
func (e envelope) patterned(other field, times float64) {
	e.most.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += max(0, float64(v*times))
		}
	})
	e.least.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += min(0, float64(v*times))
		}
	})
}

// always adds a loading that is there all the time.
func (e envelope) always(other field, times float64) {
	e.most.add(other, times)
	e.least.add(other, times)
}

// lighter lets a load that is there all the time be anything between a share of
// itself and the whole: where it relieves, the share counts.
func (e envelope) lighter(share float64) {
	e.most.each(e.least, func(most, least []float64) {
		for i, v := range most {
			most[i], least[i] = max(v, v*share), min(v, v*share)
		}
	})
}

// addWhole adds the whole load of an envelope that [envelope.lighter] has spread.
func (f field) addWhole(e envelope) {
	f.each(e.most, func(mine, most []float64) {
		for i, v := range most {
			mine[i] += max(0, v)
		}
	})
	f.each(e.least, func(mine, least []float64) {
		for i, v := range least {
			mine[i] += min(0, v)
		}
	})
}

// whole returns the load of an envelope that [envelope.lighter] has spread.
func whole(most, least float64) float64 {
	if most > 0 {
		return most
	}
	return least
}

// include adds a whole envelope.
func (e envelope) include(other envelope, times float64) {
	e.most.add(other.most, times)
	e.least.add(other.least, times)
}

// gauge is a run with its stations, and what one newton per metre in each of its
// parts does to it. It depends on nothing but the layout, so that lines and
// candidates of one layout share it.
type gauge struct {
	run      run
	stations []station
	first    []int                // first station of each part, and their number
	parts    []part               // their places and lengths
	unit     []field              // by part: 1 N/m over it
	whole    field                // all parts loaded
	marks    []float64            // places of point loads
	slab     *slab                // for what does not outlive a candidate
	placed   map[[2]float64]field // by place: what a unit load there does
}

// measureRun prepares a run. Marks are places where point loads will stand.
func measureRun(r run, marks []float64, room *slab) (*gauge, error) {
	a, err := r.solve(nil)
	if err != nil {
		return nil, err
	}
	g := &gauge{run: r, parts: a.parts, marks: marks, slab: room, placed: map[[2]float64]field{}}
	for i := range g.parts {
		g.first = append(g.first, len(g.stations))
		g.stations = append(g.stations, g.placesIn(i, marks)...)
	}
	g.first = append(g.first, len(g.stations))
	g.whole = newField(len(g.stations), len(r.supports))
	for _, p := range g.parts {
		f := newField(len(g.stations), len(r.supports))
		if err := g.read(f, []push{{p.from, p.from + p.long, 1}}); err != nil {
			return nil, err
		}
		g.unit = append(g.unit, f)
		g.whole.add(f, 1)
	}
	return g, nil
}

func (g *gauge) placesIn(i int, marks []float64) []station {
	p := &g.parts[i]
	steps := stepsInSpan
	if g.overhang(i) {
		steps = stepsInOverhang
	}
	places := make([]station, 0, steps+1+len(marks))
	for k := range steps + 1 {
		places = append(places, station{i, p.from + p.long*float64(k)/float64(steps)})
	}
	for _, m := range marks {
		if m <= p.from || m >= p.from+p.long {
			continue
		}
		at := len(places)
		for at > 0 && places[at-1].x > m {
			at--
		}
		if places[at-1].x < m {
			places = append(places[:at], append([]station{{i, m}}, places[at:]...)...)
		}
	}
	return places
}

// overhang says whether part i stands out past the first or last support.
func (g *gauge) overhang(i int) bool {
	first, last := g.run.supports[0], g.run.supports[len(g.run.supports)-1]
	return g.parts[i].from < first || g.parts[i].from >= last
}

// field solves the run under loads and reads it at the stations.
func (g *gauge) field(loads []push) (field, error) {
	f := g.slab.field(len(g.stations), len(g.run.supports))
	return f, g.read(f, loads)
}

// read fills a field in.
func (g *gauge) read(f field, loads []push) error {
	a, err := g.run.solve(loads)
	if err != nil {
		return err
	}
	for i, s := range g.stations {
		p := &a.parts[s.part]
		f.shear[i], f.moment[i], f.sag[i] = p.at(s.x - p.from)
	}
	copy(f.reactions, a.reactions)
	return nil
}

func (g *gauge) empty() envelope {
	n, supports := len(g.stations), len(g.run.supports)
	return envelope{g.slab.field(n, supports), g.slab.field(n, supports)}
}

// endsOf returns the first and last station of a part.
func (g *gauge) endsOf(part int) (first, last int) { return g.first[part], g.first[part+1] - 1 }

// beside returns the part that ends at a support and the one that begins there,
// −1 where there is none.
func (g *gauge) beside(support int) (left, right int) {
	left, right = -1, -1
	at := g.run.supports[support]
	for i, p := range g.parts {
		switch {
		case p.from == at:
			right = i
		case p.from+p.long == at || p.from < at && p.from+p.long >= at-1e-9:
			left = i
		}
	}
	return left, right
}
