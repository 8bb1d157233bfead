package calc

import (
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// questions are what pages ask with {when}, part by part.
func (p *Plan) questions() []figure.Figure {
	return slices.Concat(p.Job.Questions(), p.Book.Questions(), p.Frame.Questions(), p.Heights.Questions(p.Job), p.SetOut.Questions(), p.lastFigures())
}

func wordOrNone(word string) measure.Quantity {
	if word == "" {
		return nil
	}
	return measure.Word(word)
}
