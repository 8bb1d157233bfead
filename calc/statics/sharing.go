package statics

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// sharing is a way in which joists share what stands on the floor between them: it
// returns what the joist at one place takes of a load from one x to another.
//
// A stiff floor gives a narrow load to the joist nearest to it, a weak one lets it
// rest on both neighbours by the lever. Either can be the worse for a joist:
// a load over it, or one on each side of it.
type sharing func(places []place, i int, from, to float64) float64

// byStrip gives each joist what stands on its strip of floor, from halfway to its
// neighbours.
func byStrip(places []place, i int, from, to float64) float64 {
	p, last := places[i], i == len(places)-1
	switch {
	case from < to:
		return max(0, min(p.to, to)-max(p.from, from)) / (to - from)
	case from >= p.from && (from < p.to || last):
		return 1
	}
	return 0
}

// byLever lets the floor between two joists rest on both as a simple span. Past the
// end joist all rests on that.
func byLever(places []place, i int, from, to float64) float64 {
	if from == to {
		return leverAt(places, i, from)
	}
	// The share is straight between joists: the middle of a stretch has its average.
	sum, last := 0.0, from
	for k := max(0, i-1); k <= min(i+1, len(places)-1)+1; k++ {
		stop := to
		if k < len(places) && k <= i+1 {
			stop = min(places[k].at, to)
		}
		if stop > last {
			sum += (stop - last) * leverAt(places, i, (last+stop)/2)
			last = stop
		}
	}
	return sum / (to - from)
}

// leverAt returns the lever's share of a load at x.
func leverAt(places []place, i int, x float64) float64 {
	here := places[i].at
	switch {
	case x <= here && i == 0, x >= here && i == len(places)-1:
		return 1
	case x <= here:
		return max(0, 1-(here-x)/(here-places[i-1].at))
	}
	return max(0, 1-(x-here)/(places[i+1].at-here))
}

// walls are what of walls stands on a joist's strip of floor.
type walls []loads.Strip

// crossed returns what of the walls and rims across a joist stands on its strip.
func (x *Floor) crossed(at place) walls {
	var all walls
	for _, s := range x.Loads.Strips {
		if s.AlongX() {
			if s.X1, s.X2 = max(s.X1, at.from), min(s.X2, at.to); s.X1 < s.X2 {
				all = append(all, s)
			}
		}
	}
	return all
}

// signature tells joists that differ in what crosses them, each piece by its length.
func (w walls) signature() string {
	lengths := map[string]float64{}
	for _, s := range w {
		lengths[fmt.Sprintf("%d %.6f %.6g", s.Kind, s.Y1, s.Size)] += s.X2 - s.X1
	}
	text := ""
	for _, key := range slices.Sorted(maps.Keys(lengths)) {
		text += fmt.Sprintf("%s × %.6f\n", key, lengths[key])
	}
	return text
}

// wallOver is how far the middle of a wall may stand from that of a joist which is
// under it at all: half of both, 3 1/2 and 1 1/2 in thick. Common practice, no source.
const wallOver = 5 * measure.Inch / 2

// standing is what a joist has of the walls along it and of the loads at a place.
type standing struct {
	walls   walls // each as far as the joist takes it
	patches []patchShare
	shares  []float64 // of all walls and loads, in their order
}

// patchShare is a load at a place with what one joist takes of it.
type patchShare struct {
	loads.Patch
	share float64
}

func (x *Floor) standing(places []place, i int, by sharing) standing {
	var on standing
	for _, s := range x.Loads.Strips {
		if s.AlongX() {
			continue
		}
		share := by(places, i, s.X1, s.X1)
		if slices.ContainsFunc(places, func(p place) bool { return math.Abs(p.at-s.X1) < wallOver.Metres() }) {
			share = byStrip(places, i, s.X1, s.X1)
		}
		on.shares = append(on.shares, share)
		if share > 0 {
			s.Size *= share
			on.walls = append(on.walls, s)
		}
	}
	for _, p := range x.Loads.Patches {
		share := by(places, i, p.X.Metres(), (p.X + p.Length).Metres())
		on.shares = append(on.shares, share)
		if share > 0 {
			on.patches = append(on.patches, patchShare{p, share})
		}
	}
	return on
}

func (s standing) empty() bool { return len(s.walls)+len(s.patches) == 0 }

// exceeds tells whether the joist takes more of any one thing than by the other sharing.
func (s standing) exceeds(other standing) bool {
	for i, share := range s.shares {
		if share > other.shares[i]+1e-9 {
			return true
		}
	}
	return false
}

// names lists the walls and loads, each once.
func (s standing) names() string {
	var names []string
	for _, w := range s.walls {
		if name := "the " + w.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, p := range s.patches {
		names = append(names, p.Name)
	}
	return strings.Join(names, ", ")
}
