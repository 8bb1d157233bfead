package calc_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc"
	"pierbook/calc/measure"
)

// piersOfFour in the order of the frame.
var piersOfFour = []string{"A1", "A2", "B1", "B2"}

// survey writes readings in sixty-fourths of an inch.
func survey(readings map[string]int) string {
	var b strings.Builder
	b.WriteString("ground:\n  bench_mark: {where: a nail, height: 0}\n  sights:\n    - [")
	for _, name := range []string{"bench_mark", "A1", "A2", "B1", "B2"} {
		fmt.Fprintf(&b, "%s: %d/64\", ", name, readings[name])
	}
	fmt.Fprintf(&b, "bench_mark: %d/64\"]\n", readings["bench_mark"])
	return b.String()
}

// drawSurvey draws a bench-mark reading of about four feet and ground within a
// foot under a height that lies so many inches below the bench mark.
func drawSurvey(t *rapid.T, below int) map[string]int {
	readings := map[string]int{"bench_mark": rapid.IntRange(40*64, 56*64).Draw(t, "bench mark")}
	for _, name := range piersOfFour {
		readings[name] = readings["bench_mark"] + rapid.IntRange(below*64, (below+12)*64).Draw(t, name)
	}
	return readings
}

func workDrawn(t *rapid.T, floor, rest string) *calc.Plan {
	j, said := readText(strings.Replace(fourPiers, "FLOOR", floor, 1) + rest)
	require.Empty(t, said)
	p, faults := calc.Work(j)
	require.Empty(t, faults.Sorted())
	return p
}

// lengths are the figures of a plan that stand for sizes and places.
func lengths(p *calc.Plan) map[string]string {
	all := map[string]string{}
	for _, f := range p.Figures.All() {
		for _, prefix := range []string{"frame.", "joist.", "beam.", "rim.", "floor.", "post_tops.", "line.", "stone.compacted", "cut."} {
			if strings.HasPrefix(f.Key, prefix) {
				all[f.Key] = f.Text(p.Style)
			}
		}
	}
	for _, name := range piersOfFour {
		for _, what := range []string{"x", "y", "ground", "dig", "stone", "seat", "post"} {
			if f, ok := p.Figures.Get("pier." + name + "." + what); ok {
				all[f.Key] = fmt.Sprint(f.Value)
			}
		}
	}
	return all
}

func TestTheInstrumentsPlaceDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		readings := drawSurvey(t, 0)
		first := workDrawn(t, "lowest", survey(readings))
		by := rapid.IntRange(-30*64, 30*64).Draw(t, "instrument")
		for name := range readings {
			readings[name] += by
		}
		assert.Equal(t, lengths(first), lengths(workDrawn(t, "lowest", survey(readings))))
	})
}

func TestMeasuredAsPlannedChangesNoLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ground := survey(drawSurvey(t, 0))
		plan := workDrawn(t, "lowest", ground)
		bench := rapid.Int64Range(40*64, 60*64).Draw(t, "bench mark that day")
		var holes, seats []string
		for _, pier := range plan.Heights.Piers {
			holes = append(holes, fmt.Sprintf("%s: {depth: %s, found: firm}", pier.Name, pier.Hole.Dig))
			seats = append(seats, fmt.Sprintf("%s: %s", pier.Name, measure.Length(bench)*measure.SixtyFourth-pier.Hole.Seat))
		}
		measured := fmt.Sprintf(`measured:
  strings: {A1-A2: 8', B1-B2: 8', A1-B1: 6', A2-B2: 6', A1-B2: 10', A2-B1: 10'}
  frame: {A1-A2: 8', B1-B2: 8', A1-B1: 6', A2-B2: 6', A1-B2: 10', A2-B1: 10'}
  timber: {beams: {A: 5 1/2", B: 5 1/2"}, joists: 5 1/2"}
  holes: {%s}
  seats: {bench_mark: %d/64", close: %d/64", %s}
`, strings.Join(holes, ", "), bench, bench, strings.Join(seats, ", "))
		second := workDrawn(t, plan.Heights.Floor.Height.String(), ground+measured)
		want, got := lengths(plan), lengths(second)
		for _, key := range []string{"floor.governed_by", "floor.limit", "floor.lowest", "floor.runner_up", "floor.highest"} { // what the seats as set leave of them
			delete(want, key)
			delete(got, key)
		}
		assert.Equal(t, want, got)
		for _, move := range second.SetOut.Strings.Holds {
			assert.Equal(t, 4, move.Stay)
		}
	})
}

