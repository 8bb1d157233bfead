package earthwork

import (
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"pierbook/calc/heights"
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
		grid := HeightGrid{AlongX: measure.FromMetres(e.in("spacing")), AlongY: measure.FromMetres(e.in("spacing"))}
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
			// The case takes each cell at the mean of its four corners, which is not the
			// volume over two triangles: they differ by less than one in a hundred here.
			assert.InEpsilon(t, e.want("volume"), float64(cut), 0.01, e.Source)
			assert.InDelta(t, 0, float64(fill), 1e-9, "all of it is cut")
			continue
		}
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
	// PIT-03: three short methods on the same pit. Mean end areas is high, mean
	// dimensions low, the cone rule near: only the prismoid is exact.
	short := cases["PIT-03"]
	top := []float64{bottom[0] + 2*e.in("depth")*e.in("slope"), bottom[1] + 2*e.in("depth")*e.in("slope")}
	under, over := bottom[0]*bottom[1], top[0]*top[1]
	dimensions := (bottom[0] + top[0]) / 2 * (bottom[1] + top[1]) / 2 * e.in("depth") / 27
	ends := (under + over) / 2 * e.in("depth") / 27
	cone := (under + over + math.Sqrt(under*over)) / 3 * e.in("depth") / 27
	assert.InDelta(t, short.want("mean_dimensions_yd3"), dimensions, short.Tolerance, short.Source)
	assert.InDelta(t, short.want("mean_end_area_yd3"), ends, short.Tolerance, short.Source)
	assert.InDelta(t, short.want("frustum_rule_yd3"), cone, short.Tolerance, short.Source)
	exact := float64(cubicFeet) / 27
	assert.True(t, dimensions < cone && cone < exact && exact < ends)

	e = cases["PIT-05"]
	top = numbers(e.Inputs["top"])
	assert.InDelta(t, e.want("volume"), float64(Pit(m(top[0]), m(top[1]), m(e.in("depth")), -e.in("slope"))), e.Tolerance, e.Source)
	// A round pit is a prismoid as well: three circles, PIT-07.
	e = cases["PIT-07"]
	circle := func(up float64) measure.Area {
		radius := e.in("bottom_radius") + e.in("slope")*up*e.in("depth")
		return measure.Area(math.Pi * radius * radius)
	}
	cubicInches := Prismoid(circle(0), circle(0.5), circle(1), m(e.in("depth")))
	assert.InDelta(t, e.want("volume_in3"), float64(cubicInches), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("volume_ft3"), float64(cubicInches)/1728, e.Tolerance, e.Source)
	e = cases["PIT-08"]
	bottom = numbers(e.Inputs["bottom"])
	assert.InDelta(t, e.want("all"), 9*float64(Pit(m(bottom[0]), m(bottom[1]), m(e.in("depth")), e.in("slope"))), e.Tolerance, e.Source)
}

// The three volumes of one lot of soil, by the weights that it has in each.
func TestPublishedSwellAndShrinkage(t *testing.T) {
	cases := earthwork(t)
	for _, id := range []string{"VOL-01", "VOL-02"} {
		e := cases[id]
		weight := func(key string) measure.Density { return measure.Density(e.in(key)) * measure.PoundPerCubicFoot }
		s := Spoil{Bank: 100 * measure.CubicYard}
		s.loosen(job.Soil{Swell: weight("bank").Over(weight("loose")), Packed: weight("bank").Over(weight("compacted"))})
		assert.InDelta(t, e.want("swell_percent"), float64((s.Loose-s.Bank)/measure.CubicYard), e.Tolerance, e.Source)
		assert.InDelta(t, e.want("shrinkage_percent"), float64((s.Bank-s.Packed)/measure.CubicYard), e.Tolerance, e.Source)
	}
}

