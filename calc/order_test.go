package calc_test

import (
	"io/fs"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/cutting"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/content"
)

// sampleJob reads the built-in sample.
func sampleJob(t testing.TB) *job.Job {
	t.Helper()
	j, faults := job.Read(content.Sample, content.SampleJob)
	require.True(t, faults.Empty(), "%v", faults)
	return j
}

func worked(t testing.TB, j *job.Job) *calc.Plan {
	t.Helper()
	p, faults := calc.Work(j)
	require.True(t, faults.Empty(), "%v", faults)
	return p
}

func lineOf(t *testing.T, p *calc.Plan, key string) order.Line {
	t.Helper()
	for _, l := range p.Order.Lines {
		if l.Key == key {
			return l
		}
	}
	require.Fail(t, "no line "+key)
	return order.Line{}
}

// The nails of the sample, counted by hand on its drawings:
//
//	toenails   13 joists × 3 beams × 3 = 117; two rims of 192 in on the outer beams at 6 in: 2 × 33 = 66
//	end nails  13 joists × 2 ends × 3 = 78
//	caps       15 × 8 = 120
//	panels     rows 1 and 3: two panels, each on 7 joists: 2 edges of 9 nails and 5 rows of 5 in
//	           the field, 43; and 17 along the rim: 2 × 2 × (43 + 17) = 240
//	           row 2: two pieces on 5 and on 3 joists that end on a joist at 64 in and at 160 in,
//	           and a whole panel between them on 7: counted joist by joist 99 in all
//	boards     8 batter boards × 2 stakes × 2 = 32 screws
func TestNailsOfTheSampleByHand(t *testing.T) {
	p := worked(t, sampleJob(t))
	for key, want := range map[string]int{"8d-common": 117 + 66, "16d-common": 78, "cap-screw": 120, "8d-ring": 240 + 99, "batter-screw": 32} {
		assert.Equal(t, want, lineOf(t, p, "order.fastener."+key).Pieces, key)
	}
}

// Weights of the sample by hand, hem-fir at 30 lb/ft³ as the job assumes it: a 4x6
// of 16 ft is 3.5 × 5.5 × 192 / 1728 = 2.139 ft³; a panel of 23/32 in is
// 95.98 × 47.5 × 0.71875 / 1728 at 36 lb/ft³.
func TestLiftsOfTheSample(t *testing.T) {
	j := sampleJob(t)
	p := worked(t, j)
	beam, ok := p.Order.Heaviest("beams")
	require.True(t, ok)
	assert.InDelta(t, 3.5*5.5*192/1728*float64(j.Timber.Density/measure.PoundPerCubicFoot), float64(beam.Each/measure.Pound), 1e-6)
	assert.Equal(t, 2, beam.Hands(measure.Imperial))
	panel, ok := p.Order.Heaviest("surface")
	require.True(t, ok)
	assert.InDelta(t, 96*47.5*0.71875/1728*36, float64(panel.Each/measure.Pound), 0.01)
	assert.Equal(t, 2, panel.Hands(measure.Imperial))
	block, _ := p.Order.Heaviest("blocks")
	assert.False(t, block.TwoPeople(measure.Imperial), "48 lb")
}

// Every line weighs what its figures say, and they add up to order.weight.
func TestFiguresOfTheOrderAddUp(t *testing.T) {
	p := worked(t, sampleJob(t))
	var sum float64
	for _, l := range p.Order.Lines {
		f, ok := p.Figures.Get(l.Key + ".weight")
		require.True(t, ok, l.Key)
		kg, unit := f.Value.Base()
		require.Equal(t, "kg", unit)
		sum += kg
		assert.NotEmpty(t, f.Working, f.Key)
		count, ok := p.Figures.Get(l.Key)
		require.True(t, ok)
		assert.NotEmpty(t, count.Formula, l.Key)
		assert.NotEmpty(t, count.Working, l.Key)
		assert.NotEmpty(t, count.Source, l.Key)
	}
	whole, _ := p.Figures.Get("order.weight")
	kg, _ := whole.Value.Base()
	assert.InDelta(t, kg, sum, 1e-6)
}

// What figures of the order, the cuts and the crew say they come from is there.
func TestFiguresComeFromKnownFigures(t *testing.T) {
	p := worked(t, sampleJob(t))
	for _, f := range p.Figures.All() {
		for _, part := range []string{"order.", "cut.", "crew.", "lift.", "fastening.", "cloth.", "saving.", "savings."} {
			if !strings.HasPrefix(f.Key, part) {
				continue
			}
			for _, from := range f.From {
				_, known := p.Figures.Get(from)
				assert.True(t, known, "%s comes from %s", f.Key, from)
			}
		}
	}
}

