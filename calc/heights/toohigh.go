package heights

import "pierbook/calc/measure"

// High is a place whose ground keeps the floor higher than another allows.
type High struct {
	Name string // of a pier, or of a spot under the frame
	Pier bool
	X, Y measure.Length
	Over measure.Length // how much lower its ground would have to be
}

// TooHigh returns the places that keep the floor above what was given, or above
// the highest that every pier can reach; where a pier contradicts itself that pier,
// whose firm ground a cut brings nearer; nil without a clash. Piers whose seats are
// set are not among them: no ground of theirs is cut any more.
func (h *Heights) TooHigh() []High {
	if h.Clash == nil {
		return nil
	}
	if c := h.Clash; c.Kind == OnePier {
		p := h.Piers[h.index[c.High.Name]]
		return []High{{Name: p.Name, Pier: true, X: p.X, Y: p.Y, Over: c.Amount}}
	}
	inside := h.ground.Inside()
	target := h.terms.ceiling(h.places).Floor
	if h.terms.RoundUp > 0 {
		target = target.RoundDownTo(h.terms.RoundUp)
	}
	if h.terms.Given != nil {
		target = *h.terms.Given
	}
	var list []High
	for _, d := range h.terms.demands(h.places, inside) {
		if d.Floor <= target || d.Limit == SeatAsSet {
			continue
		}
		place := High{Name: d.Name, Over: d.Floor - target}
		if i, pier := h.index[d.Name]; pier {
			place.Pier, place.X, place.Y = true, h.Piers[i].X, h.Piers[i].Y
		}
		for _, s := range inside {
			if s.Name == d.Name && !place.Pier {
				place.X, place.Y = s.X, s.Y
			}
		}
		list = append(list, place)
	}
	return list
}
