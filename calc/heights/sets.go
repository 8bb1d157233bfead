package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Sets returns the things of the heights that come in rows, with the figures of
// each that only tables ask for.
func (g *Heights) Sets(j *job.Job) []figure.Set {
	return []figure.Set{g.piers(j)}
}
