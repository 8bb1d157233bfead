package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Sets returns the things of the heights that come in rows, with the figures of
// each that only tables ask for.
func (g *Heights) Sets(j *job.Job) []figure.Set {
	return []figure.Set{g.piers(j), g.waySet(j.Style()), g.priceSet(j), g.nextSet(), g.chanceSet(), g.freedomSet(j), g.dropSet(j), g.humpSet()}
}
