package setout

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"pierbook/calc/measure"
)

// example is one published or worked case of testdata/published/setting-out.yaml,
// where its source stands.
type example struct {
	ID, Set        string
	Tolerance      float64
	Inputs, Result yaml.Node
}

func examples(t *testing.T, set string) []example {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", "setting-out.yaml"))
	require.NoError(t, err)
	var all struct{ Examples []example }
	require.NoError(t, yaml.Unmarshal(text, &all))
	var list []example
	for _, e := range all.Examples {
		if e.Set == set {
			list = append(list, e)
		}
	}
	require.NotEmpty(t, list)
	return list
}

func byID(t *testing.T, set, id string) example {
	t.Helper()
	for _, e := range examples(t, set) {
		if e.ID == id {
			return e
		}
	}
	require.Fail(t, "no example "+id)
	return example{}
}

func into[T any](t *testing.T, node yaml.Node) T {
	t.Helper()
	var v T
	require.NoError(t, node.Decode(&v))
	return v
}

func feet(v float64) measure.Length   { return measure.FromMetres(v * 0.3048) }
func inFeet(l measure.Length) float64 { return l.Metres() / 0.3048 }

func TestTapeCorrectionsOfACourse(t *testing.T) {
	e := byID(t, "taping", "TAPE-01")
	in := into[struct {
		Slope struct {
			S   float64
			Deg float64 `yaml:"angle_deg"`
		}
		Temperature struct {
			Measured float64
			T        float64 `yaml:"T_F"`
			T0       float64 `yaml:"T0_F"`
			Alpha    float64
		}
		Sag struct {
			Weight float64 `yaml:"weight_lb_per_ft"`
			Pull   float64 `yaml:"pull_lb"`
			Spans  []float64
		}
	}](t, e.Inputs)
	want := into[map[string]float64](t, e.Result)
	rise := in.Slope.S * math.Sin(in.Slope.Deg*math.Pi/180)
	assert.InDelta(t, want["v"], rise, e.Tolerance)
	short := TooLong(feet(in.Slope.S), feet(rise))
	assert.InDelta(t, want["slope_corr_v2_over_2s"], inFeet(short), e.Tolerance)
	assert.InDelta(t, want["h"], in.Slope.S-inFeet(short), e.Tolerance)

	tape := Tape{Expansion: in.Temperature.Alpha * 9 / 5, Weight: poundsPerFoot(in.Sag.Weight)}
	warm := tape.Warmth(feet(in.Temperature.Measured), (in.Temperature.T-in.Temperature.T0)*5/9)
	assert.InDelta(t, want["temp_corr"], inFeet(warm), e.Tolerance)
	var sag float64
	for _, span := range in.Sag.Spans {
		sag -= inFeet(tape.Sag(feet(span), measure.Force(in.Sag.Pull)*measure.PoundForce))
	}
	assert.InDelta(t, want["sag_corr"], sag, e.Tolerance)
}

func poundsPerFoot(v float64) measure.LineLoad {
	return measure.LineLoad(v * float64(measure.PoundForce) / 0.3048)
}

func TestTapeCorrectionsOfATextbook(t *testing.T) {
	const kilogram = measure.StandardGravity // of force, in newtons
	for _, id := range []string{"TAPE-03", "TAPE-04"} {
		e := byID(t, "taping", id)
		in := into[map[string]float64](t, e.Inputs)
		want := into[map[string]float64](t, e.Result)
		long := measure.FromMetres(in["L_m"])
		tape := Tape{
			Weight: measure.LineLoad(in["W_kg"] * kilogram / in["L_m"]), Section: measure.Area(in["A_cm2"] * 1e-4),
			Elastic: measure.Stress(in["E_kg_cm2"] * kilogram * 1e4), Expansion: in["alpha"], Standard: measure.Force(in["P0_kg"] * kilogram),
		}
		pull := measure.Force(in["P_kg"] * kilogram)
		warm, stretch, sag := tape.Warmth(long, in["T_C"]-in["T0_C"]).Metres(), tape.Stretch(long, pull).Metres(), -tape.Sag(long, pull).Metres()
		assert.InDelta(t, want["temp"], warm, e.Tolerance, id)
		assert.InDelta(t, want["pull"], stretch, e.Tolerance, id)
		assert.InDelta(t, want["sag"], sag, e.Tolerance, id)
		assert.InDelta(t, want["total"], warm+stretch+sag, e.Tolerance, id)
		assert.InDelta(t, want["corrected_length"], long.Metres()+warm+stretch+sag, e.Tolerance, id)
	}
}

