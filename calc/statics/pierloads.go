package statics

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
)

// PierLoad is what one pier carries, from continuous reactions.
type PierLoad struct {
	Name                                       string
	Dead, Building, Live, Snow, RoofLive, Wind measure.Force // each at its greatest; Dead with the post
	BuildingMost, BuildingLeast                measure.Force // between the lightest building and the heaviest
	LiveLeast                                  measure.Force // patterned live load that lifts, 0 or negative
	Most                                       measure.Force // greatest of all combinations, on the block
	Combination                                string
	Lightest                                   measure.Force // least of all combinations without wind; below 0 the beam lifts
	LightestUnder                              string        // that combination
	Gust                                       WindOnPier    // what wind on the building does, 0 without
	Height                                     Height
	HeightKnown                                bool
}

// InWind returns what presses on a pier under 0.6D + 0.6W with the couple of one
// direction, the building at its lightest; below 0 it lifts. ASCE 7-16 2.4.1.
func (p *PierLoad) InWind(couple measure.Force) measure.Force {
	return 0.6*(p.Dead+p.BuildingLeast) - p.Gust.Lift + couple
}

// LeastInWind returns the least of all directions.
func (p *PierLoad) LeastInWind() measure.Force { return p.InWind(-p.Gust.Couple()) }

// PierLoads sums the loads of every pier up, under the combinations that count
// on piers. Lines come in their order.
func (x *Floor) PierLoads(lines []LoadedLine, heights PostHeights, combos []loads.Combination) []PierLoad {
	f, a := x.Frame, x.Loads
	piers := make([]PierLoad, len(f.Piers))
	gusts := x.windOnPiers(lines, heights.meanPost(f))
	for i, p := range f.Piers {
		_, known := heights.Known[p.Name]
		h := heights.At(p.Name)
		r, n := &lines[p.Line].Reactions, p.Number-1
		post := measure.Force(a.Post * h.Post.Metres())
		pl := PierLoad{Name: p.Name, Height: h, HeightKnown: known,
			Dead: measure.Force(r[loads.DeadCase].Most[n]) + post, Building: measure.Force(r[loads.BuildingCase].Whole[n]),
			BuildingMost: measure.Force(r[loads.BuildingCase].Most[n]), BuildingLeast: measure.Force(r[loads.BuildingCase].Least[n]),
			Live: measure.Force(r[loads.LiveCase].Most[n]), LiveLeast: measure.Force(r[loads.LiveCase].Least[n]),
			Snow: measure.Force(r[loads.SnowCase].Most[n]), RoofLive: measure.Force(r[loads.RoofCase].Most[n]), Wind: gusts[i].Couple(), Gust: gusts[i]}
		pl.Lightest = pl.Dead + pl.BuildingLeast
		for _, combo := range combos {
			if total := pl.Under(combo); total > pl.Most {
				pl.Most, pl.Combination = total, combo.Name
			}
			if total := pl.Dead + pl.BuildingLeast + pl.lifting(combo); total < pl.Lightest {
				pl.Lightest, pl.LightestUnder = total, combo.Name
			}
		}
		piers[i] = pl
	}
	return piers
}

// Under returns the pier's load under a combination. Where the building's weight
// relieves the pier, its lightest counts.
func (p PierLoad) Under(combo loads.Combination) measure.Force {
	sum := measure.Force(0)
	for kind, load := range p.Cases() {
		sum += load * measure.Force(combo.Factors[kind])
	}
	return sum
}

// Cases returns the loads by case as they enter the combinations.
func (p PierLoad) Cases() [loads.CaseCount]measure.Force {
	return [loads.CaseCount]measure.Force{p.Dead, p.BuildingMost, p.Live, p.Snow, p.RoofLive, p.Wind}
}

// lifting returns what the loads that come and go lift under a combination, 0 or
// negative: floor load on the worst bays, and roofs whose walls stand out past
// the next line and turn the joists up behind it.
func (p PierLoad) lifting(combo loads.Combination) measure.Force {
	f := combo.Factors
	return p.LiveLeast*measure.Force(f[loads.LiveCase]) + min(0, p.Snow)*measure.Force(f[loads.SnowCase]) + min(0, p.RoofLive)*measure.Force(f[loads.RoofCase])
}

// SumWords writes the pier's load as the sum of its cases.
func (p *PierLoad) SumWords(t check.Words) []string {
	var parts string
	for _, combo := range loads.Combinations {
		if combo.Name != p.Combination {
			continue
		}
		for kind, load := range p.Cases() {
			if combo.Factors[kind] == 0 || load == 0 {
				continue
			}
			if parts != "" {
				parts += " + "
			}
			if combo.Factors[kind] != 1 {
				parts += fmt.Sprintf("%.3g × ", combo.Factors[kind])
			}
			name := loads.CaseNames[kind]
			if loads.Case(kind) == loads.BuildingCase && load < 0 {
				name = "building at its lightest"
			}
			parts += fmt.Sprintf("%s (%s)", t.Force(float64(load)), name)
		}
	}
	return []string{fmt.Sprintf("P = %s = %s under %s", parts, t.Force(float64(p.Most)), p.Combination)}
}
