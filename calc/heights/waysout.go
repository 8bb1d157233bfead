package heights

import "pierbook/calc/measure"

// waysOut lists what can be done about a post that is too short as cut, or
// that its seat asks to be outside its limits.
func (h *Heights) waysOut(list []Post, i int) []WayOut {
	p := list[i]
	switch p.State {
	case CutAnew:
		ways := []WayOut{h.elsewhere(list, i), h.lowerFloor(list, p.Length()-*p.Cut)}
		return append(ways, WayOut{Kind: "new post", Length: p.Length()})
	case Unfit:
		if p.Length() < h.terms.Shortest {
			return []WayOut{{Kind: "lower the seat", By: h.terms.Shortest - p.Length(), Length: h.terms.Shortest}}
		}
		return []WayOut{{Kind: "raise the seat", By: p.Length() - h.terms.Longest, Length: h.terms.Longest}}
	}
	return nil
}

// elsewhere says at which other pier a short post serves.
func (h *Heights) elsewhere(list []Post, i int) WayOut {
	for _, p := range list {
		if p.From == list[i].Name {
			return WayOut{Kind: "another pier", Pier: p.Name, By: p.Off, Length: list[i].Length()}
		}
	}
	return WayOut{Kind: "another pier", Blocked: "no pier whose seat is read still wants a post as short as this"}
}

// lowerFloor weighs a lower floor by what it brings with it: every cut post is cut
// again by the step, and others may come out too short.
func (h *Heights) lowerFloor(list []Post, step measure.Length) WayOut {
	way := WayOut{Kind: "lower floor", By: step}
	for _, p := range list {
		if p.Cut != nil && *p.Cut > p.Length()-step+h.terms.Serves {
			way.Trims = append(way.Trims, p.Name)
		}
		if h.terms.tooShort(p.Length() - step) {
			way.TooShort = append(way.TooShort, p.Name)
		}
	}
	if h.Floor == nil {
		way.Blocked = "the ground was not read, so that nothing says how near to it the beams may come"
		return way
	}
	if len(way.TooShort) > 0 {
		way.Blocked = "posts would come out under the shortest"
	}
	if _, high := h.ground.Under(); h.Floor.PostTops-step < high+h.terms.Clear {
		way.Blocked = "the beams would come too near the ground"
	}
	return way
}
