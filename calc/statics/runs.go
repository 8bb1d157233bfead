package statics

import "pierbook/calc/measure"

// Inside cuts a load to the run and lets what stands outside rest on its ends.
func (r Run) Inside(p Push) []Push {
	if p.IsPoint() {
		at := min(max(p.From, r.Start), r.End)
		return []Push{{at, at, p.Size}}
	}
	var kept []Push
	if out := min(p.To, r.Start) - p.From; out > 0 {
		kept = append(kept, Push{r.Start, r.Start, p.Size * out})
	}
	if out := p.To - max(p.From, r.End); out > 0 {
		kept = append(kept, Push{r.End, r.End, p.Size * out})
	}
	if from, to := max(p.From, r.Start), min(p.To, r.End); from < to {
		kept = append(kept, Push{from, to, p.Size})
	}
	return kept
}

// Outside returns what one newton per metre over the floor puts on the run's
// ends where the floor runs on past the beam.
func (r Run) Outside(length float64) []Push {
	var ends []Push
	for _, p := range r.Inside(Push{0, length, 1}) {
		if p.IsPoint() {
			ends = append(ends, p)
		}
	}
	return ends
}

// Joints returns the supports over which a ply is spliced.
func (r Run) Joints(ply []measure.Length) []bool {
	hinges := make([]bool, len(r.Supports))
	for _, joint := range ply {
		nearest, at := 0, joint.Metres()
		for i, s := range r.Supports {
			if abs(s-at) < abs(r.Supports[nearest]-at) {
				nearest = i
			}
		}
		hinges[nearest] = true
	}
	return hinges
}

func abs(v float64) float64 { return max(v, -v) }
