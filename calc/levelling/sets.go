package levelling

import (
	"fmt"
	"strconv"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Sets returns the lines of the level book, or blanks for one, the points with
// more than one way to them, the checks of the book's arithmetic, and the
// places to stand the instrument.
func Sets(j *job.Job, f *frame.Frame, b *Book) []figure.Set {
	return []figure.Set{sightSet(f, b), routeSet(b), arithmeticSet(j, b), standSet(j, f)}
}

func sightSet(f *frame.Frame, b *Book) figure.Set {
	set := figure.Set{Name: "sights", Key: "book", Fields: []figure.Field{
		{Key: "set_up", Means: "set-up from which % was read", Formula: "as in the job"},
		{Key: "backsight", Means: "backsight on %", Formula: "as read"},
		{Key: "reading", Means: "reading on %", Formula: "as read"},
		{Key: "line", Means: "height that heights are counted from, over %", Formula: "height of the point + backsight", From: []string{".backsight"}},
		{Key: "height", Means: "height of %", Formula: "instrument − reading", From: []string{".reading"}},
		{Key: "share", Means: "correction of %", Formula: "share of the misclosure by set-ups, or the set-up's by least squares"},
		{Key: "used", Means: "height of % as used", Formula: "height + correction", From: []string{".height", ".share"}},
	}}
	none := figure.Nothing
	add := func(name string, values ...measure.Quantity) {
		set.Row(strconv.Itoa(len(set.Things)+1), name, values...)
	}
	if b == nil {
		first := measure.Word("1")
		add("bench mark", first, nil, none, none, nil, none, none)
		for _, pier := range f.Piers {
			add(pier.Name, first, none, nil, none, nil, none, none)
		}
		add("bench mark again", first, none, nil, none, nil, none, none)
		return set
	}
	rod := func(l measure.Length) measure.Quantity { return measure.Reading(l) }
	for _, s := range b.SetUps {
		setUp := measure.Word(strconv.Itoa(s.Number))
		add(pointWords(s.From), setUp, rod(s.Backsight.Reading), none, rod(s.Instrument), rod(s.FromHeight), none, none)
		for _, shot := range s.Shots {
			var share measure.Quantity = none
			if shot.Correction != 0 {
				share = rod(shot.Correction)
			}
			add(pointWords(shot.Point), setUp, none, rod(shot.Reading), none, rod(shot.Height), share, rod(shot.Height+shot.Correction))
		}
	}
	return set
}

func pointWords(name string) string {
	if name == BenchMark {
		return "bench mark"
	}
	return name
}

// routeSet is the points that were read from more than one set-up: what each makes
// of them, the mean that is used, and how well it is known.
func routeSet(b *Book) figure.Set {
	set := figure.Set{Name: "routes", Key: "route", Fields: []figure.Field{
		{Key: "from", Means: "set-up of the sight: %", Formula: "as in the job"},
		{Key: "height", Means: "corrected height: %", Formula: "height + correction of the set-up"},
		{Key: "used", Means: "height used: %", Formula: "mean of its sights"},
		{Key: "error", Means: "standard error: %", Formula: "least squares over all sights", From: []string{"ground.spare_sights"}},
	}}
	if b == nil || b.Network == nil {
		return set
	}
	for _, point := range b.Points {
		if len(point.From) < 2 {
			continue
		}
		name, used, off := point.Name, measure.Quantity(measure.Reading(point.Height)), measure.Quantity(measure.Small(point.Error))
		add := func(from string, height measure.Length) {
			set.Row(strconv.Itoa(len(set.Things)+1), name, measure.Word(from), measure.Reading(height), used, off)
			name, used, off = "", figure.Nothing, figure.Nothing // said once
		}
		for _, at := range point.From {
			add(strconv.Itoa(b.SetUps[at.SetUp].Number), b.Shot(at).Reduced())
		}
		for _, setUp := range point.Behind {
			add(fmt.Sprintf("%d, backsight", b.SetUps[setUp].Number), b.SetUps[setUp].FromHeight+b.Network.Corrections[setUp])
		}
	}
	return set
}

// arithmeticSet is the three checks of the book's arithmetic.
func arithmeticSet(j *job.Job, b *Book) figure.Set {
	set := figure.Set{Name: "arithmetic", Key: "arithmetic", Fields: []figure.Field{
		{Key: "left", Means: "one way: %", Formula: "Σ over the lines of the book"},
		{Key: "right", Means: "the other way: %", Formula: "Σ over the lines of the book"},
		{Key: "agree", Means: "whether both ways agree: %", Formula: "to the last figure", From: []string{".left", ".right"}},
	}}
	if b == nil {
		return set
	}
	add := func(key, name string, left, right measure.Length) {
		agree := measure.Word("yes")
		if left != right {
			agree = "NO"
		}
		set.Row(key, name, measure.Reading(left), measure.Reading(right), agree)
	}
	a := b.Checks
	add("sights", "backsights less foresights = last less first height", a.Backsights-a.Foresights, a.Difference)
	add("rises", "rises less falls = last less first height", a.Rises-a.Falls, a.Difference)
	add("full", "all sights and heights = "+HeightLine[j.Ground.Instrument.Kind][0]+" times heights taken", a.FullLeft, a.FullRight)
	return set
}

// RunWords say how each run of set-ups closes.
func (b *Book) RunWords(style measure.Style) []string {
	var words []string
	for _, run := range b.Runs {
		note := "The book does not close: read the bench mark again at the end."
		if run.Closed {
			note = fmt.Sprintf("Misclosure %s over %s; allowed %s.", run.Misclosure.Print(style), measure.Counted(run.Count, "set-up"), run.Allowed.Print(style))
		}
		if first := b.SetUps[run.SetUps[0]].Number; len(b.Runs) > 1 {
			note = fmt.Sprintf("From set-up %d: %s", first, note)
		}
		words = append(words, note)
	}
	return words
}

// HeightLine names, by the kind of instrument, what heights are counted from in
// one set-up, and what must stay where it is during it.
var HeightLine = map[string][2]string{
	"rotary_laser": {"instrument", "instrument"}, "line_laser": {"instrument", "instrument"}, "builders_level": {"instrument", "instrument"},
	"water_level": {"water", "mark of the water"}, "string_level": {"string", "nail of the string"},
}

// standsTold is how many places for the instrument are told, the best first.
const standsTold = 3

func standSet(j *job.Job, f *frame.Frame) figure.Set {
	set := figure.Set{Name: "stands", Key: "stand", Fields: []figure.Field{
		{Key: "x", Means: "place %, along", Formula: "tried over and around the frame"},
		{Key: "y", Means: "place %, across", Formula: "tried over and around the frame"},
		{Key: "worst", Means: "worst pier from %", Formula: "the farthest sight"},
		{Key: "off_by", Means: "what the worst pier may be off by, from %", Formula: "error of the class × sight ÷ the distance it is given for", From: []string{"ground.instrument.error"}},
		{Key: "differ", Means: "what piers may differ by, from %", Formula: "greatest − least of all piers", From: []string{"ground.instrument.error"}},
	}}
	for i, s := range Stands(j, f) {
		if i == standsTold {
			break
		}
		set.Row(strconv.Itoa(i+1), s.Where, s.X, s.Y, measure.Word(s.Worst.Pier), measure.Small(s.Worst.Error), measure.Small(s.Spread))
	}
	return set
}
