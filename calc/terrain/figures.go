package terrain

import (
	"fmt"
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Figures returns every figure of the ground as it was read. The keys are the
// same whatever is known: what has no value yet prints as a blank.
func (g *Ground) Figures(j *job.Job, f *frame.Frame, book *levelling.Book) []figure.Figure {
	l := &ledger{Ledger: figure.Ledger{Style: j.Style()}, nodes: g.Keys()}
	for _, name := range j.Ground.CutNames() {
		how := ".by"
		if j.Ground.Cuts[name].To != nil {
			how = ".to"
		}
		l.cuts = append(l.cuts, "ground.cut."+name+how)
	}
	l.surface(g, book)
	l.Add(figure.Figure{Key: "ground.cuts", Means: "cuts of the ground before the holes are dug", Value: measure.Count(len(j.Ground.Cuts)), Formula: "counted", Working: measure.Counted(len(j.Ground.Cuts), "cut")})
	for i, p := range f.Piers {
		l.level(g, book, i, p)
	}
	odd := figure.Figure{Key: "ground.odd", Means: "ground readings to take again before any hole is dug", Formula: "readings that a usual slip would make fit their neighbours much better", From: l.nodes,
		Source: "N. A. C. Cressie, Statistics for Spatial Data (1993), section 2.6", Memory: true}
	if words := g.SuspectSentence(j.Style()); words != "" {
		odd.Value, odd.Working = measure.Word(words), words
	} else {
		odd.Value, odd.Working = measure.Word("none"), "none"
	}
	l.Add(odd)
	l.lie(g, f)
	l.taped(g, f)
	return l.Figures
}

// ledger gathers the figures of the ground.
type ledger struct {
	figure.Ledger
	nodes []string // keys of the heights that the surface goes through
	cuts  []string // keys of the cuts of the job
}

// LevelKey returns the key of the height of the ground at a pier.
func LevelKey(pier string) string { return "pier." + pier + ".ground" }

// surface adds the ground at each point and how far it falls.
func (l *ledger) surface(g *Ground, book *levelling.Book) {
	if g.Surface == nil {
		l.Blank("ground.high", "highest ground at a pier", "ground.low", "lowest ground at a pier", "ground.fall", "fall of the ground over the piers",
			"ground.read", "piers where the ground was read", "ground.estimated", "piers where the ground is estimated", "ground.beyond", "piers more than half a bay outside the readings")
		return
	}
	for _, p := range book.Points {
		if !g.atPier(p.Name) {
			l.read(book, "spot."+p.Name+".ground", "ground at "+p.Name, p, g.cutAt(p.Name))
		}
	}
	high, low, read := g.extremes()
	l.Add(figure.Figure{Key: "ground.high", Means: "highest ground at a pier, " + high.Pier, Value: high.Height,
		Formula: "the greatest of the ground heights at the piers", Working: l.at(high), From: []string{LevelKey(high.Pier)}})
	l.Add(figure.Figure{Key: "ground.low", Means: "lowest ground at a pier, " + low.Pier, Value: low.Height,
		Formula: "the least of the ground heights at the piers", Working: l.at(low), From: []string{LevelKey(low.Pier)}})
	fall := high.Height - low.Height
	l.Add(figure.Figure{Key: "ground.fall", Means: "fall of the ground over the piers", Value: fall, Formula: "fall = highest − lowest",
		Working: l.Sum(fall, figure.Plus(high.Height), figure.Minus(low.Height)), From: []string{"ground.high", "ground.low"}})
	l.Add(figure.Figure{Key: "ground.read", Means: "piers where the ground was read", Value: measure.Count(read),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", read, measure.Counted(len(g.Levels), "pier"))})
	l.Add(figure.Figure{Key: "ground.estimated", Means: "piers where the ground is estimated", Value: measure.Count(len(g.Levels) - read),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", len(g.Levels)-read, measure.Counted(len(g.Levels), "pier"))})
	beyond := 0
	for _, p := range g.Levels {
		if p.Beyond {
			beyond++
		}
	}
	l.Add(figure.Figure{Key: "ground.beyond", Means: "piers more than half a bay outside the readings: read them before anything is cut", Value: measure.Count(beyond),
		Formula: "counted", Working: fmt.Sprintf("%d of %s", beyond, measure.Counted(len(g.Levels), "pier"))})
}

func (l *ledger) at(p Level) string { return fmt.Sprintf("%s at %s", l.Print(p.Height), p.Pier) }

// level adds the ground at one pier.
func (l *ledger) level(g *Ground, book *levelling.Book, i int, p frame.Pier) {
	key := LevelKey(p.Name)
	if g.Levels == nil {
		l.Blank(key, "height of the ground at "+p.Name, key+"_from", "whether the ground at "+p.Name+" was read",
			key+"_error", "standard error of the ground at "+p.Name)
		return
	}
	from, level := "read", g.Levels[i]
	if level.Read {
		height, _ := book.Point(p.Name)
		l.read(book, key, "height of the ground at "+p.Name, height, level.Cut)
	} else {
		from = "estimated"
		l.Add(figure.Figure{Key: key, Means: "height of the ground at " + p.Name, Value: level.Height,
			Formula: "thin-plate surface through the readings, z = c0 + c1 x + c2 y + Σ wi ri² ln ri",
			Working: fmt.Sprintf("through %s = %s", measure.Counted(len(g.Surface.Nodes), "place"), l.Print(level.Height)),
			Source:  "J. Duchon, Splines minimizing rotation-invariant semi-norms in Sobolev spaces, 1977", From: l.nodes})
		l.Figures[len(l.Figures)-1].Brief = l.brief(level)
		if level.Cut > 0 {
			l.Figures[len(l.Figures)-1].Formula += "; less what is cut off"
			l.Figures[len(l.Figures)-1].Working = fmt.Sprintf("through %s; %s", measure.Counted(len(g.Surface.Nodes), "place"), l.Sum(level.Height, figure.Plus(level.Height+level.Cut), figure.Minus(level.Cut)))
			l.Figures[len(l.Figures)-1].From = append(slices.Clone(l.nodes), l.cuts...)
		}
	}
	l.Add(figure.Figure{Key: key + "_from", Means: "whether the ground at " + p.Name + " was read", Value: measure.Word(from),
		Formula: "read, or estimated from the surface", Working: from, From: []string{key}})
	l.groundError(g, level, p)
}

func (l *ledger) groundError(g *Ground, level Level, p frame.Pier) {
	f := figure.Figure{Key: LevelKey(p.Name) + "_error", Means: "standard error of the ground at " + p.Name, Value: level.Error, Rounding: measure.Up}
	if level.Read {
		f.Formula, f.Working = "none: the ground was read", l.Print(level.Error)
	} else {
		lever := measure.Ratio(g.Surface.Plane.Leverage(p.X, p.Y))
		f.Formula = "error = unevenness × √(1 + leverage), the unevenness from leaving out each reading in turn"
		if level.Rough {
			f.Formula = "error = unevenness × √(1 + leverage), the unevenness rough: too few readings to say"
		}
		f.Working = fmt.Sprintf("with leverage %s: %s", l.Print(lever), l.Up(level.Error))
		f.From, f.Brief = l.nodes, l.brief(level)
	}
	l.Add(f)
}

// brief tells of an estimate in one line: all readings have a share in it.
func (l *ledger) brief(level Level) string {
	text := "not read; from its neighbours, ± " + l.Up(level.Error)
	if level.Cut > 0 {
		text += ", less " + l.Print(level.Cut) + " that is cut off"
	}
	return text
}

// Keys returns the keys of the heights that the surface goes through, none
// without one.
func (g *Ground) Keys() []string {
	if g.Surface == nil {
		return nil
	}
	keys := make([]string, len(g.Surface.Nodes))
	for i, n := range g.Surface.Nodes {
		keys[i] = "spot." + n.Name + ".ground"
		if g.atPier(n.Name) {
			keys[i] = LevelKey(n.Name)
		}
		if g.cutAt(n.Name) > 0 {
			keys[i] += asRead
		}
	}
	return keys
}

// asRead ends the key of a height before the cuts, where they lower it.
const asRead = "_read"

// read adds a height by the level book, and where it is cut both: as read and as
// the cut leaves it.
func (l *ledger) read(book *levelling.Book, key, means string, p levelling.PointHeight, cut measure.Length) {
	if cut == 0 {
		l.Add(book.HeightFigure(l.Style, key, means, p))
		return
	}
	l.Add(book.HeightFigure(l.Style, key+asRead, means+" as read", p))
	l.Add(figure.Figure{Key: key, Means: means + " as cut", Value: p.Height - cut, Formula: "height as read − what is cut off",
		Working: l.Sum(p.Height-cut, figure.Plus(p.Height), figure.Minus(cut)), From: append([]string{key + asRead}, l.cuts...)})
}

// cutAt returns what is cut off at a pier or a spot.
func (g *Ground) cutAt(point string) measure.Length {
	for _, l := range g.Levels {
		if l.Pier == point {
			return l.Cut
		}
	}
	for _, s := range g.Spots {
		if s.Name == point {
			return s.Cut
		}
	}
	return 0
}

// atPier tells the points that are piers from those that are spots.
func (g *Ground) atPier(point string) bool {
	return slices.ContainsFunc(g.Levels, func(l Level) bool { return l.Pier == point })
}

func (l *ledger) lie(g *Ground, f *frame.Frame) {
	fall := g.Fall(f)
	if fall == nil {
		l.Blank("ground.slope_along", "slope of the ground along the lines", "ground.slope_across", "slope of the ground across the lines",
			"ground.water_gathers", "whether the lowest ground lies under the platform")
		return
	}
	slope := func(key, means string, value measure.Percent) {
		l.Add(figure.Figure{Key: key, Means: means, Value: value, Formula: "rise of the best plane through the readings, over the run", Working: l.Print(value), From: l.nodes})
	}
	slope("ground.slope_along", "slope of the ground along the lines", fall.SlopeX)
	slope("ground.slope_across", "slope of the ground across the lines", fall.SlopeY)
	word := "no"
	if fall.WaterGathers {
		word = "yes"
	}
	l.Word("ground.water_gathers", "whether the lowest ground lies under the platform", word, l.nodes)
}

func (l *ledger) taped(g *Ground, f *frame.Frame) {
	var worst TapedLine
	for _, line := range g.TapedLines(f) {
		if line.TooLong > worst.TooLong {
			worst = line
		}
	}
	if worst.From == "" {
		l.Blank("tape.too_long", "how much a tape on the ground reads too long")
		return
	}
	l.Add(figure.Figure{Key: "tape.too_long", Means: fmt.Sprintf("how much a tape on the ground reads too long from %s to %s", worst.From, worst.To), Value: worst.TooLong, Rounding: measure.Up,
		Formula: "√(level² + rise²) − level", Working: fmt.Sprintf("level %s, rise %s: %s", l.Print(worst.Level), l.Print(worst.Rise), l.Up(worst.TooLong)),
		From: []string{LevelKey(worst.From), LevelKey(worst.To)}})
}