func TestTapeCorrectionsOfALine(t *testing.T) {
	e := byID(t, "taping", "TAPE-07")
	in := into[struct {
		True      float64 `yaml:"tape_true_ft"`
		T0        float64 `yaml:"T0_F"`
		P0        float64 `yaml:"P0_lb"`
		Weight    float64 `yaml:"weight_lb"`
		Physical  float64 `yaml:"tape_physical_length_ft"`
		Section   float64 `yaml:"A_in2"`
		Elastic   float64 `yaml:"E_psi"`
		Alpha     float64
		T         float64   `yaml:"T_F"`
		P         float64   `yaml:"P_lb"`
		Measured  float64   `yaml:"measured_ft"`
		Suspended []float64 `yaml:"end_supported_spans_ft"`
	}](t, e.Inputs)
	want := into[map[string]float64](t, e.Result)
	tape := Tape{
		Weight: poundsPerFoot(in.Weight / in.Physical), Section: measure.Area(in.Section * 0.0254 * 0.0254),
		Elastic: measure.Stress(in.Elastic) * measure.PoundPerSquareIn, Expansion: in.Alpha * 9 / 5, Standard: measure.Force(in.P0) * measure.PoundForce,
	}
	pull, long := measure.Force(in.P)*measure.PoundForce, feet(in.Measured)
	length := (in.True - 100) / 100 * in.Measured
	warm, stretch := inFeet(tape.Warmth(long, (in.T-in.T0)*5/9)), inFeet(tape.Stretch(long, pull))
	var sag float64
	for _, span := range in.Suspended {
		sag -= inFeet(tape.Sag(feet(span), pull))
	}
	assert.InDelta(t, want["length"], length, e.Tolerance)
	assert.InDelta(t, want["temp"], warm, e.Tolerance)
	assert.InDelta(t, want["pull"], stretch, e.Tolerance)
	assert.InDelta(t, want["sag"], sag, e.Tolerance)
	assert.InDelta(t, want["corrected"], in.Measured+length+warm+stretch+sag, e.Tolerance)
}

func TestTapeClassesAsPrinted(t *testing.T) {
	e := byID(t, "taping", "TAPE-08")
	in := into[map[string][]float64](t, e.Inputs)
	want := into[map[string][]float64](t, e.Result)
	for key, class := range map[string]TapeClass{"class_I_mm": ClassI, "class_II_mm": ClassII, "class_III_mm": ClassIII} {
		require.Len(t, want[key], len(in["L_m"]))
		for i, metres := range in["L_m"] {
			assert.InDelta(t, want[key][i], class.Allows(measure.FromMetres(metres)).Metres()*1000, e.Tolerance, "%s over %g m", key, metres)
		}
	}
}

// The tape's own allowance: NIST Handbook 44 as a construction site's page
// quotes it, and a class II tape.
func TestTapeAllowance(t *testing.T) {
	for _, row := range []struct{ feet, inches float64 }{{7, 1.0 / 16}, {20, 1.0 / 16}, {30, 1.0 / 16}, {31, 1.0 / 8}, {55, 1.0 / 8}} {
		allowed, rule := TapeAllowance(feet(row.feet), measure.Imperial)
		assert.Equal(t, row.inches, allowed.Inches(), "%g ft", row.feet)
		assert.Contains(t, rule, "Handbook 44")
	}
	allowed, _ := TapeAllowance(measure.FromMetres(6.1), measure.Metric)
	assert.InDelta(t, 1.7, allowed.Metres()*1000, 1e-9, "0.3 + 0.2 × 7")
}

// quadrilateral is the form of the braced quadrilaterals.
type quadrilateral struct {
	AB     float64   `yaml:"AB"`
	BC     float64   `yaml:"BC"`
	CD     float64   `yaml:"CD"`
	DA     float64   `yaml:"DA"`
	AC     float64   `yaml:"AC"`
	BD     float64   `yaml:"BD"`
	Sigma  float64   `yaml:"sigma_each"`
	Target []float64 `yaml:"target_rectangle"`
}

type adjusted struct {
	Adjusted, Residuals, Redundancy []float64
	Test                            float64               `yaml:"test_value_abs_w"`
	Slips                           []float64             `yaml:"single_blunder_that_explains_it"`
	Hold                            map[string][2]float64 `yaml:"moves_hold_A_and_line_AB"`
	Fit                             map[string][2]float64 `yaml:"moves_best_fit"`
}

// Every braced quadrilateral: a published one in metres, and frames of 16 by
// 12 ft in inches, each worked by Gauss–Newton and by the condition that the
// Cayley–Menger determinant is zero.
func TestBracedQuadrilaterals(t *testing.T) {
	for _, e := range examples(t, "braced_quadrilateral") {
		t.Run(e.ID, func(t *testing.T) {
			in, want := into[quadrilateral](t, e.Inputs), into[adjusted](t, e.Result)
			unit := 1.0
			if len(in.Target) > 0 {
				unit = 0.0254
			}
			var six Six
			for i, l := range []float64{in.AB, in.BC, in.CD, in.DA, in.AC, in.BD} {
				six[i] = measure.FromMetres(l * unit)
			}
			a, err := Adjust(six, measure.FromMetres(in.Sigma*unit))
			require.NoError(t, err)
			for i := range six {
				assert.InDelta(t, want.Adjusted[i], a.Adjusted[i].Metres()/unit, e.Tolerance)
				assert.InDelta(t, want.Residuals[i], a.Residual[i].Metres()/unit, e.Tolerance)
				assert.InDelta(t, want.Redundancy[i], a.Redundancy[i], e.Tolerance)
				assert.InDelta(t, want.Slips[i], a.Slips[i].Size.Metres()/unit, e.Tolerance)
			}
			assert.InDelta(t, want.Test, a.TestValue, e.Tolerance)
			if len(in.Target) == 0 {
				return
			}
			holds := a.Holds(sixteenByTwelve, measure.Sixteenth)
			for i, corner := range []string{"A", "B", "C", "D"} {
				assertMove(t, want.Hold[corner], holds[0].Moves[i], e.Tolerance)
				// The best-fit moves stand in the figure's axes, a tenth of a degree
				// from the rectangle's own.
				assertMove(t, want.Fit[corner], holds[1].Moves[i], 0.003)
			}
		})
	}
}

