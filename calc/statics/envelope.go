package statics

import "slices"

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
	Stretch int
	X       float64 // from the run's origin
}

// Effect holds what one loading does to a run: by station, and by support.
// Deflections are times EI.
type Effect struct {
	Shear, Moment, Sag []float64
	Reactions          []float64
}

// slab hands out room for effects, and takes all of it back at once when a search
// is done with a candidate.
type slab struct {
	room []float64
	used int
}

const slabSize = 1 << 15

func (s *slab) take(n int) []float64 {
	if s.used+n > len(s.room) {
		s.room, s.used = make([]float64, max(n, slabSize, 2*len(s.room))), 0 // the old room lives on in its effects
	}
	taken := s.room[s.used : s.used+n : s.used+n]
	s.used += n
	clear(taken)
	return taken
}

// reset takes the room back; effects handed out before are no longer good.
func (s *slab) reset() { s.used = 0 }

func (s *slab) effect(stations, supports int) Effect {
	return layEffect(s.take(3*stations+supports), stations)
}

func newEffect(stations, supports int) Effect {
	return layEffect(make([]float64, 3*stations+supports), stations)
}

func layEffect(all []float64, stations int) Effect {
	return Effect{all[:stations:stations], all[stations : 2*stations : 2*stations], all[2*stations : 3*stations : 3*stations], all[3*stations:]}
}

// each calls f with every list of values of both.
func (f Effect) each(other Effect, do func(mine, others []float64)) {
	do(f.Shear, other.Shear)
	do(f.Moment, other.Moment)
	do(f.Sag, other.Sag)
	do(f.Reactions, other.Reactions)
}

// Add adds other, times a factor, to f.
func (f Effect) Add(other Effect, times float64) {
	if times == 0 {
		return
	}
	f.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += float64(v * times)
		}
	})
}

// Envelope is the most and the least that a set of loadings does, each present
// or not as is worst at each place.
type Envelope struct{ Most, Least Effect }

// Patterned adds a loading that may be present or not.
func (e Envelope) Patterned(other Effect, times float64) {
	e.Most.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += max(0, float64(v*times))
		}
	})
	e.Least.each(other, func(mine, others []float64) {
		for i, v := range others {
			mine[i] += min(0, float64(v*times))
		}
	})
}

// Always adds a loading that is there all the time.
func (e Envelope) Always(other Effect, times float64) {
	e.Most.Add(other, times)
	e.Least.Add(other, times)
}

// Lighter lets a load that is there all the time be anything between a share of
// itself and the whole: where it relieves, the share counts.
func (e Envelope) Lighter(share float64) {
	e.Most.each(e.Least, func(most, least []float64) {
		for i, v := range most {
			most[i], least[i] = max(v, v*share), min(v, v*share)
		}
	})
}

// AddWhole adds the whole load of an envelope that [Envelope.lighter] has spread.
func (f Effect) AddWhole(e Envelope) {
	f.each(e.Most, func(mine, most []float64) {
		for i, v := range most {
			mine[i] += max(0, v)
		}
	})
	f.each(e.Least, func(mine, least []float64) {
		for i, v := range least {
			mine[i] += min(0, v)
		}
	})
}

// Whole returns the load of an envelope that [Envelope.lighter] has spread.
func Whole(most, least float64) float64 {
	if most > 0 {
		return most
	}
	return least
}

// Include adds a whole envelope.
func (e Envelope) Include(other Envelope, times float64) {
	e.Most.Add(other.Most, times)
	e.Least.Add(other.Least, times)
}

// Gauge is a run with its stations, and what one newton per metre in each of its
// Parts does to it. It depends on nothing but the layout, so that lines and
// candidates of one layout share it.
type Gauge struct {
	Run      Run
	Stations []station
	first    []int                 // first station of each part, and their number
	Parts    []part                // their places and lengths
	Unit     []Effect              // by part: 1 N/m over it
	Whole    Effect                // all parts loaded
	Marks    []float64             // places of point loads
	slab     *slab                 // for what does not outlive a candidate
	placed   map[[2]float64]Effect // by place: what a unit load there does
}

// measureRun prepares a run, with stations at marks and borders besides the even ones.
func measureRun(r Run, marks, borders []float64, room *slab) (*Gauge, error) {
	a, err := r.Solve(nil)
	if err != nil {
		return nil, err
	}
	g := &Gauge{Run: r, Parts: a.parts, Marks: marks, slab: room, placed: map[[2]float64]Effect{}}
	for i := range g.Parts {
		g.first = append(g.first, len(g.Stations))
		g.Stations = append(g.Stations, g.placesIn(i, append(slices.Clip(marks), borders...))...)
	}
	g.first = append(g.first, len(g.Stations))
	g.Whole = newEffect(len(g.Stations), len(r.Supports))
	for _, p := range g.Parts {
		f := newEffect(len(g.Stations), len(r.Supports))
		if err := g.read(f, []Push{{p.From, p.From + p.Long, 1}}); err != nil {
			return nil, err
		}
		g.Unit = append(g.Unit, f)
		g.Whole.Add(f, 1)
	}
	return g, nil
}

func (g *Gauge) placesIn(i int, more []float64) []station {
	p := &g.Parts[i]
	steps := stepsInSpan
	if g.Overhang(i) {
		steps = stepsInOverhang
	}
	places := make([]station, 0, steps+1+len(more))
	for k := range steps + 1 {
		places = append(places, station{i, p.From + p.Long*float64(k)/float64(steps)})
	}
	for _, m := range more {
		if m <= p.From || m >= p.From+p.Long {
			continue
		}
		at := len(places)
		for at > 0 && places[at-1].X > m {
			at--
		}
		if places[at-1].X < m {
			places = append(places[:at], append([]station{{i, m}}, places[at:]...)...)
		}
	}
	return places
}

// Overhang holds for a part that stands out past the first or last support.
func (g *Gauge) Overhang(i int) bool {
	first, last := g.Run.Supports[0], g.Run.Supports[len(g.Run.Supports)-1]
	return g.Parts[i].From < first || g.Parts[i].From >= last
}

// NewEffect returns an empty effect on the run.
func (g *Gauge) NewEffect() Effect { return g.slab.effect(len(g.Stations), len(g.Run.Supports)) }

// Under solves the run under loads and reads it at the stations.
func (g *Gauge) Under(loads []Push) Effect {
	f := g.NewEffect()
	if err := g.read(f, loads); err != nil {
		panic(err.Error()) // the run was solved when it was prepared
	}
	return f
}

// read fills an effect in.
func (g *Gauge) read(f Effect, loads []Push) error {
	a, err := g.Run.Solve(loads)
	if err != nil {
		return err
	}
	for i, s := range g.Stations {
		p := &a.parts[s.Stretch]
		f.Shear[i], f.Moment[i], f.Sag[i] = p.at(s.X - p.From)
	}
	copy(f.Reactions, a.Reactions)
	return nil
}

// Empty returns an envelope without loads.
func (g *Gauge) Empty() Envelope { return Envelope{g.NewEffect(), g.NewEffect()} }

// EndsOf returns the first and last station of a part.
func (g *Gauge) EndsOf(part int) (first, last int) { return g.first[part], g.first[part+1] - 1 }

// Beside returns the part that ends at a support and the one that begins there,
// −1 where there is none.
func (g *Gauge) Beside(support int) (left, right int) {
	left, right = -1, -1
	at := g.Run.Supports[support]
	for i, p := range g.Parts {
		switch {
		case p.From == at:
			right = i
		case p.From+p.Long == at || p.From < at && p.From+p.Long >= at-1e-9:
			left = i
		}
	}
	return left, right
}
