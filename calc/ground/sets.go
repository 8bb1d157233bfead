package ground

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Sets returns the things of the ground that come in rows, with the figures of
// each that only tables ask for.
func (g *Ground) Sets(j *job.Job) []figure.Set {
	return []figure.Set{g.piers(j)}
}
