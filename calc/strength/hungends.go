package strength

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
	"pierbook/calc/timber"
	"pierbook/calc/trade"
)

// hungEnds checks what the beams, set back, do not reach: end joists from rim to
// rim, and the rims past the beams as the cantilevers that carry them, with the
// walls, the roof and the snow that stand there.
func (t *Trial) hungEnds() bool {
	ends, err := t.Floor.HungEnds(t.store)
	if err != nil {
		t.wrong("frame.beams.set_back", "the rims past the beams cannot be worked: "+err.Error(), "set the beams back by 0")
		return false
	}
	var joists, rims []statics.Bar
	for _, end := range ends {
		joists, rims = append(joists, end.Joists...), append(rims, end.Rims...)
	}
	for i := range joists {
		joists[i].ID = "end_joist"
	}
	for _, group := range []struct {
		bars []statics.Bar
		of   func(b *statics.Bar) []check.Finding
	}{
		{joists, func(b *statics.Bar) []check.Finding {
			m := t.joist
			return []check.Finding{m.Bending(b, t.combos), m.Shear(b, t.combos), m.LiveDeflection(b, t.Loads.Present, t.rules.LiveLimit), m.TotalDeflection(b, t.Loads.Present, t.rules.TotalLimit)}
		}},
		{rims, func(b *statics.Bar) []check.Finding {
			m := t.rim
			return []check.Finding{m.Bending(b, t.combos), m.Shear(b, t.combos), m.TotalDeflection(b, t.Loads.Present, t.rules.TotalLimit)}
		}},
	} {
		for kind := range 4 {
			t.AddWorst(len(group.bars), func(i int) check.Finding {
				found := group.of(&group.bars[i])
				if kind >= len(found) {
					return check.Finding{}
				}
				return found[kind]
			})
		}
	}
	return true
}

// rimOverBeam fails rims that stand out past the ends of the beams and do not lie over
// the outer ones: they would stand on the tips of the joists, which is not worked.
func (t *Trial) rimOverBeam() check.Finding {
	inset, most := t.job.Frame.Beams.Inset, t.frame.Sections.Rim.Width/2
	if near, far := t.Floor.Hung(); near+far == 0 || inset == 0 {
		return check.Finding{}
	}
	result := check.Check{ID: "rim.over_beam", What: "rims past the ends of the beams, beside the outer beams", Demand: inset, Capacity: most, Ratio: check.RatioOf(float64(inset), float64(most)),
		Clause: "statics: a rim past the beams is worked as lying on them"}
	return check.Finding{Check: result, Explain: func(w check.Words) []string {
		return []string{
			fmt.Sprintf("the outer beams stand %s inside the frame; half a rim is %s", w.Length(inset), w.Length(most)),
			"end joists hang on rims that reach past the ends of the beams, and these rims must lie on the outer beams. Set the inset or the set-back to 0",
		}
	}}
}

// hungStub fails a floor that reaches out past the outer beams on short joists hung
// from them: a hanger is a hinge, so that nothing holds their outer ends up.
func (t *Trial) hungStub() check.Finding {
	inset, rim := t.job.Frame.Beams.Inset, t.frame.Sections.Rim.Width
	if !t.hung() || inset <= rim {
		return check.Finding{}
	}
	result := check.Check{ID: "joist.hung_overhang", What: "floor past the outer beams on joists that hang from them", Demand: inset, Capacity: rim, Ratio: check.RatioOf(float64(inset), float64(rim)),
		Clause: "statics: a hanger is a hinge and holds no overhang"}
	return check.Finding{Check: result, Explain: func(w check.Words) []string {
		return []string{
			fmt.Sprintf("the floor reaches %s past the outer beams; a rim lying on them takes %s", w.Length(inset), w.Length(rim)),
			"a short joist in a hanger turns about it: its outer end falls. Set the inset to 0, or let the joists run over the beams (sit: on_beams)",
		}
	}}
}

// leastSeat checks that joists on the outer beams, behind the rim, have the least
// bearing of wood on wood, whatever they carry.
func (t *Trial) leastSeat() check.Finding {
	if t.hung() {
		return check.Finding{}
	}
	least := trade.BearingLeast.In(t.job.Units)
	have := min(t.Floor.Seat(0), t.Floor.Seat(len(t.frame.Lines)-1))
	result := check.Check{ID: "joist.seat", What: "bearing length of the joists on the outer beams", Demand: least, Capacity: have, Ratio: check.RatioOf(float64(least), float64(have)), Clause: trade.BearingLeast.Source()}
	return check.Finding{Check: result, Explain: func(w check.Words) []string {
		return []string{fmt.Sprintf("least bearing %s; the joists lie %s on the outer beam behind the rim; ratio %s", w.Length(least), w.Length(have), w.Ratio(float64(result.Ratio)))}
	}}
}

// outerPosts checks that the whole of the outer posts stands under the beam.
func (t *Trial) outerPosts() check.Finding {
	half := t.frame.Sections.Post.Width / 2
	nearest := measure.Length(-1)
	for _, p := range t.frame.Piers {
		line := t.frame.Lines[p.Line]
		if d := min(p.X-line.Start, line.End-p.X); nearest < 0 || d < nearest {
			nearest = d
		}
	}
	if nearest >= half {
		return check.Finding{}
	}
	result := check.Check{ID: "post.under_beam", What: "outer posts under the end of the beam", Demand: half, Capacity: nearest, Ratio: check.RatioOf(float64(half), float64(nearest)),
		Clause: "the bearing of beams is worked on the whole post; common practice, no source"}
	return check.Finding{Check: result, Explain: func(w check.Words) []string {
		return []string{fmt.Sprintf("half a post is %s; the outer post's middle stands %s from the end of the beam, so part of it carries nothing", w.Length(half), w.Length(nearest))}
	}}
}

// oneBayPanels fails panels that cover one bay only: the span rating holds for
// panels over two or more.
func (t *Trial) oneBayPanels() check.Finding {
	if !t.frame.Surface.OneBay {
		return check.Finding{}
	}
	result := check.Check{ID: "surface.two_spans", What: "panels over one joist bay only", Demand: measure.Count(2), Capacity: measure.Count(1), Ratio: 2, Clause: "APA Form E30V (2011), p. 32; IRC 2021 Table R503.2.1.1(1)"}
	return check.Finding{Check: result, Explain: func(check.Words) []string {
		return []string{"span ratings are for panels over two spans or more; here some lie over one. Space the joists closer"}
	}}
}

// boardsOnTwoJoists checks boards of an open deck that lie on two joists alone.
func (t *Trial) boardsOnTwoJoists() check.Finding {
	if t.job.Building != nil {
		return check.Finding{}
	}
	half := t.frame.Sections.Joist.Width / 2
	for _, b := range t.frame.Surface.Boards {
		for _, piece := range b.Pieces {
			under := map[measure.Length]bool{}
			for _, j := range t.frame.Joists {
				if j.Centre+half > piece.From && j.Centre-half < piece.To {
					under[j.Centre] = true
				}
			}
			if len(under) <= 2 {
				return timber.BoardsOnTwoJoists(t.job.Platform.Surface, t.widestBay())
			}
		}
	}
	return check.Finding{}
}
