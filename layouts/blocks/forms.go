package blocks

import (
	"html/template"

	"pierbook/calc"
	"pierbook/content"
	"pierbook/layouts"
)

// forms are the sums that work on the phone.
var forms = map[string]maker{"post": postForm}

// postForm is the cut length of a post from the rod on its seat.
func postForm(p *calc.Plan, c content.Call) template.HTML {
	if p.Heights.Floor == nil {
		return ""
	}
	f := layouts.Form{Result: "post", Plus: "reading on the seat", Minus: "today's reading on the bench mark",
		Reads: reads(p.Job.Ground.Instrument.Reads), Fraction: p.Job.Fraction, Least: p.Job.Frame.Posts.Shortest, Most: p.Job.Frame.Posts.Longest}
	for _, pier := range p.Frame.Piers {
		f.Points = append(f.Points, layouts.Point{Name: pier.Name, Value: p.Heights.Lines[pier.Line].Printed})
	}
	return f.For(c)
}

func reads(key string) layouts.Reads {
	switch key {
	case "tenths":
		return layouts.FeetTenths
	case "millimetres":
		return layouts.Millimetres
	default:
		return layouts.FeetInches
	}
}
