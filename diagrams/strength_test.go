package diagrams

import (
	"math"

	"pierbook/calc/measure"
)

func sampleSplice(j site) Splice {
	p := Splice{Pier: "B3", BeamDepth: 5*in + in/2, Plies: []SplicePly{{true}}, Thick: 3*in + in/2, Post: 3*in + in/2, Bearing: 1*in + 3*in/4, Least: 1*in + in/2}
	if j.longName {
		p.BeamDepth, p.Plies, p.Thick, p.Post, p.Bearing = 9*in+in/4, []SplicePly{{true}, {false}, {true}}, 3*in/2, 5*in+in/2, 2*in+3*in/4
	}
	return p
}

func sampleStrings(j site) Strings {
	return Strings{Grid: j.grid(), SetBack: 2*ft + 6*in, Board: 3 * ft, Hole: 20 * in}
}

func sampleLoads(j site) Loads {
	l := Loads{Grid: j.grid(), Rated: 2000 * measure.PoundForce}
	for i := range l.Piers {
		load := measure.Force(600+float64(i*437%1900)) * measure.PoundForce
		l.Loads = append(l.Loads, PierLoad{load, measure.Ratio(load / l.Rated)})
	}
	return l
}

func sampleCurves(j site) Curves {
	c := Curves{Member: "beam line B", Length: j.long, Case: "live load on every bay; values at the allowable-stress level"}
	piers := j.grid().onLine(0)
	for _, p := range piers {
		c.Supports = append(c.Supports, Support{p.Name, p.X})
	}
	bay := float64(piers[1].X - piers[0].X)
	for k := range 201 {
		x := j.long.Part(k, 200)
		phase := float64(x-piers[0].X) / bay
		fade := 1 - 0.3*math.Abs(2*float64(k)/200-1)
		moment := 900 * (0.25 - math.Cos(2*math.Pi*phase)) * fade
		if x < piers[0].X || x > piers[len(piers)-1].X {
			moment = 0
		}
		c.Moment = append(c.Moment, MomentAt{x, measure.Moment(moment)})
		c.Deflection = append(c.Deflection, DeflectionAt{x, measure.Length(float64(in) / 12 * (1 - math.Cos(2*math.Pi*phase)) * fade)})
	}
	return c
}

func sampleLoadPath(j site) LoadPath {
	lb := measure.PoundForce
	return LoadPath{Pier: "B3", Parts: []PathPart{
		{"surface", 812 * lb, 812 * lb, "bending by span rating 0.50"},
		{"joist", 41 * lb, 853 * lb, "bending 0.62"},
		{"beam", 30 * lb, 883 * lb, j.words("shear 0.81", "shear at a distance of the depth from the support 0.81")},
		{"post", 4 * lb, 887 * lb, "bearing under beam 0.35"},
		{"block", 48 * lb, 935 * lb, "rated load 0.47"},
		{j.words("stone", "crushed stone, compacted in layers"), 120 * lb, 1055 * lb, ""},
		{"soil", 0, 1055 * lb, "bearing 0.70"},
	}}
}