// Before the ground is read every post is ordered at its longest, and the line
// says so.
func TestPostsBeforeReadings(t *testing.T) {
	j := sampleJob(t)
	j.Ground.SetUps, j.Ground.Probes = nil, nil
	p := worked(t, j)
	var posts int
	for _, c := range p.Cuts {
		if c.Estimate {
			for _, piece := range c.Pieces {
				assert.Equal(t, j.Frame.Posts.Longest, piece.Length)
				posts += piece.Count
			}
		}
	}
	assert.Equal(t, 15, posts)
	noted := false
	for _, l := range p.Order.Lines {
		noted = noted || l.Use == "posts" && strings.Contains(l.Note, j.Frame.Posts.Longest.Print(p.Style))
	}
	assert.True(t, noted)
}

// With estimated ground the posts bought yield the nine-in-ten total: the sum of
// the posts and 1.2816 times the root of the sum of squared errors.
func TestPostsBoughtAreEnoughNineTimesInTen(t *testing.T) {
	for _, j := range []*job.Job{sampleJob(t), readJob(t, "mill-bank-deck.yaml")} {
		p := worked(t, j)
		for _, c := range p.Cuts {
			if c.Allowance == 0 {
				continue
			}
			var posts, bought measure.Length
			for _, s := range c.Result.Sticks {
				bought += s.Length
				used := measure.Length(0)
				for _, cut := range s.Cuts {
					posts += cut.Length
					used += cut.Length + j.Yard.Kerf
					assert.Equal(t, used-j.Yard.Kerf, cut.Mark, "mark of %s", cut.Name)
				}
				assert.Equal(t, max(0, s.Length-used), s.Left)
			}
			assert.GreaterOrEqual(t, bought, posts+c.Allowance, c.Section.Size)
			want := 0.0
			for _, pier := range p.Heights.Piers {
				if !pier.Level.Read {
					want += pier.Level.Error.Metres() * pier.Level.Error.Metres()
				}
			}
			most := measure.FromMetres(1.28156 * math.Sqrt(want))
			assert.LessOrEqual(t, most-c.Allowance, measure.Length(len(p.Heights.Piers))*j.Mark()+measure.Micrometre, "unless a post would pass its longest")
		}
	}
}

// A plan that another stick length makes cheaper is said to be; one that does
// not pass its checks is not offered.
func TestAlternativesSaveAndPass(t *testing.T) {
	for _, j := range []*job.Job{sampleJob(t), readJob(t, "mill-bank-deck.yaml")} {
		p := worked(t, j)
		require.NotEmpty(t, p.Alternatives())
		for _, a := range p.Alternatives() {
			assert.True(t, a.Saving.Some(), a.Saying)
			assert.LessOrEqual(t, float64(a.Worst), 1.0000001, a.Saying)
			assert.NotEmpty(t, a.Saving.Print(p.Style))
		}
	}
}

// The saving of a pier fewer under each line is that of three blocks and caps, and
// what a plan worked from the changed job says too.
func TestSavingAgreesWithTheChangedPlan(t *testing.T) {
	j := sampleJob(t)
	p := worked(t, j)
	i := -1
	for k, a := range p.Alternatives() {
		if a.Path == "frame.piers.per_line" {
			i = k
		}
	}
	require.GreaterOrEqual(t, i, 0)
	a := p.Alternatives()[i]
	assert.InDelta(t, 3*(9.80+6.40), float64(a.Saving.Money), 1e-6)
	assert.Equal(t, 3, a.Saving.Piers)
}

func TestNothingIsOfferedOnceSomethingIsMeasured(t *testing.T) {
	j := sampleJob(t)
	j.Measured.Hours = map[string]measure.Hours{"dig": 5}
	assert.Empty(t, worked(t, j).Alternatives())
}

// The sum by hand on the cut sheet is the cost of the plan.
func TestProofsByHandReachTheCost(t *testing.T) {
	p := worked(t, sampleJob(t))
	proven := 0
	for _, c := range p.Cuts {
		cost := c.Result.Proofs[0]
		require.True(t, cost.Proven, c.Section.Size)
		assert.Equal(t, c.Result.Cost, cost.Bound)
		assert.Zero(t, c.Gap())
		if cost.Reached == cutting.ByDuals && c.ByHand(p.Style) != "" {
			assert.Contains(t, c.ByHand(p.Style), c.Amount(cost.Bound, p.Style))
			proven++
		}
	}
	assert.Positive(t, proven)
}

func birchSlope(t testing.TB) *job.Job { return readJob(t, "birch-slope-workshop.yaml") }

func readJob(t testing.TB, name string) *job.Job {
	t.Helper()
	j, faults := job.Read(os.DirFS("../testdata/jobs"), name)
	require.True(t, faults.Empty(), "%v", faults)
	return j
}

