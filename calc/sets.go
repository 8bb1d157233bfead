package calc

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/savings"
	"pierbook/calc/yard"
)

// addSets enters the things that come in rows, part by part.
func (p *Plan) addSets() {
	p.Figures.AddSets(p.Frame.Sets(p.Style)...)
	p.Figures.AddSets(p.Strength.Sets()...)
	proof := figure.Figure{Key: "pick.proof", Means: "why no frame costs less than the one picked", Origin: figure.Computed, Formula: "every frame that costs less fails a check, or stands on a floor or beam that did"}
	if p.Picked != nil {
		proof.Value = measure.Word(p.Picked.Proof)
		p.Figures.Add(p.Picked.Figures()...)
	}
	p.Figures.Add(proof)
	p.Figures.AddSets(p.Picked.Set())
	p.Figures.AddSets(yard.Sets(p.Cuts, p.Sheets, len(p.Job.Measured.Seats) > 0, p.Style)...)
	p.Figures.AddSets(savings.Set(p.tried, p.Style))
	p.Figures.AddSets(p.SetOut.Sets()...)
	p.Figures.AddSets(p.Order.Sets()...)
	p.Figures.AddSets(p.Weekend.Sets(p.Job.Crew.Starts, p.Style)...)
	p.Figures.AddSets(p.Heights.Sets(p.Job)...)
	p.Figures.AddSets(p.Ground.TapedSet(p.Frame), p.Earthwork.OddsSet())
	p.Figures.AddSets(p.Ground.CutSets(p.Job)...)
	p.Figures.AddSets(p.MendSet())
	p.Figures.AddSets(levelling.Sets(p.Job, p.Frame, p.Book)...)
	p.Figures.AddSets(p.Job.Oddities())
	p.Figures.Add(p.rowFigures()...)
}

// rowFigures are what the notes and the cells of some tables say over several
// parts.
func (p *Plan) rowFigures() []figure.Figure {
	word := func(key, means, value, rule string, from ...string) figure.Figure {
		return figure.Figure{Key: key, Means: means, Value: measure.Word(value), Origin: figure.Computed, Formula: rule, From: from}
	}
	var runs []string
	if p.Book != nil {
		runs = p.Book.RunWords(p.Style)
	}
	sure, beyond := p.Heights.NotNamed()
	figures := []figure.Figure{
		word("ground.runs", "how each run of the level book closes", strings.Join(runs, " "), "misclosure against the allowance"),
		word("chances.not_named", "estimated piers whose chance is hardly any", strconv.Itoa(sure), "chance under one in a thousand"),
		figure.Answer("chances.beyond", "a floor that would be safe is higher than the highest", beyond, "safe floor over the highest floor", "floor.highest"),
	}
	stones := figure.Figure{Key: "stone.found", Means: "what is known of the beds by the bar", Value: figure.Nothing, Origin: figure.Computed, Formula: "beds known by the bar, their mean and scatter, and those to foresee"}
	if odds := p.Earthwork.Odds; odds != nil {
		stones.Value = measure.Word(fmt.Sprintf("%d beds known by the bar, %s deep on average, two in three within %s of that, for %d more", odds.Probed, odds.Mean.Print(p.Style), odds.Scatter.Print(p.Style), odds.Unknown))
	}
	var said []string
	tolerance := figure.Figure{Key: "moves.tolerance", Means: "a move that a tape cannot show", Origin: figure.Computed, Formula: "two errors of a tape reading", From: []string{"tape.error"}}
	for _, check := range p.SetOut.Checks() {
		said = append(said, check.Said(p.Style))
		if check.MayMove() && !check.InPlace() {
			tolerance.Value = check.Tolerance
		}
	}
	sides := figure.Figure{Key: "sides.said", Means: "what the measured sides and diagonals mean", Value: measure.Word(strings.Join(said, " ")), Origin: figure.Computed, Formula: "test value, squareness and suspects of each measuring"}
	figures = append(figures, stones, tolerance, sides)
	return append(append(figures, p.doFigures()...), p.builtPlaces()...)
}

// doFigures say what to do about each post, with the doubt about its seat, once
// seats were read or posts cut.
func (p *Plan) doFigures() []figure.Figure {
	doubts := map[string]string{}
	for _, d := range p.Heights.DoubtfulSeats(p.Job) {
		doubts[d.Pier] = "; " + d.Sentence(p.Style)
	}
	begun := p.Heights.Seats != nil || len(p.Job.Measured.PostsCut) > 0
	figures := make([]figure.Figure, len(p.Heights.Piers))
	for i, pier := range p.Heights.Piers {
		key := "pier." + pier.Name
		f := figure.Figure{Key: key + ".do", Means: "what to do at " + pier.Name + ", and how sure its seat is", Value: figure.Nothing, Origin: figure.Computed,
			Formula: "by the state of the post; a seat far from its plan is read again", From: []string{key + ".post_words"}}
		if begun && p.Heights.Posts != nil {
			f.Value = measure.Word(p.Heights.Posts[i].Words(p.Heights.Posts, p.Style) + doubts[pier.Name])
		}
		figures[i] = f
	}
	return figures
}

// builtPlaces name the piers of the extremes of the finished floor.
func (p *Plan) builtPlaces() []figure.Figure {
	var at [4]string
	if a := p.Heights.AsBuilt; a != nil {
		at = [4]string{a.High.Name, a.Low.Name, a.WorstNeighbour[0].Name, a.WorstNeighbour[1].Name}
	}
	var figures []figure.Figure
	for i, of := range []struct{ key, means, from string }{{"built.high_at", "where the finished floor is highest", "built.high"}, {"built.low_at", "where the finished floor is lowest", "built.low"},
		{"built.step_from", "first of the neighbours that differ most", "built.step"}, {"built.step_to", "second of the neighbours that differ most", "built.step"}} {
		figures = append(figures, figure.Figure{Key: of.key, Means: of.means, Value: wordOrNone(at[i]), Origin: figure.Computed, Formula: "taken from the readings over all piers", From: []string{of.from}})
	}
	return figures
}
