package calc

// addSets enters the things that come in rows, part by part.
func (p *Plan) addSets() {
	p.Figures.AddSets(p.Frame.Sets(p.Style)...)
	p.Figures.AddSets(p.Order.Sets()...)
	p.Figures.AddSets(p.Weekend.Sets(p.Job.Crew.Starts, p.Style)...)
	p.Figures.AddSets(p.Ground.Sets(p.Job)...)
	p.Figures.AddSets(p.oddities())
}