// The lines offered for the shop's file are read back as its rates.
func TestHoursTakenReadBackAsRates(t *testing.T) {
	j := sampleJob(t)
	j.Measured.Hours = map[string]measure.Hours{"dig": 5.5, "set-out": 4}
	snippet := worked(t, j).Weekend.Rates()
	files := fstest.MapFS{"shop.yaml": {Data: []byte(snippet)}}
	for _, name := range []string{"kiln-field.yaml", "yard.yaml"} {
		text, err := fs.ReadFile(content.Sample, "sample/"+name)
		require.NoError(t, err)
		files[name] = &fstest.MapFile{Data: text}
	}
	again, faults := job.Read(files, "kiln-field.yaml")
	require.True(t, faults.Empty(), "%v", faults)
	f, _ := worked(t, again).Figures.Get("crew.dig.hours")
	assert.Equal(t, "5.5\u00a0h", f.Text(again.Style()))
	assert.Equal(t, figure.Shop, f.Origin)
	assert.Equal(t, "shop.yaml", f.At.File)
}

// The fastening of the metric job, counted by hand: 13 places of joists in two
// bays are 26 pieces and 52 ends, all in hangers with ten nails each; 12 straps with
// four nails in each end for the beam and four for the post are 192 more; eight
// screws in each of 12 caps.
func TestNailsBetweenBeamsByHand(t *testing.T) {
	p := worked(t, birchSlope(t))
	assert.Equal(t, 52, lineOf(t, p, "order.hanger").Count)
	for key, want := range map[string]int{"hanger": 520 + 192, "cap-screw": 96} {
		assert.Equal(t, want, lineOf(t, p, "order.fastener."+key).Pieces, key)
	}
}

// What the steps say of fastening reads on in the middle of a sentence.
func TestFasteningReadsInASentence(t *testing.T) {
	mill, faults := job.Read(os.DirFS("../testdata/jobs"), "mill-bank-deck.yaml")
	require.True(t, faults.Empty(), "%v", faults)
	said := 0
	for _, j := range []*job.Job{sampleJob(t), birchSlope(t), mill} {
		p := worked(t, j)
		for _, f := range p.Figures.All() {
			if !strings.HasPrefix(f.Key, "fastening.") || f.Value == nil {
				continue
			}
			said++
			text := f.Text(p.Style)
			assert.Equal(t, strings.ToLower(text[:1]), text[:1], text)
			assert.NotRegexp(t, `[.;:()]$|\(|;|nailss`, text)
			assert.NotEmpty(t, f.Source, f.Key)
			if j.Units == measure.Metric {
				assert.NotRegexp(t, `[0-9]d |″|′|no\. [0-9]`, text)
			}
		}
	}
	assert.GreaterOrEqual(t, said, 12)
}

// An inch of clean stone over the cloth of the sample: 16 ft × 11 ft 10 3/4 in ×
// 1 in is 15.86 ft³ or 0.587 yd³, with 8 per cent spilled 0.634: two half yards.
// Half a yard of permeable ballast, 2800 lb/yd³ loose (WSDOT Design Manual M 22-01,
// Exhibit 620-1), with 5 per cent of water weighs 1470 lb.
func TestStoneOverTheClothByHand(t *testing.T) {
	j := sampleJob(t)
	for _, l := range worked(t, j).Order.Lines {
		require.NotEqual(t, "order.stone_on_cloth", l.Key, "not unless it is asked for")
	}
	j.Stone.OnCloth = measure.Inch
	l := lineOf(t, worked(t, j), "order.stone_on_cloth")
	assert.Equal(t, 2, l.Count)
	assert.InDelta(t, 1470, float64(l.Each/measure.Pound), 0.5)
	_, known := l.Cost()
	assert.False(t, known, "the yard has a price for the beds' stone only")
}

// Posts over the limit get braces and every joint that the checks want held is on
// the order: what the sheets Checks and Loads ask for and what is bought agree.
func TestTheOrderHasWhatTheChecksWant(t *testing.T) {
	j := sampleJob(t)
	j.Design.BracedAbove = 10 * measure.Inch
	p := worked(t, j)
	bracing, anchored := 0, 0
	for i := range p.Strength.Piers {
		if p.Strength.Knees.Braces(&p.Strength.Piers[i]) {
			bracing++
		}
	}
	for _, tie := range p.Strength.Ties {
		if tie.ToGround() {
			anchored++
		}
	}
	require.Positive(t, bracing)
	assert.Equal(t, 2*bracing, lineOf(t, p, "order.brace").Count)
	require.Positive(t, anchored, "the sample wants its blocks held")
	assert.Equal(t, anchored, lineOf(t, p, "order.anchor").Count)
	assert.Equal(t, len(p.Frame.Piers), lineOf(t, p, "order.strap").Count)
}

