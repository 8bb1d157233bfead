package ground

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// earthwork reads the published cases of earthwork by their id.
func earthwork(t *testing.T) map[string]earthCase {
	text, err := os.ReadFile("../../testdata/published/earthwork.yaml")
	require.NoError(t, err)
	var all struct{ Examples []earthCase }
	require.NoError(t, yaml.Unmarshal(text, &all))
	byID := map[string]earthCase{}
	for _, e := range all.Examples {
		byID[e.ID] = e
	}
	return byID
}

type earthCase struct {
	ID, Source     string
	Tolerance      float64
	Inputs, Result map[string]any
}

// number returns an input or a result as a float.
func number(v any) float64 {
	switch n := v.(type) {
	case int:
		return float64(n)
	case float64:
		return n
	}
	panic("not a number")
}

func numbers(v any) []float64 {
	var list []float64
	for _, n := range v.([]any) {
		list = append(list, number(n))
	}
	return list
}

func (e earthCase) in(key string) float64   { return number(e.Inputs[key]) }
func (e earthCase) want(key string) float64 { return number(e.Result[key]) }

func TestPublishedGridVolumes(t *testing.T) {
	cases := earthwork(t)
	for _, id := range []string{"GRID-01", "GRID-03"} {
		e := cases[id]
		grid := Grid{AlongX: measure.FromMetres(e.in("spacing")), AlongY: measure.FromMetres(e.in("spacing"))}
		for _, row := range e.Inputs["heights"].([]any) {
			var heights []measure.Length
			for _, h := range numbers(row) {
				heights = append(heights, measure.FromMetres(h))
			}
			grid.Heights = append(grid.Heights, heights)
		}
		level := measure.FromMetres(e.in("formation"))
		cut, fill := grid.CutAndFill(level)
		if id == "GRID-01" {
			assert.InDelta(t, e.want("volume"), float64(grid.Net(level)), e.Tolerance, e.Source)
			assert.InDelta(t, 0, float64(fill), 1e-9, "all of it is cut")
			continue
		}
		assert.InDelta(t, e.want("net"), float64(grid.Net(level)), e.Tolerance, e.Source)
		assert.InDelta(t, e.want("cut"), float64(cut), e.Tolerance, e.Source)
		assert.InDelta(t, e.want("fill"), float64(fill), e.Tolerance, e.Source)
	}
}

func TestPublishedSectionVolumesByPrismoids(t *testing.T) {
	cases := earthwork(t)
	for _, id := range []string{"SEC-01", "SEC-02", "SEC-03"} {
		e := cases[id]
		var areas []float64
		if id == "SEC-03" {
			areas = numbers(e.Inputs["areas"])
		} else {
			for _, d := range numbers(e.Inputs["depths"]) {
				areas = append(areas, d*(e.in("base")+e.in("slope")*d))
			}
		}
		var sum measure.Volume
		for i := 0; i+2 < len(areas); i += 2 {
			sum += Prismoid(measure.Area(areas[i]), measure.Area(areas[i+1]), measure.Area(areas[i+2]), measure.FromMetres(2*e.in("spacing")))
		}
		assert.InDelta(t, e.want("prismoidal"), float64(sum), e.Tolerance, e.Source)
	}
}

func TestPublishedPits(t *testing.T) {
	cases := earthwork(t)
	m := measure.FromMetres
	e := cases["PIT-01"]
	bottom := numbers(e.Inputs["bottom"])
	cubicFeet := Pit(m(bottom[0]), m(bottom[1]), m(e.in("depth")), e.in("slope"))
	assert.InDelta(t, e.want("total_ft3"), float64(cubicFeet), 0.001, e.Source)
	assert.InDelta(t, e.want("total_yd3"), float64(cubicFeet)/27, e.Tolerance, e.Source)
	// Mean end areas is high and mean dimensions low (PIT-03): only the prismoid is exact.
	short := cases["PIT-03"]
	assert.Greater(t, short.want("mean_end_area_yd3"), float64(cubicFeet)/27)
	assert.Less(t, short.want("mean_dimensions_yd3"), float64(cubicFeet)/27)

	e = cases["PIT-05"]
	top := numbers(e.Inputs["top"])
	assert.InDelta(t, e.want("volume"), float64(Pit(m(top[0]), m(top[1]), m(e.in("depth")), -e.in("slope"))), e.Tolerance, e.Source)
	e = cases["PIT-08"]
	bottom = numbers(e.Inputs["bottom"])
	assert.InDelta(t, e.want("all"), 9*float64(Pit(m(bottom[0]), m(bottom[1]), m(e.in("depth")), e.in("slope"))), e.Tolerance, e.Source)
}

func TestCutLessFillIsTheMeanPrism(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string) measure.Length {
			return measure.Length(rapid.IntRange(-20, 20).Draw(t, label)) * measure.Inch
		}
		corners := [3]measure.Length{draw("a"), draw("b"), draw("c")}
		level := draw("level")
		above := prismAbove(corners, level)
		below := prismAbove([3]measure.Length{-corners[0], -corners[1], -corners[2]}, -level)
		mean := (corners[0] + corners[1] + corners[2] - 3*level).Metres() / 3
		if d := above - below - mean; d > 1e-12 || d < -1e-12 || above < 0 {
			t.Fatalf("above %v, below %v, mean %v", above, below, mean)
		}
	})
}

