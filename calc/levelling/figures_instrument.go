package levelling

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// The distances of the two checks of an instrument: as far as manuals ask for
// the pegs, and a wall that most sites have.
const (
	pegsInMetres, wallInMetres = 30 * measure.Metre, 6 * measure.Metre
	pegsInFeet, wallInFeet     = 100 * measure.Foot, 20 * measure.Foot
)

// checks adds what the two checks of the instrument may show, by its class.
func (l *ledger) checks() {
	tool := l.job.Ground.Instrument
	pegs, wall := pegsInFeet, wallInFeet
	if l.job.Units == measure.Metric {
		pegs, wall = pegsInMetres, wallInMetres
	}
	l.Add(figure.Figure{Key: "instrument.peg_distance", Means: "distance of the two pegs", Value: pegs, Origin: figure.Assumed, Source: "common practice, no source"})
	l.Add(figure.Figure{Key: "instrument.wall_distance", Means: "distance of the wall", Value: wall, Origin: figure.Assumed, Source: "common practice, no source"})
	if tool.Error <= 0 || tool.Over <= 0 {
		l.Blank("instrument.peg_limit", "error the two pegs may show", "instrument.wall_gap", "gap the two marks on the wall may show",
			"instrument.ends_limit", "how far apart the water may stand at both ends of the tube")
		return
	}
	limit := offBy(tool, pegs)
	l.Add(figure.Figure{Key: "instrument.peg_limit", Means: "error the two pegs may show", Value: limit, Formula: "distance × error of the class ÷ the distance it is given for",
		Working: fmt.Sprintf("%s × %s ÷ %s = %s", l.Print(pegs), l.Print(tool.Error), l.Print(tool.Over), l.Print(limit)), From: []string{"instrument.peg_distance", "ground.instrument.error"}})
	l.Add(figure.Figure{Key: "instrument.ends_limit", Means: "how far apart the water may stand at both ends of the tube", Value: tool.Error, Formula: "error of the class",
		Working: l.Print(tool.Error), From: []string{"ground.instrument.error"}})
	gap := TurnAbout{Distance: wall}.Allowed(tool)
	l.Add(figure.Figure{Key: "instrument.wall_gap", Means: "gap the two marks on the wall may show", Value: gap, Formula: "2 × distance × error of the class ÷ the distance it is given for",
		Working: fmt.Sprintf("2 × %s × %s ÷ %s = %s", l.Print(wall), l.Print(tool.Error), l.Print(tool.Over), l.Print(gap)),
		Source:  "common practice, no source: the tool is turned half round between two marks", From: []string{"instrument.wall_distance", "ground.instrument.error"}})
}

// checkWords name the checks of an instrument and what they show.
var checkWords = map[string]string{
	"pegs":        "how much too high the level reads in the distance of its pegs",
	"wall":        "how far the tool is off at the wall",
	"wall_across": "how far the tool is off at the wall, turned a quarter",
	"ends":        "how far apart the water stands at both ends of the tube",
}

// checked adds what the checks of the instrument came to.
func (l *ledger) checked() {
	tool, done, failing := l.job.Ground.Instrument, map[string]InstrumentCheck{}, 0
	for _, c := range InstrumentChecks(l.job) {
		done[c.Name] = c
		if !c.InOrder() {
			failing++
		}
	}
	for _, name := range []string{"pegs", "wall", "wall_across", "ends"} {
		key := "instrument." + name
		c, tried := done[name]
		if !tried {
			l.Blank(key+".error", checkWords[name], key+".allowed", checkWords[name]+", allowed", key+".verdict", "whether it passes")
			continue
		}
		l.checkError(key+".error", c)
		allowed := figure.Figure{Key: key + ".allowed", Means: checkWords[name] + ", allowed", Value: measure.Small(c.Limit), Formula: "distance × error of the class ÷ the distance it is given for",
			Working: fmt.Sprintf("%s × %s ÷ %s = %s", l.Print(c.Over), l.Print(tool.Error), l.Print(tool.Over), l.Print(measure.Small(c.Limit))),
			From:    []string{"ground.instrument.error"}}
		if name == "ends" {
			allowed.Formula, allowed.Working = "error of the class", l.Print(measure.Small(c.Limit))
		}
		l.Add(allowed)
		verdict := "in order"
		if !c.InOrder() {
			verdict = "out of order"
		}
		l.Add(figure.Figure{Key: key + ".verdict", Means: "whether it passes", Value: measure.Word(verdict), Formula: "in order when the error is not above what is allowed",
			Working: verdict, From: []string{key + ".error", key + ".allowed"}})
	}
	l.Add(figure.Figure{Key: "instrument.failing", Means: "checks of the instrument that it does not pass", Value: measure.Count(failing), Formula: "counted", Working: fmt.Sprint(failing)})
}

// checkError adds the error that one check has found, worked from its readings.
func (l *ledger) checkError(key string, c InstrumentCheck) {
	tool := l.job.Ground.Instrument
	f := figure.Figure{Key: key, Means: checkWords[c.Name], Value: measure.Small(c.Error)}
	rod := func(r measure.Length) string { return l.Print(measure.Reading(r)) }
	switch c.Name {
	case "pegs":
		p := tool.Pegs
		f.Formula = "(far B − near A) − (middle B − middle A)"
		f.Working = fmt.Sprintf("(%s − %s) − (%s − %s) = %s", rod(p.FarB), rod(p.NearA), rod(p.MiddleB), rod(p.MiddleA), l.Print(measure.Small(c.Error)))
		f.Source = "common practice, no source: the two-peg test"
		for _, name := range []string{"far_b", "near_a", "middle_b", "middle_a"} {
			f.From = append(f.From, "ground.instrument.pegs."+name)
		}
	case "ends":
		f.Formula, f.Working, f.From = "as measured", l.Print(measure.Small(c.Error)), []string{"ground.instrument.ends"}
	default:
		gap, from := tool.Wall.Gap, "ground.instrument.wall.gap"
		if c.Name == "wall_across" {
			gap, from = *tool.Wall.Across, "ground.instrument.wall.across"
		}
		f.Formula = "half the height between the two marks"
		f.Working = fmt.Sprintf("%s ÷ 2 = %s", l.Print(measure.Small(gap)), l.Print(measure.Small(c.Error)))
		f.Source, f.From = "common practice, no source: the tool is turned half round between two marks", []string{from}
	}
	l.Add(f)
}
