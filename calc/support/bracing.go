package support

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/loads"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Bracing asks for bracing both ways where a post is longer than may stand
// without. The force in a brace is the sideways force at the post's top.
func Bracing(p *statics.PierLoad, most measure.Length, side measure.Force, words check.Words) check.Finding {
	if !p.HeightKnown {
		return check.Finding{}
	}
	post := p.Height.Post
	result := check.Check{ID: "pier." + p.Name + ".bracing", What: "bracing of the post at " + p.Name, Demand: post, Capacity: most, Ratio: measure.Ratio(post.Metres() / most.Metres()),
		Clause: "common practice, no source"}
	if !result.Holds() {
		result.Needs = "bracing both ways, each brace for " + words.Force(float64(side)*math.Sqrt2) + " at 45°"
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("post %s; bracing both ways above %s", t.Length(post), t.Length(most)),
			fmt.Sprintf("sideways force: the greater of the wind's share and 2%% of the load = %s", t.Force(float64(side))),
		}
	}}
}

// Sideways returns the force that pushes the top of a post: the wind shared by
// all piers, at least 2 per cent of the load (common practice, no source).
func Sideways(p *statics.PierLoad, w *loads.WindLoad, piers int) measure.Force {
	side := 0.02 * p.Most
	if w != nil {
		side = max(side, w.Greater()/measure.Force(piers))
	}
	return side
}