func TestPublishedLayers(t *testing.T) {
	cases := earthwork(t)
	e := cases["STN-06"]
	depth, n, each := layers(measure.Inch.Scale(e.in("compacted_in")), e.in("loose_over_compacted"), measure.Inch.Scale(e.in("max_loose_layer_in")))
	assert.InDelta(t, e.want("loose_total_in"), depth.Inches(), e.Tolerance)
	assert.InDelta(t, e.want("layers"), n, 0)
	assert.InDelta(t, e.want("loose_each_in"), each.Inches(), e.Tolerance)
	e = cases["STN-07"]
	depth, n, each = layers(measure.Millimetre.Scale(e.in("compacted_mm")), e.in("loose_over_compacted"), measure.Millimetre.Scale(e.in("max_loose_layer_mm")))
	assert.InDelta(t, e.want("loose_total_mm"), depth.Millimetres(), e.Tolerance)
	assert.InDelta(t, e.want("layers"), n, 0)
	assert.InDelta(t, e.want("loose_each_mm"), each.Millimetres(), e.Tolerance)
}

// STN-01: eight square holes with six inches of compacted stone, by the densities
// of a state highway design manual.
func TestPublishedStoneOrder(t *testing.T) {
	e := earthwork(t)["STN-01"]
	plan := numbers(e.Inputs["plan_in"])
	j := &job.Job{}
	j.Block.Base = measure.Inch.Scale(plan[0]) - 8*measure.Inch
	j.Stone = job.Stone{Margin: 4 * measure.Inch, BesideBlock: "soil", LayerAtMost: 4 * measure.Inch,
		Loose:   measure.Ratio(e.in("compacted_lb_yd3") / e.in("loose_lb_yd3")),
		Density: measure.Density(e.in("compacted_lb_yd3")) * measure.Density(measure.Pound) / measure.Density(measure.CubicYard)}
	j.Stone.LooseDensity = measure.Density(e.in("loose_lb_yd3")) * measure.Density(measure.Pound) / measure.Density(measure.CubicYard)
	piers := make([]Pier, int(e.in("pits")))
	for i := range piers {
		piers[i].Hole = &Hole{Dig: 10 * measure.Inch, Stone: measure.Inch.Scale(e.in("thickness_in"))}
	}
	s := stoneOf(j, piers)
	assert.InDelta(t, e.want("compacted_yd3"), float64(s.Compacted/measure.CubicYard), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("loose_yd3"), float64(s.Loose/measure.CubicYard), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("tons"), float64(s.Mass/measure.Pound)/2000, e.Tolerance, "loosening does not change the weight")
	assert.InDelta(t, e.want("loose_over_compacted"), float64(j.Stone.Loose), e.Tolerance)
}

func TestWholeUnitsDoNotGrowByArithmetic(t *testing.T) {
	assert.Equal(t, 3, wholeUnits(0.1+0.2, 0.1), "0.1 + 0.2 is a little over 0.3 in binary")
	assert.Equal(t, 186, wholeUnits(1300, 7), "VOL-03: Peterson and Dagostino, example 9-2")
	assert.Equal(t, 0, wholeUnits(5, 0))
}

func TestPublishedPredictions(t *testing.T) {
	cases := earthwork(t)
	const both, upper = 0.95, 0.975
	for _, id := range []string{"PRD-01", "PRD-03", "PRD-04", "PRD-07"} {
		e := cases[id]
		assert.InDelta(t, both, e.in("confidence"), 0)
		var s Sample
		if values, raw := e.Inputs["values"]; raw {
			s = SampleOf(numbers(values))
			assert.InDelta(t, e.want("s"), s.Scatter, 0.001)
		} else {
			s = Sample{Count: int(e.in("n")), Mean: e.in("mean"), Scatter: e.in("s")}
		}
		if half, printed := e.Result["half_width"]; printed {
			assert.InDelta(t, number(half), s.Total(1, upper)-s.Mean, e.Tolerance, e.Source)
			continue
		}
		assert.InDelta(t, e.want("upper"), s.Total(1, upper), e.Tolerance, e.Source)
		assert.InDelta(t, e.want("lower"), s.Total(1, 1-upper), e.Tolerance, e.Source)
	}
	// PRD-08 knows the scatter: the mean of m items is as near to the mean of one
	// as √(1/m + 1/n) is to √(1 + 1/n).
	e := cases["PRD-08"]
	s := Sample{Count: int(e.in("n")), Scatter: 1}
	ratio := s.totalError(int(e.in("m"))) / e.in("m") / s.totalError(1)
	assert.InDelta(t, e.want("k_for_mean_of_1000"), e.in("k_for_one")*ratio, 0.0001, e.Source)

	e = cases["PRD-09"]
	s = SampleOf(numbers(e.Inputs["probed_thickness"]))
	m := int(e.in("unprobed_piers"))
	known := s.Mean * float64(s.Count)
	assert.InDelta(t, e.want("s"), s.Scatter, 1e-5)
	assert.InDelta(t, e.want("t_090"), s.student().Quantile(0.9), e.Tolerance)
	assert.InDelta(t, e.want("thickness_sum_p50"), known+s.Total(m, 0.5), e.Tolerance)
	assert.InDelta(t, e.want("thickness_sum_p90"), known+s.Total(m, 0.9), e.Tolerance)
	assert.InDelta(t, 0.9, s.Chance(m, s.Total(m, 0.9)), 1e-9)
}
