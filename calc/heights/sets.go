package heights

import (
	"pierbook/calc/figure"
	"pierbook/calc/job"
)

// Sets returns the things of the heights that come in rows, with the figures of
// each that only tables ask for.
func (h *Heights) Sets(j *job.Job) []figure.Set {
	return []figure.Set{h.piers(j), h.waySet(j.Style()), h.priceSet(j), h.nextSet(), h.chanceSet(), h.freedomSet(j), h.dropSet(j), h.pinchSet(j), h.humpSet()}
}