// What a change saves is what the order of the changed job, worked as a job of its
// own, costs less on sticks other than posts, surface, blocks, caps and hangers;
// and that job passes its checks with the ratio that was told.
func TestSavingsHoldWhenTheChangedJobIsWorked(t *testing.T) {
	frameCost := func(p *calc.Plan) (sum float64, piers int) {
		for _, l := range p.Order.Lines {
			cost, known := l.Cost()
			switch {
			case l.Use == "posts" || l.Key == "order.strap" || l.Key == "order.anchor" || l.Key == "order.brace":
			case l.Group == order.Timber || l.Group == order.Surface || l.Group == order.Hardware:
				require.True(t, known, l.What)
				sum += float64(cost)
			}
		}
		return sum, len(p.Frame.Piers)
	}
	kinds := map[string]int{}
	for name, change := range map[string]func(*job.Job){
		"as it is": func(*job.Job) {},
		"wider":    func(j *job.Job) { j.Platform.Width += 4 * measure.Inch },
		"longer":   func(j *job.Job) { j.Platform.Length += 2 * measure.Inch },
		"fewer lengths": func(j *job.Job) {
			j.Yard.Stock = map[string][]job.StockLength{"2x8": j.Yard.Stock["2x8"][3:], "4x6": j.Yard.Stock["4x6"][:3], "4x4": j.Yard.Stock["4x4"]}
		},
		"close together": func(j *job.Job) { j.Frame.Beams.Lines, j.Frame.Piers.PerLine = 4, 6 },
	} {
		base := func() *job.Job {
			j := sampleJob(t)
			j.Ground.SetUps, j.Ground.Probes, j.Piers = nil, nil, nil
			change(j)
			return j
		}
		p := worked(t, base())
		cost, piers := frameCost(p)
		for _, a := range p.Alternatives() {
			require.True(t, a.Saving.Priced)
			j := base()
			switch a.Path {
			case "frame.beams.lines":
				j.Frame.Beams.Lines = atoi(t, a.Write)
			case "frame.piers.per_line":
				j.Frame.Piers.PerLine = atoi(t, a.Write)
			case "platform.width", "platform.length":
				side, err := measure.ParseLength(a.Write)
				require.NoError(t, err)
				if a.Path == "platform.width" {
					j.Platform.Width = side
				} else {
					j.Platform.Length = side
				}
			default:
				continue // its price is a guess by the run, said beside it
			}
			kinds[a.Path]++
			changed := worked(t, j)
			then, pierThen := frameCost(changed)
			assert.InDelta(t, cost-then, float64(a.Saving.Money), 0.005, "%s: %s", name, a.Saying)
			assert.Equal(t, piers-pierThen, a.Saving.Piers)
			assert.Zero(t, changed.Strength.Failing(), "%s: %s", name, a.Saying)
			worst, _ := changed.Strength.Worst()
			assert.InDelta(t, float64(worst.Ratio), float64(a.Worst), 1e-9, "%s: %s", name, a.Saying)
		}
	}
	t.Log(kinds)
	assert.GreaterOrEqual(t, len(kinds), 3, "kinds of change")
}

func atoi(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	require.NoError(t, err)
	return n
}

// A price for the delivery is a line and part of the sum, and nothing to carry.
func TestDeliveryIsPaidAndNotCarried(t *testing.T) {
	plain := worked(t, sampleJob(t))
	j := sampleJob(t)
	j.Yard.Prices["delivery"] = 85
	p := worked(t, j)
	assert.InDelta(t, float64(plain.Order.Cost)+85, float64(p.Order.Cost), 1e-9)
	assert.Equal(t, plain.Order.Trips, p.Order.Trips)
	assert.Equal(t, plain.Order.Blank, p.Order.Blank)
	assert.Equal(t, 1, lineOf(t, p, "order.delivery").Count)
}

// The stone of the plan may be a poor bet: the line says how often it is enough.
func TestTheStoneLineTellsItsChance(t *testing.T) {
	p := worked(t, sampleJob(t))
	odds := p.Earthwork.Odds
	require.Less(t, float64(odds.Enough), 0.9)
	require.Greater(t, odds.NineInTen.Order, p.Earthwork.Stone.Order)
	note := lineOf(t, p, "order.stone").Note
	assert.Contains(t, note, odds.Enough.Print(p.Style)+" of the time")
	assert.Contains(t, note, odds.NineInTen.Order.Print(p.Style)+" are enough nine times in ten")

	j := sampleJob(t)
	j.Ground.Probes = map[string]job.Probe{}
	assert.Empty(t, lineOf(t, worked(t, j), "order.stone").Note, "without probes nothing is claimed")
}
