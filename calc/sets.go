package calc

import (
	"pierbook/calc/figure"
	"pierbook/calc/measure"
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
	p.Figures.AddSets(p.Order.Sets()...)
	p.Figures.AddSets(p.Weekend.Sets(p.Job.Crew.Starts, p.Style)...)
	p.Figures.AddSets(p.Heights.Sets(p.Job)...)
	p.Figures.AddSets(p.oddities())
}
