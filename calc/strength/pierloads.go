package strength

import (
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
	Height                                     Height
	HeightKnown                                bool
}

// height returns the heights at a pier, or what stands in for them: the longest
// post allowed and the least dig and stone, or a pier's own bed.
func (c *checker) height(pier string) Height {
	if h, ok := c.in.Heights[pier]; ok {
		return h
	}
	h := Height{Post: c.job.Frame.Posts.Longest, Stone: c.job.Stone.Least, Dig: c.job.Dig.Least}
	if bed := c.job.Piers[pier].Bed; bed != nil {
		h.Stone = *bed
	}
	return h
}

// pierLoads sums the loads of every pier up.
func (c *checker) pierLoads() []PierLoad {
	piers := make([]PierLoad, len(c.frame.Piers))
	for i, p := range c.frame.Piers {
		h := c.height(p.Name)
		_, known := c.in.Heights[p.Name]
		r, n := &c.lines[p.Line].reactions, p.Number-1
		post := measure.Force(c.loads.post * h.Post.Metres())
		pl := PierLoad{Name: p.Name, Height: h, HeightKnown: known,
			Dead: measure.Force(r[deadCase].most[n]) + post, Building: measure.Force(r[buildingCase].whole[n]),
			BuildingMost: measure.Force(r[buildingCase].most[n]), BuildingLeast: measure.Force(r[buildingCase].least[n]),
			Live: measure.Force(r[liveCase].most[n]), LiveLeast: measure.Force(r[liveCase].least[n]),
			Snow: measure.Force(r[snowCase].most[n]), RoofLive: measure.Force(r[roofCase].most[n]), Wind: c.windDown(p.Line, p.Number)}
		pl.Lightest = pl.Dead + pl.BuildingLeast
		for _, combo := range c.onPier {
			if total := pl.under(combo); total > pl.Most {
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

// lightShare is the lightest building over the heaviest.
func (c *checker) lightShare() float64 {
	b := c.job.Building
	if b == nil || b.WeightMost <= 0 {
		return 0
	}
	return float64(b.WeightLeast / b.WeightMost)
}

// under returns the pier's load under a combination. Where the building's weight
// relieves the pier, its lightest counts.
func (p PierLoad) under(combo Combination) measure.Force {
	sum := measure.Force(0)
	for kind, load := range p.cases() {
		sum += load * measure.Force(combo.factors[kind])
	}
	return sum
}

// cases returns the loads by case as they enter the combinations.
func (p PierLoad) cases() [caseCount]measure.Force {
	return [caseCount]measure.Force{p.Dead, p.BuildingMost, p.Live, p.Snow, p.RoofLive, p.Wind}
}

// lifting returns what the loads that come and go lift under a combination, 0 or
// negative: floor load on the worst bays, and roofs whose walls stand out past
// the next line and turn the joists up behind it.
func (p PierLoad) lifting(combo Combination) measure.Force {
	f := combo.factors
	return p.LiveLeast*measure.Force(f[liveCase]) + min(0, p.Snow)*measure.Force(f[snowCase]) + min(0, p.RoofLive)*measure.Force(f[roofCase])
}

// windDown returns how hard wind presses on a pier of the leeward row: the
// overturning moment over the distance of the outer rows and the piers in one.
func (c *checker) windDown(line, number int) measure.Force {
	if c.wind == nil {
		return 0
	}
	w, down := c.wind, 0.0
	post := c.tallest()
	if line == 0 || line == len(c.frame.Lines)-1 {
		down = max(down, w.couple(w.Across, post))
	}
	if number == 1 || number == c.frame.PerLine(line) {
		down = max(down, w.couple(w.Along, post))
	}
	return measure.Force(down)
}

func (w *Wind) couple(p Push, post measure.Length) float64 {
	if p.Span <= 0 {
		return 0
	}
	return float64(p.Force) * float64(w.Factor) * (p.Arm + post).Metres() / p.Span.Metres() / float64(p.perRow)
}
