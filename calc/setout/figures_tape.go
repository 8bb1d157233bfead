package setout

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Pulls and warmth that the sheets show as examples.
const (
	lightPull = 4 * measure.PoundForce
	firmPull  = 10 * measure.PoundForce
	warmer    = 30.0 * 5 / 9 // kelvins, 30 °F
)

// small prints a length under the finest mark: thousandths of an inch, or
// tenths of a millimetre.
func small(l measure.Length, style measure.Style) string {
	text, unit, zero := fmt.Sprintf("%.3f", l.Inches()), "\u00a0in", "-0.000"
	if style.System == measure.Metric {
		text, unit, zero = fmt.Sprintf("%.1f", l.Metres()*1000), "\u00a0mm", "-0.0"
	}
	if text == zero {
		text = text[1:]
	}
	return strings.Replace(text, "-", "−", 1) + unit
}

// tapeFigures say what a tape itself does to the longest length.
func (s *SetOut) tapeFigures(style measure.Style) []figure.Figure {
	long := s.Frame.Diagonal()
	allowed, rule := TapeAllowance(long, s.system)
	rise := measure.Foot
	if s.system == measure.Metric {
		rise = 300 * measure.Millimetre
	}
	const steel = "steel tape of 0.022 lb/ft, right at a pull of 10 lb; weight worked out from its section, pull by common practice, no source"
	computed := func(key, means, formula, working, source string, value measure.Length, from ...string) figure.Figure {
		return figure.Figure{Key: key, Means: means, Value: measure.Word(small(value, style)), Origin: figure.Computed, Formula: formula, Working: working, Source: source, From: from}
	}
	print := func(l measure.Length) string { return l.Print(style) }
	return []figure.Figure{
		{Key: "tape.allowance", Means: "error that the tape alone may have over the diagonal", Value: allowed, Rounding: measure.Up, Origin: figure.Assumed, Source: rule, From: []string{"frame.diagonal"}},
		computed("tape.sag_light", "what a tape held at its ends reads too long over the diagonal at a pull of 4 lb (18 N)", "w² L³ / (24 P²)",
			"L = "+print(long)+", P = "+lightPull.Print(style), steel, buildersTape.Sag(long, lightPull), "frame.diagonal"),
		computed("tape.sag_firm", "what a tape held at its ends reads too long over the diagonal at a pull of 10 lb (44 N)", "w² L³ / (24 P²)",
			"L = "+print(long)+", P = "+firmPull.Print(style), steel, buildersTape.Sag(long, firmPull), "frame.diagonal"),
		computed("tape.pull_light", "what a tape pulled with 4 lb (18 N) for 10 lb (44 N) falls short over the diagonal", "(P − P0) L / (A E)",
			"L = "+print(long)+", P = "+lightPull.Print(style)+", P0 = "+buildersTape.Standard.Print(style), steel, buildersTape.Stretch(long, lightPull).Abs(), "frame.diagonal"),
		computed("tape.warmth", "what a steel tape grows over the diagonal in 30 °F (17 K) more warmth; it cancels between the diagonals", "α L ΔT",
			fmt.Sprintf("%.2g × %s × %.1f K", buildersTape.Expansion, print(long), warmer), "common practice, no source: steel grows 0.0000065 of its length for each °F", buildersTape.Warmth(long, warmer), "frame.diagonal"),
		{Key: "tape.slope", Means: "what a tape on ground that rises " + print(rise) + " reads too long over the length", Value: TooLong(measure.Hypot(s.Frame.Length, rise), rise), Rounding: measure.Up, Origin: figure.Computed,
			Formula: "s − √(s² − rise²)", Working: "s = √(" + print(s.Frame.Length) + "² + " + print(rise) + "²)", From: []string{"frame.length"}},
	}
}

// precisionFigures say how well each check can show a square corner.
func (s *SetOut) precisionFigures(style measure.Style) []figure.Figure {
	tape, r := s.FrameLimits.Tape, s.Frame
	long := max(r.Length, r.Width)
	print := func(l measure.Length) string { return l.Print(style) }
	diagonals := figure.Figure{Key: "diagonals.aside", Means: "how far aside a corner may stand although the diagonals read equal, one standard deviation", Rounding: measure.Up, Origin: figure.Computed,
		Value: Aside(long, DiagonalTurn(r, tape)), Formula: "a × √2 D σ / (2 a b)", Working: "√2 × " + print(r.Diagonal()) + " × " + print(tape) + " / (2 × " + print(min(r.Length, r.Width)) + ")",
		From: []string{"frame.diagonal", "frame.length", "frame.width", "tape.error"}}
	triangle := figure.Figure{Key: "triangle.aside", Means: "how far aside a corner may stand although the triangle reads right, one standard deviation", Rounding: measure.Up, Origin: figure.Computed,
		Formula: "a × √2 c σ / (p q)", From: []string{"triangle.a", "triangle.b", "tape.error"}}
	if t := s.Triangle; t.Across > 0 {
		triangle.Value = Aside(long, TriangleTurn(t.AlongLength, t.AlongWidth, tape))
		triangle.Working = print(long) + " × √2 × " + print(t.Across) + " × " + print(tape) + " / (" + print(t.AlongLength) + " × " + print(t.AlongWidth) + ")"
	}
	return []figure.Figure{
		diagonals, triangle,
		{Key: "diagonals.target_error", Means: "how well a diagonal can be held against the one worked out from measured sides, one standard deviation", Value: TargetError(r, tape), Rounding: measure.Up, Origin: figure.Computed,
			Formula: "√(a² σ² + b² σ²) / D, and σ by the reading itself", Working: "√2 × " + print(tape), From: []string{"tape.error"}},
		{Key: "diagonals.published", Means: "how far aside a published limit for foundations lets a corner stand in 12 ft", Origin: figure.Computed, Value: publishedAside(), Rounding: measure.Nearest,
			Source: "NAHB, Residential Construction Performance Guidelines, 3rd ed. (2005), foundations: the 20 ft side of a 12 by 16 ft triangle may be off by 1/2 in; it says 3/8 in, geometry gives this", Memory: true,
			Formula: "b sin(γ − 90°), cos γ = (a² + b² − c²) / (2 a b)", Working: "c = 20 ft 1/2 in, a = 16 ft, b = 12 ft"},
	}
}

// publishedAside is what that limit allows, by geometry.
func publishedAside() measure.Length {
	angle := CornerAngle(12*measure.Foot, 16*measure.Foot, 20*measure.Foot+measure.Inch/2)
	return Aside(12*measure.Foot, angle-math.Pi/2)
}