// Soil enough for a fill, there and back: the bank volume that the case prints
// packs to the fill, and swells to what has to be carted.
func TestPublishedFills(t *testing.T) {
	cases := earthwork(t)
	spoil := func(bank float64, soil job.Soil) Spoil {
		s := Spoil{Bank: measure.Volume(bank)}
		s.loosen(soil)
		return s
	}
	e := cases["VOL-04"]
	s := spoil(e.in("compacted_yd3")/e.in("compacted_over_bank"), job.Soil{Swell: measure.Ratio(1 + e.in("swell")), Packed: measure.Ratio(e.in("compacted_over_bank"))})
	assert.InDelta(t, e.want("bank_yd3"), float64(s.Bank), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("loose_yd3"), float64(s.Loose), 0.005)
	assert.InDelta(t, e.in("compacted_yd3"), float64(s.Packed), 1e-9)

	// The solids of a soil with the void ratio e fill 1 part of 1 + e.
	e = cases["VOL-07"]
	solids := func(key string) measure.Density { return measure.Density(1 / (1 + e.in(key))) }
	s = spoil(e.want("borrow_m3"), job.Soil{Packed: solids("e_borrow").Over(solids("e_fill"))})
	assert.InDelta(t, e.in("fill_m3"), float64(s.Packed), e.Tolerance, e.Source)

	e = cases["VOL-09"]
	dry := measure.Density(e.in("bulk_borrow") / (1 + e.in("w")))
	s = spoil(e.want("borrow_m3"), job.Soil{Swell: measure.Ratio(e.in("swell_factor")), Packed: dry.Over(measure.Density(e.in("dry_fill")))})
	assert.InDelta(t, 1, float64(s.Packed), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("loose_m3"), float64(s.Loose), e.Tolerance, e.Source)
}

func TestSoilPutBackTakesMoreThanItsRoom(t *testing.T) {
	// One hole of 20 × 20 × 10 in with 4 in of stone: beside a block of 12 × 12
	// the room is (400 − 144) × 6 in³, and soil packed to 0.8 of its bank volume
	// takes 1/0.8 of that.
	j := &job.Job{}
	j.Block.Base, j.Block.Height, j.Stone.Margin, j.Stone.BesideBlock = 12*measure.Inch, 8*measure.Inch, 4*measure.Inch, "soil"
	j.Site.Soil = job.Soil{Swell: 1.5, Packed: 0.8}
	s := spoilOf(j, nil, []heights.PierHeights{{Hole: &heights.Hole{Dig: 10 * measure.Inch, Stone: 4 * measure.Inch}}})
	cubicInch := float64(measure.CubicFoot) / 1728
	assert.InDelta(t, 4000-256*6/0.8, float64(s.Bank)/cubicInch, 1e-6)
	assert.InDelta(t, 1.5*(4000-256*6/0.8), float64(s.Loose)/cubicInch, 1e-6)
	assert.InDelta(t, 0.8*(4000-256*6/0.8), float64(s.Packed)/cubicInch, 1e-6)
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
	assert.InDelta(t, e.want("compacted_each_in"), each.Inches()/e.in("loose_over_compacted"), e.Tolerance)
	e = cases["STN-07"]
	depth, n, each = layers(measure.Millimetre.Scale(e.in("compacted_mm")), e.in("loose_over_compacted"), measure.Millimetre.Scale(e.in("max_loose_layer_mm")))
	assert.InDelta(t, e.want("loose_total_mm"), depth.Millimetres(), e.Tolerance)
	assert.InDelta(t, e.want("layers"), n, 0)
	assert.InDelta(t, e.want("loose_each_mm"), each.Millimetres(), e.Tolerance)
}

// STN-01: eight square holes with six inches of compacted stone, by the densities
// of WSDOT Design Manual M 22-01 (2015), Exhibit 620-1.
func TestPublishedStoneOrder(t *testing.T) {
	e := earthwork(t)["STN-01"]
	plan := numbers(e.Inputs["plan_in"])
	j := &job.Job{}
	j.Block.Base = measure.Inch.Scale(plan[0]) - 8*measure.Inch
	j.Stone = job.Stone{Margin: 4 * measure.Inch, BesideBlock: "soil", LayerAtMost: 4 * measure.Inch,
		Loose:   measure.Ratio(e.in("compacted_lb_yd3") / e.in("loose_lb_yd3")),
		Density: measure.Density(e.in("compacted_lb_yd3")) * measure.Density(measure.Pound) / measure.Density(measure.CubicYard)}
	j.Stone.LooseDensity = measure.Density(e.in("loose_lb_yd3")) * measure.Density(measure.Pound) / measure.Density(measure.CubicYard)
	piers := make([]heights.PierHeights, int(e.in("pits")))
	for i := range piers {
		piers[i].Hole = &heights.Hole{Dig: 10 * measure.Inch, Stone: measure.Inch.Scale(e.in("thickness_in"))}
	}
	s := stoneOf(j, piers)
	assert.InDelta(t, e.want("compacted_yd3"), float64(s.Compacted/measure.CubicYard), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("loose_yd3"), float64(s.Loose/measure.CubicYard), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("tons"), float64(s.Mass/measure.Pound)/2000, e.Tolerance, "loosening does not change the weight")
	assert.InDelta(t, e.want("loose_over_compacted"), float64(j.Stone.Loose), e.Tolerance)
	assert.InDelta(t, e.want("loose_over_compacted"), float64(j.Stone.Density.Over(j.Stone.LooseDensity)), e.Tolerance)
}

