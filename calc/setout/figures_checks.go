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
		side := SideName(c.rectangle, i) + " of the " + c.of
		measured := figure.Figure{Key: c.sideKey(i, "measured"), Means: "length " + side + " as measured", Origin: figure.Measured}
		residual := figure.Figure{Key: c.sideKey(i, "residual"), Means: "what the adjustment adds to " + side, Origin: figure.Computed, From: c.allKeys("measured"),
			Formula: "v with the least Σ v² that makes the six one figure; near ∓ l W / (4 D²) with W = (Σ sides² − Σ diagonals²) / 2"}
		adjusted := figure.Figure{Key: c.sideKey(i, "adjusted"), Means: "length " + side + " as adjusted", Origin: figure.Computed, Formula: "measured + v",
			From: []string{measured.Key, residual.Key}}
		slip := figure.Figure{Key: c.sideKey(i, "slip"), Means: "mistake in " + side + " that alone would explain everything, measured less true", Origin: figure.Computed, Formula: "−v / r, r = redundancy",
			From: []string{residual.Key}}
		if c.Check != nil {
			a := c.Adjustment
			measured.Value, measured.At = a.Measured[i], c.at(i)
			residual.Value, residual.Working = a.Residual[i], c.misfit()+"; v = "+small(a.Residual[i], c.style)
			adjusted.Value = a.Adjusted[i]
			adjusted.Working = fmt.Sprintf("%s + (%s)", a.Measured[i].Print(c.style), small(a.Residual[i], c.style))
			slip.Value = a.Slips[i].Size
			slip.Working = fmt.Sprintf("−(%s) / %.3f", small(a.Residual[i], c.style), a.Redundancy[i])
		}
		figures = append(figures, measured, residual, adjusted, slip)
	}
	return figures
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
	diagonals := []string{c.sideKey(4, "measured"), c.sideKey(5, "measured")}
	verdict := figure.Figure{Key: c.name + ".verdict", Means: "what the six measured lengths of the " + c.of + " are good for", Origin: figure.Computed, From: []string{c.name + ".test_value"},
		Formula: "agree under 1.96, a mistake over 3.29, else measure again", Source: "1.96 and 3.29 are the 5 and 0.1 % points of the normal distribution"}
	test := figure.Figure{Key: c.name + ".test_value", Means: "test value of the six measured lengths of the " + c.of, Origin: figure.Computed, From: append(c.allKeys("residual"), "tape.error"), Formula: "|w| = √Σv² / σ"}
	difference := figure.Figure{Key: c.name + ".difference", Means: "first measured diagonal of the " + c.of + " less the second", Origin: figure.Computed, Formula: "d1 − d2", From: diagonals}
	square := figure.Figure{Key: c.name + ".square", Means: "what the diagonals of the " + c.of + " say", Origin: figure.Computed, From: []string{difference.Key, "diagonals.accept", "diagonals.stop"},
		Formula: "square up to accept, out of square beyond stop"}
	slide := figure.Figure{Key: c.name + ".slide", Means: "slide of the far side that squares the " + c.of, Origin: figure.Computed, From: append(diagonals, "frame.length"), Formula: "slide = (d1² − d2²) / (4 a)"}
	suspects := figure.Figure{Key: c.name + ".suspects", Means: "lengths of the " + c.of + " in which a usual slip would explain everything", Origin: figure.Computed, From: c.allKeys("slip"),
		Formula: "the slip within two standard deviations of a usual one"}
	if c.Check != nil {
		a := c.Adjustment
		verdict.Value, verdict.Working = measure.Word(a.Verdict), fmt.Sprintf("%.2f", a.TestValue)
		test.Value, test.Working = measure.Ratio(a.TestValue), small(a.Sigma.Scale(a.TestValue), c.style)+" / "+small(a.Sigma, c.style)
		difference.Value, difference.Working = c.Difference, c.First().Print(c.style)+" − "+c.Second().Print(c.style)
	}
	if c.Check != nil && c.MayMove() {
		square.Value = measure.Word(c.Squareness())
		square.Working = fmt.Sprintf("%s against %s and %s", c.Difference.Abs().Print(c.style), c.Limits.Accept.Print(c.style), c.Limits.Stop.Print(c.style))
		slide.Value = c.Slide()
		slide.Working = fmt.Sprintf("(%s² − %s²) / (4 × %s)", max(c.First(), c.Second()).Print(c.style), min(c.First(), c.Second()).Print(c.style), c.rectangle.Length.Print(c.style))
	}
	if c.Check != nil && len(c.Suspects()) > 0 {
		suspects.Value = measure.Word(strings.Join(c.Suspects(), ", "))
	}
	return []figure.Figure{verdict, test, difference, square, slide, suspects}
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
