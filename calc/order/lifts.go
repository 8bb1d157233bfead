package order

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Part is so many equal things that a step takes, by the weight of one lift.
type Part struct {
	What  string // "beam 4x6", "joist hanger"
	Names string // grid names where there are few: "A-1, B-1"
	Count int
	Unit  string          // "pieces"
	Long  *measure.Length // of a length of timber, nil for the rest
	Each  measure.Mass    // of one lift, 0 where it is poured or counted by hand
}

// TwoPeople says whether one lift is too heavy for one person.
func (p Part) TwoPeople(system measure.System) bool { return p.Each > trade.LiftAlone.In(system) }

// Hands returns how many people one lift takes, by [trade.LiftAlone] each.
func (p Part) Hands(system measure.System) int {
	return max(1, int(math.Ceil(float64(p.Each/trade.LiftAlone.In(system))-1e-9)))
}

// massOf returns the weight of a length of a section, one ply.
//
//	m = ρ w d L
func massOf(j *job.Job, s job.Section, long measure.Length) measure.Mass {
	density := j.Timber.Density
	if s.Timber != nil && s.Timber.Density > 0 {
		density = s.Timber.Density
	}
	return density.Of(s.Width.Times(s.Depth).Deep(long))
}

// piece is one length of timber of the frame.
type piece struct {
	name string
	long measure.Length
}

// pieceParts gathers pieces of a section by length, the longest first.
func pieceParts(j *job.Job, what string, s job.Section, pieces []piece) []Part {
	const fewNames = 6
	groups := map[measure.Length][]string{}
	for _, p := range pieces {
		groups[p.long] = append(groups[p.long], p.name)
	}
	var parts []Part
	for long, names := range groups {
		label := names[0]
		switch {
		case len(names) > fewNames:
			label += " to " + names[len(names)-1]
		default:
			for _, n := range names[1:] {
				label += ", " + n
			}
		}
		parts = append(parts, Part{What: what + " " + s.Size, Names: label, Count: len(names), Unit: unitsOf(len(names), "pieces"), Long: &long, Each: massOf(j, s, long)})
	}
	slices.SortFunc(parts, func(a, b Part) int { return cmp.Compare(*b.Long, *a.Long) })
	return parts
}

// timberParts returns beams, joists, rims and blocking piece by piece, and a
// whole beam where plies are nailed together before it is lifted.
func timberParts(in Input) (beams, joists []Part) {
	j, f := in.Job, in.Frame
	var of struct{ beam, joist, rim, block []piece }
	for _, line := range f.Lines {
		for _, ply := range line.Plies {
			for _, p := range ply.Pieces {
				of.beam = append(of.beam, piece{p.Name, p.Long()})
			}
		}
	}
	for _, one := range f.Joists {
		of.joist = append(of.joist, piece{one.Name, one.Long()})
	}
	for _, r := range f.Rims {
		for _, p := range r.Pieces {
			of.rim = append(of.rim, piece{p.Name, p.Long()})
		}
	}
	for _, b := range f.Blocking {
		of.block = append(of.block, piece{b.Name, b.Long()})
	}
	s := f.Sections
	beams = pieceParts(j, "beam piece", s.Beam, of.beam)
	if s.Beam.Plies > 1 && len(f.Lines) > 0 {
		long := f.Lines[0].End - f.Lines[0].Start
		beams = append(beams, Part{What: fmt.Sprintf("whole beam of %d plies, if nailed before it is lifted", s.Beam.Plies), Count: len(f.Lines), Unit: "lines", Long: &long,
			Each: massOf(j, s.Beam, long) * measure.Mass(s.Beam.Plies)})
	}
	joists = slices.Concat(pieceParts(j, "joist", s.Joist, of.joist), pieceParts(j, "rim", s.Rim, of.rim), pieceParts(j, "block", s.Joist, of.block))
	return beams, joists
}
