package strength

import "pierbook/calc/measure"

// inside cuts a load to the run and lets what stands outside rest on its ends.
func (r run) inside(p push) []push {
	if p.point() {
		at := min(max(p.from, r.start), r.end)
		return []push{{at, at, p.size}}
	}
	var kept []push
	if out := min(p.to, r.start) - p.from; out > 0 {
		kept = append(kept, push{r.start, r.start, p.size * out})
	}
	if out := p.to - max(p.from, r.end); out > 0 {
		kept = append(kept, push{r.end, r.end, p.size * out})
	}
	if from, to := max(p.from, r.start), min(p.to, r.end); from < to {
		kept = append(kept, push{from, to, p.size})
	}
	return kept
}

// outside returns what one newton per metre over the floor puts on the run's
// ends where the floor runs on past the beam.
func (r run) outside(length float64) []push {
	var ends []push
	for _, p := range r.inside(push{0, length, 1}) {
		if p.point() {
			ends = append(ends, p)
		}
	}
	return ends
}

// joints returns the supports over which a ply is spliced.
func (r run) joints(ply []measure.Length) []bool {
	hinges := make([]bool, len(r.supports))
	for _, joint := range ply {
		nearest, at := 0, joint.Metres()
		for i, s := range r.supports {
			if abs(s-at) < abs(r.supports[nearest]-at) {
				nearest = i
			}
		}
		hinges[nearest] = true
	}
	return hinges
}

func abs(v float64) float64 { return max(v, -v) }
