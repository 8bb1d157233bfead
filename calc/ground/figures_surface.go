package ground

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

func groundKey(pier string) string { return "pier." + pier + ".ground" }

// surface adds the ground at each point and how far it falls.
func (l *ledger) surface(g *Ground) {
	if g.Surface == nil {
		l.Blank("ground.high", "highest ground at a pier", "ground.low", "lowest ground at a pier", "ground.fall", "fall of the ground over the piers",
			"ground.read", "piers where the ground was read", "ground.estimated", "piers where the ground is estimated", "ground.beyond", "piers more than half a bay outside the readings")
		return
	}
	for _, p := range g.Book.Points {
		if _, pier := g.Pier(p.Name); !pier {
			l.Add(g.Book.HeightFigure(l.Style, "spot."+p.Name+".ground", "ground at "+p.Name, p))
		}
	}
	high, low, read := g.extremes()
	l.Add(figure.Figure{Key: "ground.high", Means: "highest ground at a pier, " + high.Name, Value: high.Level.Height,
		Formula: "the greatest of the ground heights at the piers", Working: l.at(high), From: []string{groundKey(high.Name)}})
	l.Add(figure.Figure{Key: "ground.low", Means: "lowest ground at a pier, " + low.Name, Value: low.Level.Height,
		Formula: "the least of the ground heights at the piers", Working: l.at(low), From: []string{groundKey(low.Name)}})
	fall := high.Level.Height - low.Level.Height
	l.Add(figure.Figure{Key: "ground.fall", Means: "fall of the ground over the piers", Value: fall, Formula: "fall = highest − lowest",
		Working: l.Sum(fall, figure.Plus(high.Level.Height), figure.Minus(low.Level.Height)), From: []string{"ground.high", "ground.low"}})
	l.Add(figure.Figure{Key: "ground.read", Means: "piers where the ground was read", Value: measure.Count(read),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", read, measure.Counted(len(g.Piers), "pier"))})
	l.Add(figure.Figure{Key: "ground.estimated", Means: "piers where the ground is estimated", Value: measure.Count(len(g.Piers) - read),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", len(g.Piers)-read, measure.Counted(len(g.Piers), "pier"))})
	beyond := 0
	for _, p := range g.Piers {
		if p.Level.Beyond {
			beyond++
		}
	}
	l.Add(figure.Figure{Key: "ground.beyond", Means: "piers more than half a bay outside the readings: read them before anything is cut", Value: measure.Count(beyond),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", beyond, measure.Counted(len(g.Piers), "pier"))})
}

func (l *ledger) at(p Pier) string { return fmt.Sprintf("%s at %s", l.Print(p.Level.Height), p.Name) }

// extremes returns the highest and the lowest pier, the first of equals, and how
// many were read.
func (g *Ground) extremes() (high, low Pier, read int) {
	high, low = g.Piers[0], g.Piers[0]
	for _, p := range g.Piers {
		if p.Level.Height > high.Level.Height {
			high = p
		}
		if p.Level.Height < low.Level.Height {
			low = p
		}
		if p.Level.Read {
			read++
		}
	}
	return high, low, read
}

// level adds the ground at one pier.
func (l *ledger) level(g *Ground, p Pier) {
	key := groundKey(p.Name)
	if p.Level == nil {
		l.Blank(key, "height of the ground at "+p.Name, key+"_from", "whether the ground at "+p.Name+" was read",
			key+"_error", "standard error of the ground at "+p.Name)
		return
	}
	from := "read"
	if p.Level.Read {
		height, _ := g.Book.Point(p.Name)
		l.Add(g.Book.HeightFigure(l.Style, key, "height of the ground at "+p.Name, height))
	} else {
		from = "estimated"
		l.Add(figure.Figure{Key: key, Means: "height of the ground at " + p.Name, Value: p.Level.Height,
			Formula: "thin-plate surface through the readings, z = c0 + c1 x + c2 y + Σ wi ri² ln ri",
			Working: fmt.Sprintf("through %s = %s", measure.Counted(len(g.Surface.Nodes), "place"), l.Print(p.Level.Height)),
			Source:  "J. Duchon, Splines minimizing rotation-invariant semi-norms in Sobolev spaces, 1977", From: l.nodes})
	}
	l.Add(figure.Figure{Key: key + "_from", Means: "whether the ground at " + p.Name + " was read", Value: measure.Word(from),
		Formula: "read, or estimated from the surface", Working: from, From: []string{key}})
	l.groundError(g, p)
}

func (l *ledger) groundError(g *Ground, p Pier) {
	f := figure.Figure{Key: groundKey(p.Name) + "_error", Means: "standard error of the ground at " + p.Name, Value: p.Level.Error, Rounding: measure.Up}
	if p.Level.Read {
		f.Formula, f.Working = "none: the ground was read", l.Print(p.Level.Error)
	} else {
		lever := measure.Ratio(g.Surface.Plane.Leverage(p.X, p.Y))
		f.Formula = "error = unevenness × √(1 + leverage), the unevenness from leaving out each reading in turn"
		if p.Level.Rough {
			f.Formula = "error = unevenness × √(1 + leverage), the unevenness rough: too few readings to say"
		}
		f.Working = fmt.Sprintf("with leverage %s: %s", l.Print(lever), l.Up(p.Level.Error))
		f.From = l.nodes
	}
	l.Add(f)
}

// nodeKeys returns the keys of the heights that the surface goes through, none
// without one.
func (g *Ground) nodeKeys() []string {
	if g.Surface == nil {
		return nil
	}
	keys := make([]string, len(g.Surface.Nodes))
	for i, n := range g.Surface.Nodes {
		keys[i] = "spot." + n.Name + ".ground"
		if _, pier := g.Pier(n.Name); pier {
			keys[i] = groundKey(n.Name)
		}
	}
	return keys
}
