package terrain

import (
	"fmt"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Suspect is a ground reading to take again before anything is dug: with a usual
// slip taken out it would fit its neighbours much better.
type Suspect struct {
	Point   string
	SetUp   int // number of the set-up, as in the job file
	Reading measure.Length
	Should  measure.Length // the reading without the slip
	Kind    string         // of slip: "a foot"
	By      measure.Length // how much higher the ground would then be, below 0 lower
}

// suspects holds the readings of the ground against one another. A point that was
// read more than once, or that others were carried on from, is held by the book. A
// spot is read where the ground is out of the ordinary, a knoll or a hollow, and is
// not asked about.
func (g *Ground) suspects(j *job.Job) []Suspect {
	sights := singleSights(j)
	var suspects []Suspect
	for _, odd := range g.Surface.Odd(func(n Node) []Mend {
		sight, once := sights[n.Name]
		if !once || !g.atPier(n.Name) {
			return nil
		}
		var mends []Mend
		for _, c := range levelling.MeantReadings(sight.reading, j.Ground.Instrument.Reads) {
			mends = append(mends, Mend{Kind: c.Kind, By: sight.reading - c.Should})
		}
		return mends
	}) {
		sight := sights[odd.Node.Name]
		suspects = append(suspects, Suspect{Point: odd.Node.Name, SetUp: sight.setUp, Reading: sight.reading, Should: sight.reading - odd.Mend.By, Kind: odd.Mend.Kind, By: odd.Mend.By})
	}
	return suspects
}

// sight is a reading with its set-up.
type sight struct {
	setUp   int
	reading measure.Length
}

// singleSights returns the points of the ground that were read once, as a foresight.
func singleSights(j *job.Job) map[string]sight {
	single, seen := map[string]sight{}, map[string]int{}
	for i, setUp := range j.Ground.SetUps {
		for k, s := range setUp {
			seen[s.Point]++
			if k > 0 {
				single[s.Point] = sight{i + 1, s.Reading}
			}
		}
	}
	for point, times := range seen {
		if times > 1 {
			delete(single, point)
		}
	}
	return single
}

// SuspectSentence says which readings to take again and why, or "".
func (g *Ground) SuspectSentence(s measure.Style) string {
	if len(g.Suspects) == 0 {
		return ""
	}
	var parts []string
	for _, o := range g.Suspects {
		way := "higher"
		if o.By < 0 {
			way = "lower"
		}
		parts = append(parts, fmt.Sprintf("%s, %s in set-up %d: read as %s (%s) the ground would lie %s %s and fit its neighbours",
			o.Point, measure.Reading(o.Reading).Print(s), o.SetUp, measure.Reading(o.Should).Print(s), o.Kind, o.By.Abs().Print(s), way))
	}
	if len(parts) == 1 {
		return "Read the ground again before any hole is dug at " + parts[0] + "."
	}
	return "One of these ground readings is odd; read each again before any hole is dug, and a place between them to decide. " + strings.Join(parts, ". ") + "."
}