// On paper: the printed number and the readings, each as it stands there, give
// the post of the second issue to the last mark of the saw.
func TestTheSumOnPaperIsThePostOfTheSecondIssue(t *testing.T) {
	for _, system := range []struct {
		name  string
		units string
		mark  measure.Length
	}{
		{"sixteenths", "imperial", measure.Sixteenth},
		{"millimetres", "metric", measure.Millimetre},
	} {
		t.Run(system.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				ground := survey(drawSurvey(t, rapid.SampledFrom([]int{0, 10}).Draw(t, "below"))) // tops above and below the bench mark
				plan := workDrawn(t, "lowest", ground)
				// The floor, the bench mark and the beams are at any height.
				floor := plan.Heights.Floor.Height + measure.SixtyFourth*measure.Length(rapid.IntRange(64, 128).Draw(t, "floor"))
				datum := measure.SixtyFourth * measure.Length(rapid.IntRange(-2000, 2000).Draw(t, "datum"))
				text := strings.Replace(fourPiers, "units: imperial", "units: "+system.units, 1)
				text = strings.Replace(text, "FLOOR", (floor + datum).String(), 1)
				ground = strings.Replace(ground, "height: 0}", "height: "+datum.String()+"}", 1)
				beam := 5*measure.Inch + measure.SixtyFourth*measure.Length(rapid.IntRange(24, 40).Draw(t, "beam"))
				bench := system.mark * measure.Length(rapid.IntRange(600, 900).Draw(t, "bench mark that day"))
				var seats []string
				reading := map[string]measure.Length{}
				for _, pier := range plan.Heights.Piers {
					off := rapid.IntRange(-8, 8).Draw(t, "seat "+pier.Name)
					reading[pier.Name] = (bench - pier.Hole.Seat).RoundTo(system.mark) + system.mark*measure.Length(off)
					seats = append(seats, fmt.Sprintf("%s: %s", pier.Name, reading[pier.Name]))
				}
				text += ground + fmt.Sprintf("measured:\n  timber: {beams: {A: %s}}\n  seats: {bench_mark: %s, %s}\n", beam, bench, strings.Join(seats, ", "))
				j, said := readText(text)
				require.Empty(t, said)
				second, faults := calc.Work(j)
				require.Empty(t, faults.Sorted())
				for i, pier := range second.Heights.Piers {
					printed := printedAs(t, second, "line."+pier.Name[:1]+".post_number")
					paper := printed + reading[pier.Name] - bench
					assert.Equal(t, paper, printedAs(t, second, "pier."+pier.Name+".post"), pier.Name)
					assert.Equal(t, paper, second.Heights.Posts[i].Length().RoundTo(second.Job.Mark()), "as the saw is set")
				}
			})
		})
	}
}

// printedAs reads a figure back from how it prints.
func printedAs(t require.TestingT, p *calc.Plan, key string) measure.Length {
	text := p.Figures.Text(key, p.Style)
	plain := strings.NewReplacer("\u00a0", " ", "−", "-", "′", "'", "″", `"`).Replace(text)
	l, err := measure.ParseLength(plain)
	require.NoError(t, err, "%s prints %q", key, text)
	return l
}

// Random sides: the six adjusted lengths always close, whatever was measured,
// and the program never moves a corner on a mistake.
func TestRandomMeasuredSides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var parts []string
		for _, side := range []struct {
			name string
			feet int
		}{{"A1-A2", 8}, {"A2-B2", 6}, {"B2-B1", 8}, {"B1-A1", 6}, {"A1-B2", 10}, {"A2-B1", 10}} {
			parts = append(parts, fmt.Sprintf("%s: %d/16\"", side.name, side.feet*192+rapid.IntRange(-40, 40).Draw(t, side.name)))
		}
		p := workDrawn(t, "lowest", "measured: {strings: {"+strings.Join(parts, ", ")+"}}\n")
		check := p.SetOut.Strings
		a := check.Adjustment
		var six [6]float64
		for i, l := range a.Adjusted {
			six[i] = l.Metres()
		}
		assert.InDelta(t, 0, gap(six), 2e-8, "metres by which the last length misses")
		moves := p.Figures.Text("strings.move.A1.along", p.Style) + p.Figures.Text("strings.move.B2.across", p.Style)
		assert.Equal(t, check.MayMove(), moves != "")
		f, _ := p.Figures.Get("strings.verdict")
		assert.Equal(t, measure.Word(a.Verdict), f.Value)
	})
}

// gap works out the second diagonal from the other five lengths, by laying the
// corners out from the first side, and returns what the sixth misses it by.
func gap(six [6]float64) float64 {
	ax, ay := apex(six[0], six[4], six[1]) // far corner over the first side
	bx, by := apex(six[0], six[3], six[5])
	return hypot(ax-bx, ay-by) - six[2]
}

// Every figure that is computed says how; every key that it comes from is there.
func TestFiguresOfAMeasuredJobExplainThemselves(t *testing.T) {
	p := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	for _, f := range p.Figures.All() {
		if !strings.HasPrefix(f.Key, "strings.") && !strings.HasPrefix(f.Key, "frame_measured.") && !strings.HasPrefix(f.Key, "line.") {
			continue
		}
		assert.NotEmpty(t, f.Means, f.Key)
		if f.Value == nil || strings.HasSuffix(f.Key, ".y") || f.Key == "line.last" {
			continue
		}
		if f.Origin == "computed" {
			assert.NotEmpty(t, f.Formula, f.Key)
			assert.NotEmpty(t, f.Working, f.Key)
			assert.NotEmpty(t, f.From, f.Key)
		} else {
			assert.True(t, f.At.Known(), f.Key)
		}
		for _, from := range f.From {
			_, known := p.Figures.Get(from)
			assert.True(t, known, "%s comes from %s", f.Key, from)
		}
	}
	var out strings.Builder
	require.True(t, p.Figures.Explain(&out, "strings.move.B2.along", p.Style))
	assert.Contains(t, out.String(), "measured at job.yaml:")
}