func assertMove(t *testing.T, want [2]float64, got Move, within float64) {
	t.Helper()
	assert.InDelta(t, want[0], got.Along.Inches(), within)
	assert.InDelta(t, want[1], got.Across.Inches(), within)
}

// The verdict on each of the measured frames, as the notes of the cases give it.
func TestVerdictsOfTheThreeFrames(t *testing.T) {
	for id, verdict := range map[string]Verdict{"QUAD-03": Agree, "QUAD-05": MeasureAgain, "QUAD-04": Mistake} {
		in := into[quadrilateral](t, byID(t, "braced_quadrilateral", id).Inputs)
		a, err := Adjust(sixInches(in.AB, in.BC, in.CD, in.DA, in.AC, in.BD), measure.Sixteenth)
		require.NoError(t, err)
		assert.Equal(t, verdict, a.Verdict, id)
	}
}

func TestRackedRectangles(t *testing.T) {
	for _, id := range []string{"SQ-01", "SQ-03"} {
		e := byID(t, "squareness", id)
		in, want := into[map[string]float64](t, e.Inputs), into[map[string]float64](t, e.Result)
		long, short := inches(in["d_long"]), inches(in["d_short"])
		slide := Slide(inches(in["base"]), long, short)
		assert.InDelta(t, want["slide_exact"], slide.Inches(), e.Tolerance)
		back := rackedBy(inches(in["base"]), inches(in["side"]), slide)
		assert.InDelta(t, in["d_long"], back.Long.Inches(), e.Tolerance)
		assert.InDelta(t, in["d_short"], back.Short.Inches(), e.Tolerance)
		r := Rectangle{Length: inches(in["base"]), Width: inches(in["side"])}
		assert.InDelta(t, want["target_diagonal"], r.Diagonal().Inches(), 0.0005)
		skew := math.Asin(slide.Inches()/in["side"]) * 180 / math.Pi
		assert.InDelta(t, want["skew_deg"], skew, e.Tolerance)
		table := RackingTable(r, long-short, long-short)
		require.Len(t, table, 1)
		assert.InDelta(t, want["slide_exact"], table[0].Slide.Inches(), e.Tolerance)
	}
}

func TestWhatThePublishedLimitLetsThrough(t *testing.T) {
	e := byID(t, "squareness", "SQ-05")
	in := into[struct {
		A   float64   `yaml:"a_in"`
		B   float64   `yaml:"b_in"`
		Hyp []float64 `yaml:"hyp_in"`
	}](t, e.Inputs)
	want := into[map[string][]float64](t, e.Result)
	for i, across := range in.Hyp {
		angle := CornerAngle(inches(in.A), inches(in.B), inches(across))
		assert.InDelta(t, want["angle_deg"][i], angle*180/math.Pi, e.Tolerance)
		assert.InDelta(t, want["lateral_in_12ft_in"][i], math.Abs(Aside(inches(in.A), angle-math.Pi/2).Inches()), e.Tolerance)
		assert.InDelta(t, want["lateral_in_16ft_in"][i], math.Abs(Aside(inches(in.B), angle-math.Pi/2).Inches()), e.Tolerance)
	}
	assert.InDelta(t, want["lateral_in_12ft_in"][0], publishedAside().Inches(), e.Tolerance)
}

func TestHowWellTwoWaysSquareACorner(t *testing.T) {
	e := byID(t, "squareness", "SQ-06")
	in := into[struct {
		Sigma    float64   `yaml:"sigma_in"`
		Triangle []float64 `yaml:"triangle_in"`
		Frame    []float64 `yaml:"frame_in"`
	}](t, e.Inputs)
	want := into[map[string]float64](t, e.Result)
	r := Rectangle{Length: inches(in.Frame[0]), Width: inches(in.Frame[1])}
	triangle := TriangleTurn(inches(in.Triangle[0]), inches(in.Triangle[1]), inches(in.Sigma))
	diagonals := DiagonalTurn(r, inches(in.Sigma))
	assert.InDelta(t, want["sd_angle_rad_345"], triangle, 1e-6)
	assert.InDelta(t, want["sd_angle_rad_diagonals"], diagonals, 1e-6)
	assert.InDelta(t, want["sd_lateral_over_16ft_345"], Aside(r.Length, triangle).Inches(), e.Tolerance)
	assert.InDelta(t, want["sd_lateral_over_16ft_diagonals"], Aside(r.Length, diagonals).Inches(), e.Tolerance)
	assert.InDelta(t, want["ratio"], triangle/diagonals, e.Tolerance)
}
