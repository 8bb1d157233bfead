package levelling

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Network is the adjustment by least squares of a level book with more than one
// way to its points. Every sight counts alike; each set-up gets one correction
// of the height of its instrument, and a point is the mean of all sights on it.
//
//	Σ (height of the point − (instrument + correction − reading))² is least
//	s² = that sum ÷ (sights − set-ups − points)
//
// One backsight and one foresight for each set-up make it the adjustment of
// height differences with weights 1 ÷ set-ups.
type Network struct {
	Corrections []measure.Length // of the instruments, in the order of Book.SetUps
	Redundancy  int              // sights − set-ups − points
	Squares     float64          // sum of the squared residuals of all sights, m²
	// Reading is the standard error of one reading: as the residuals show it,
	// and not under the one that the allowance stands for.
	Reading  measure.Length
	Residual measure.Length // as the residuals alone show it

	cofactors *mat.SymDense // of the corrections
}

// netPoint is a point with all sights on it, backsights too.
type netPoint struct {
	known  *measure.Length // height of a bench mark, else nil
	sights []netSight
}

// netSight is one sight as the network sees it.
type netSight struct {
	setUp  int
	height measure.Length // instrument − reading, before any correction
}

// severalWays tells a book that has more than one way to a point, so that shares
// along the runs would give it several heights: it was read from more than one
// set-up, beside the backsights that start from it, or a run goes over more than
// one bench mark.
func (r *reduction) severalWays() bool {
	seen, marks := map[string]bool{}, map[int]string{}
	for _, s := range r.book.SetUps {
		for _, shot := range s.Shots {
			if isKnown(r.job, shot.Point) {
				if before, other := marks[s.Run]; other && before != shot.Point {
					return true
				}
				marks[s.Run] = shot.Point
			} else if seen[shot.Point] {
				return true
			}
		}
		for _, shot := range s.Shots {
			seen[shot.Point] = true
		}
	}
	return false
}

// netPoints gathers all sights by the point they are on, in the order of the book.
func (r *reduction) netPoints() []netPoint {
	var points []netPoint
	place := map[string]int{}
	add := func(name string, s netSight) {
		at, seen := place[name]
		if !seen {
			at = len(points)
			place[name] = at
			point := netPoint{}
			if height, isMark := knownHeight(r.job, name); isMark {
				point.known = &height
			}
			points = append(points, point)
		}
		points[at].sights = append(points[at].sights, s)
	}
	for i, s := range r.book.SetUps {
		add(s.From, netSight{setUp: i, height: s.FromHeight})
		for _, shot := range s.Shots {
			for _, sight := range shot.Sights {
				add(shot.Point, netSight{setUp: i, height: s.Instrument - sight.Reading})
			}
		}
	}
	return points
}

// target returns the height that the sights on a point are held against: its
// own when it is known, else their mean with the corrections given.
func (p netPoint) target(corrections []measure.Length) measure.Length {
	if p.known != nil {
		return *p.known
	}
	var sum measure.Length
	for _, s := range p.sights {
		sum += s.height + corrections[s.setUp]
	}
	return sum.Part(1, len(p.sights))
}

// adjust solves the normal equations for the corrections of the set-ups, the
// points eliminated, and puts them on all shots.
func (r *reduction) adjust() *Network {
	b, points := r.book, r.netPoints()
	n := len(b.SetUps)
	net := &Network{Corrections: make([]measure.Length, n), Redundancy: -n}
	normal, right := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	for _, p := range points {
		net.Redundancy += len(p.sights)
		if p.known == nil {
			net.Redundancy--
		}
		target := p.target(net.Corrections)
		for _, s := range p.sights {
			normal.SetSym(s.setUp, s.setUp, normal.At(s.setUp, s.setUp)+1)
			right.SetVec(s.setUp, right.AtVec(s.setUp)+(target-s.height).Metres())
			for _, other := range p.sights {
				if p.known == nil && s.setUp <= other.setUp {
					normal.SetSym(s.setUp, other.setUp, normal.At(s.setUp, other.setUp)-1/float64(len(p.sights)))
				}
			}
		}
	}
	var cholesky mat.Cholesky
	cholesky.Factorize(normal) // positive definite, since every set-up hangs on a bench mark
	var corrections mat.VecDense
	_ = cholesky.SolveVecTo(&corrections, right) // whose condition is never poor: no weight is far from another
	net.cofactors = new(mat.SymDense)
	_ = cholesky.InverseTo(net.cofactors)
	for i := range b.SetUps {
		net.Corrections[i] = measure.FromMetres(corrections.AtVec(i))
		for k := range b.SetUps[i].Shots {
			b.SetUps[i].Shots[k].Correction = net.Corrections[i]
		}
	}
	for _, p := range points {
		target := p.target(net.Corrections)
		for _, s := range p.sights {
			residual := (target - s.height - net.Corrections[s.setUp]).Metres()
			net.Squares += residual * residual
		}
	}
	net.Residual = measure.FromMetres(math.Sqrt(net.Squares / float64(net.Redundancy)))
	net.Reading = max(net.Residual, OneReading(r.job))
	return net
}

// error returns the standard error of a point's height.
//
//	variance = s² (1 ÷ n + aᵀ Q a)        a: the share of each set-up in its n sights
func (net *Network) error(setUps []int) measure.Length {
	n := float64(len(setUps))
	sum := 1 / n
	for _, i := range setUps {
		for _, k := range setUps {
			sum += net.cofactors.At(i, k) / (n * n)
		}
	}
	return net.Reading.Scale(math.Sqrt(sum))
}

// OneReading returns the standard error of one rod reading that the allowance
// for a set-up stands for: two standard deviations of the difference of two
// readings.
//
//	allowance = 2 √2 σ
func OneReading(j *job.Job) measure.Length { return j.Ground.CloseTo.Scale(1 / (2 * math.Sqrt2)) }