// The same stone wet: by the rule of WSDOT Design Manual M 22-01 (2015), 1 + free water times as
// heavy, in more loads, while its volume stays.
func TestWaterMakesStoneHeavierAndNoMore(t *testing.T) {
	j := &job.Job{Stone: job.Stone{Loose: 1.3, LooseDensity: 100 * measure.PoundPerCubicFoot}}
	j.Yard.Payload = 1000 * measure.Pound
	dry := supplyOf(j, 10*measure.CubicFoot)
	j.Stone.Water = 0.10
	wet := supplyOf(j, 10*measure.CubicFoot)
	assert.Equal(t, dry.Order, wet.Order)
	assert.InDelta(t, 1300, float64(dry.Mass/measure.Pound), 1e-9)
	assert.InDelta(t, 1430, float64(wet.Mass/measure.Pound), 1e-9)
	j.Yard.Payload = 1400 * measure.Pound
	assert.Equal(t, [2]measure.Count{1, 2}, [2]measure.Count{
		supplyOf(&job.Job{Stone: job.Stone{Loose: 1.3, LooseDensity: j.Stone.LooseDensity}, Yard: j.Yard}, 10*measure.CubicFoot).Trips,
		supplyOf(j, 10*measure.CubicFoot).Trips})
}

// STN-03: the rule of a gravel pit, a quarter more for tamping and a ton and a
// half a yard.
func TestPublishedDriveway(t *testing.T) {
	e := earthwork(t)["STN-03"]
	tonPerYard := measure.Density(2000*measure.Pound) / measure.Density(measure.CubicYard)
	j := &job.Job{Stone: job.Stone{Loose: measure.Ratio(e.in("compaction_factor")), LooseDensity: measure.Density(e.in("tons_per_yd3")) * tonPerYard}}
	foot := measure.Foot.Scale
	o := supplyOf(j, foot(e.in("length_ft")).Times(foot(e.in("width_ft"))).Deep(foot(e.in("depth_ft"))))
	assert.InDelta(t, e.want("yd3"), float64(o.Order/measure.CubicYard), e.Tolerance, e.Source)
	assert.InDelta(t, e.want("tons"), float64(o.Mass/measure.Pound)/2000, e.Tolerance, e.Source)
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

// PRD-09 as a job: nine piers, five of them probed, and the yards and tons that
// the order of the stone comes to.
func TestPublishedOrderOfNinePiers(t *testing.T) {
	e := earthwork(t)["PRD-09"]
	inch := measure.Inch.Scale
	side := numbers(e.Inputs["pit_plan_in"])[0]
	probes := map[string]job.Probe{}
	var piers []heights.PierHeights
	add := func(bed float64, probed bool) {
		name := fmt.Sprintf("A%d", len(piers)+1)
		if probed {
			probes[name] = job.Probe{}
		}
		piers = append(piers, heights.PierHeights{Name: name, Hole: &heights.Hole{Stone: inch(bed), Bounds: heights.Bounds{StoneMost: inch(12)}}})
	}
	for _, bed := range numbers(e.Inputs["probed_thickness"]) {
		add(bed, true)
	}
	for range int(e.in("unprobed_piers")) {
		add(6, false)
	}
	yards, tons := numbers(e.Result["compacted_yd3"]), numbers(e.Result["tons"])
	// The case weighs the compacted stone: 3700 lb a yard.
	density := 3700 * measure.Density(measure.Pound) / measure.Density(measure.CubicYard)
	odds := oddsOf(&job.Job{Ground: job.Ground{Probes: probes}, Stone: job.Stone{Loose: 1, LooseDensity: density}}, &StoneTakeoff{Side: inch(side)}, piers)
	require.NotNil(t, odds)
	for i, o := range []StoneOrder{odds.Even, odds.NineInTen} {
		assert.InDelta(t, yards[i], float64(o.Compacted/measure.CubicYard), e.Tolerance, e.Source)
		assert.InDelta(t, tons[i], float64(o.Mass/measure.Pound)/2000, e.Tolerance, e.Source)
	}
	assert.InDelta(t, 0.5, float64(odds.Even.Chance), 1e-9)
	assert.InDelta(t, 0.9, float64(odds.NineInTen.Chance), 1e-9)
}
