package setout

import (
	"fmt"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// checked makes the figures of one measuring. The keys are the same whether or
// not the six lengths were measured, so that a page may always ask for them.
type checked struct {
	*Check    // nil until it was made
	name      string
	of, path  string
	rectangle Rectangle
	lengths   map[string]measure.Length // as the job gives them
	job       *job.Job
	style     measure.Style
}

func (c checked) figures() []figure.Figure {
	if c.Check != nil {
		c.rectangle = c.Rectangle
	}
	figures := c.sides()
	figures = append(figures, c.verdicts()...)
	for _, hold := range holdKinds {
		for i := range c.rectangle.Corners {
			figures = append(figures, c.moves(hold, i)...)
		}
	}
	return figures
}

func (c checked) sideKey(i int, what string) string {
	return c.name + ".side." + SideName(c.rectangle, i) + "." + what
}

func (c checked) allKeys(what string) []string {
	var keys []string
	for i := range ends {
		keys = append(keys, c.sideKey(i, what))
	}
	return keys
}

// at returns where the job gives a length, in either order of its corners.
func (c checked) at(i int) fault.Place {
	from, to := c.rectangle.Corners[ends[i][0]], c.rectangle.Corners[ends[i][1]]
	if _, given := c.lengths[from+"-"+to]; given {
		return c.job.At(c.path + "." + from + "-" + to)
	}
	return c.job.At(c.path + "." + to + "-" + from)
}

// sides gives the six lengths as measured and as adjusted, what the adjustment
// adds to each, and the single slip in each that would explain everything.
func (c checked) sides() []figure.Figure {
	var figures []figure.Figure
	for i := range ends {
		figures = append(figures, c.side(i)...)
	}
	return figures
}

func (c checked) side(i int) []figure.Figure {
	name := SideName(c.rectangle, i) + " of the " + c.of
	measured := figure.Figure{Key: c.sideKey(i, "measured"), Means: "length " + name + " as measured", Origin: figure.Measured}
	residual := figure.Figure{Key: c.sideKey(i, "residual"), Means: "what the adjustment adds to " + name, Origin: figure.Computed, From: c.allKeys("measured"),
		Formula: "v with the least Σ v² that makes the six one figure; near ∓ l W / (4 D²) with W = (Σ sides² − Σ diagonals²) / 2"}
	adjusted := figure.Figure{Key: c.sideKey(i, "adjusted"), Means: "length " + name + " as adjusted", Origin: figure.Computed, Formula: "measured + v", From: []string{measured.Key, residual.Key}}
	slip := figure.Figure{Key: c.sideKey(i, "slip"), Means: "mistake in " + name + " that alone would explain everything, measured less true", Origin: figure.Computed,
		Formula: "−v / r, r = redundancy", From: []string{residual.Key}}
	if c.Check != nil {
		a := c.Adjustment
		v := small(a.Residual[i], c.style)
		measured.Value, measured.At = a.Measured[i], c.at(i)
		residual.Value, residual.Working = a.Residual[i], c.misfit()+"; v = "+v
		adjusted.Value, adjusted.Working = a.Adjusted[i], fmt.Sprintf("%s + (%s)", a.Measured[i].Print(c.style), v)
		slip.Value, slip.Working = a.Slips[i].Size, fmt.Sprintf("−(%s) / %.3f", v, a.Redundancy[i])
	}
	return []figure.Figure{measured, residual, adjusted, slip}
}

// misfit prints W, what the squares of the sides have over those of the diagonals.
func (c checked) misfit() string {
	m := c.Adjustment.Measured
	unit, name := measure.Inch.Metres(), "in²"
	if c.style.System == measure.Metric {
		unit, name = measure.Millimetre.Metres(), "mm²"
	}
	var w float64
	for i, l := range m {
		square := l.Metres() * l.Metres() / (unit * unit)
		if i < 4 {
			w += square / 2
		} else {
			w -= square / 2
		}
	}
	return strings.Replace(fmt.Sprintf("W = %.2f %s", w, name), "-", "−", 1)
}

// verdicts gives what the six lengths and the two diagonals say.
func (c checked) verdicts() []figure.Figure {
	return append([]figure.Figure{c.test(), c.verdict(), c.suspects(), c.difference(), c.apart()}, c.squareness()...)
}

func (c checked) figure(key, means, formula string, from ...string) figure.Figure {
	return figure.Figure{Key: c.name + "." + key, Means: means + " the " + c.of, Origin: figure.Computed, Formula: formula, From: from}
}

func (c checked) test() figure.Figure {
	f := c.figure("test_value", "test value of the six measured lengths of", "|w| = √Σv² / σ", append(c.allKeys("residual"), "tape.error")...)
	if c.Check != nil {
		a := c.Adjustment
		f.Value, f.Working = measure.Ratio(a.TestValue), small(a.Sigma.Scale(a.TestValue), c.style)+" / "+small(a.Sigma, c.style)
	}
	return f
}

func (c checked) verdict() figure.Figure {
	f := c.figure("verdict", "what the six measured lengths are good for, of", "agree under 1.96, a mistake over 3.29, else measure again", c.name+".test_value")
	f.Source = "1.96 and 3.29 are the 5 and 0.1 % points of the normal distribution"
	if c.Check != nil {
		f.Value, f.Working = measure.Word(c.Adjustment.Verdict), fmt.Sprintf("%.2f", c.Adjustment.TestValue)
	}
	return f
}

func (c checked) suspects() figure.Figure {
	f := c.figure("suspects", "lengths in which a usual slip alone would explain everything, of", "the slip within two standard deviations of a usual one", c.allKeys("slip")...)
	if c.Check != nil && len(c.Suspects()) > 0 {
		f.Value = measure.Word(strings.Join(c.Suspects(), ", "))
		f.Working = "the slip of each against its usual one"
	}
	return f
}

// apart is the difference as people say it, without a sign.
func (c checked) apart() figure.Figure {
	f := c.figure("apart", "how far apart the measured diagonals are, of", "|d1 − d2|", c.name+".difference")
	if c.Check != nil {
		f.Value, f.Working = c.Difference.Abs(), "|"+c.Difference.Print(c.style)+"|"
	}
	return f
}

func (c checked) difference() figure.Figure {
	f := c.figure("difference", "first measured diagonal less the second, of", "d1 − d2", c.sideKey(4, "measured"), c.sideKey(5, "measured"))
	if c.Check != nil {
		f.Value, f.Working = c.Difference, c.First().Print(c.style)+" − "+c.Second().Print(c.style)
	}
	return f
}

// squareness gives what the diagonals say and the slide that they ask for.
// Lengths of which one is a mistake say nothing.
func (c checked) squareness() []figure.Figure {
	square := c.figure("square", "what the diagonals say of", "square up to accept, out of square beyond stop", c.name+".difference", "diagonals.accept", "diagonals.stop")
	slide := c.figure("slide", "slide of the far side that squares", "slide = (d1² − d2²) / (4 a)", c.sideKey(4, "measured"), c.sideKey(5, "measured"), "frame.length")
	if c.Check != nil && c.MayMove() {
		print := func(l measure.Length) string { return l.Print(c.style) }
		square.Value = measure.Word(c.Squareness())
		square.Working = fmt.Sprintf("%s against %s and %s", print(c.Difference.Abs()), print(c.Limits.Accept), print(c.Limits.Stop))
		slide.Value = c.Slide()
		slide.Working = fmt.Sprintf("(%s² − %s²) / (4 × %s)", print(max(c.First(), c.Second())), print(min(c.First(), c.Second())), print(c.rectangle.Length))
	}
	return []figure.Figure{square, slide}
}

// holdKind is a choice of what stays, with what its keys are called.
type holdKind struct {
	index int // among the holds of a check
	key   string
	words string
}

var holdKinds = []holdKind{
	{1, "move", "least moving of all four"},
	{0, "move_held", "the hook corner and its long side held"},
	{2, "move_fewest", "fewest corners moved"},
}

// moves gives one corner's move for one choice. Readings that hold a mistake
// move nothing.
func (c checked) moves(hold holdKind, i int) []figure.Figure {
	corner := c.rectangle.Corners[i]
	key := c.name + "." + hold.key + "." + corner
	means := "move of corner " + corner + " of the " + c.of + ", "
	along := figure.Figure{Key: key + ".along", Means: means + "along the length: " + hold.words, Origin: figure.Computed, From: c.allKeys("adjusted"),
		Formula: "place in the rectangle − adjusted place, along the length; the hook end is less"}
	across := figure.Figure{Key: key + ".across", Means: means + "across: " + hold.words, Origin: figure.Computed, From: c.allKeys("adjusted"),
		Formula: "place in the rectangle − adjusted place, across; side " + c.rectangle.Corners[0][:1] + " is less"}
	if c.Check != nil && c.MayMove() {
		m := c.Holds[hold.index].Moves[i]
		along.Value, across.Value = m.Along, m.Across
		along.Working = c.towardsWords(m.Along, m.AlongError, c.AlongTowards(i, m))
		across.Working = c.towardsWords(m.Across, m.AcrossError, c.AcrossTowards(i, m))
	}
	return []figure.Figure{along, across}
}

func (c checked) towardsWords(move, deviation measure.Length, towards string) string {
	if move == 0 {
		return "held"
	}
	if !strings.HasPrefix(towards, "away") {
		towards = "towards " + towards
	}
	return small(move.Abs(), c.style) + " " + towards + ", ± " + small(deviation, c.style) + ", one standard deviation"
}
