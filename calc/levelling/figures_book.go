package levelling

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func sightKey(setUp, number int) string { return fmt.Sprintf("sight.%d.%d", setUp, number) }
func instrumentKey(setUp int) string    { return fmt.Sprintf("setup.%d.height", setUp) }

// readings adds the bench mark, every sight, the height of each set-up and the
// closing of the book.
func (l *ledger) readings(b *Book) {
	bench := l.job.Ground.BenchMark
	l.Add(l.job.Figure("bench_mark.where", "where the bench mark is", "ground.bench_mark.where", measure.Word(bench.Where)))
	l.Add(l.job.Figure("bench_mark.height", "height of the bench mark", "ground.bench_mark.height", bench.Height))
	if b == nil {
		l.Blank("ground.setups", "set-ups of the instrument",
			"ground.misclosure", "misclosure on the bench mark, found less known",
			"ground.misclosure_allowed", "misclosure allowed",
			"ground.spare_sights", spareSights, "ground.reading_error", readingError)
		return
	}
	for _, s := range b.SetUps {
		l.setUp(b, s)
	}
	l.closing(b)
	l.network(b)
}

func (l *ledger) setUp(b *Book, s SetUp) {
	l.sight(s.Number, 1, s.Backsight, "backsight on")
	from := []string{sightKey(s.Number, 1)}
	if isKnown(l.job, s.From) {
		from = append(from, knownKey(s.From))
	} else if p, ok := b.Point(s.From); ok {
		for _, at := range p.From {
			if shot := b.Shot(at); shot.Foresight && shot.Height == s.FromHeight {
				from = append(from, instrumentKey(b.SetUps[at.SetUp].Number), sightKey(b.SetUps[at.SetUp].Number, shot.Numbers[0]))
			}
		}
	}
	l.Add(figure.Figure{Key: instrumentKey(s.Number), Means: fmt.Sprintf("height of the instrument in set-up %d", s.Number),
		Value: s.Instrument, Formula: "instrument = height of " + pointName(s.From) + " + backsight",
		Working: l.Sum(s.Instrument, figure.Plus(s.FromHeight), figure.Plus(measure.Reading(s.Backsight.Reading))), From: from})
	for _, shot := range s.Shots {
		for i, sight := range shot.Sights {
			l.sight(s.Number, shot.Numbers[i], sight, "reading on")
		}
	}
}

func (l *ledger) sight(setUp, number int, s job.Sight, what string) {
	l.Add(figure.Figure{Key: sightKey(setUp, number), Means: fmt.Sprintf("%s %s, set-up %d", what, pointName(s.Point), setUp),
		Value: measure.Reading(s.Reading), Origin: figure.Measured, At: s.At})
}

// closing adds the misclosure of the run that comes nearest to its limit.
func (l *ledger) closing(b *Book) {
	l.Add(figure.Figure{Key: "ground.setups", Means: "set-ups of the instrument", Value: measure.Count(len(b.SetUps)),
		Formula: "counted", Working: measure.Counted(len(b.SetUps), "set-up")})
	run, closed := b.Worst()
	if !closed {
		l.Blank("ground.misclosure", "misclosure on the bench mark, found less known",
			"ground.misclosure_allowed", "misclosure allowed")
		return
	}
	last := b.SetUps[run.Closing.SetUp]
	shot := b.Shot(run.Closing)
	known, _ := knownHeight(l.job, shot.Point)
	l.Add(figure.Figure{Key: "ground.misclosure", Means: "misclosure on the bench mark, found less known", Value: run.Misclosure,
		Formula: "misclosure = instrument − closing reading − height of the " + markName(shot.Point),
		Working: l.Sum(run.Misclosure, figure.Plus(last.Instrument), figure.Minus(measure.Reading(shot.Reading)), figure.Minus(known)),
		From:    []string{instrumentKey(last.Number), sightKey(last.Number, shot.Numbers[0]), knownKey(shot.Point)}})
	l.Add(figure.Figure{Key: "ground.misclosure_allowed", Means: "misclosure allowed", Value: run.Allowed, Rounding: measure.Down,
		Formula: "allowed = allowance for one set-up × √set-ups",
		Working: fmt.Sprintf("%s × √%d = %s", l.Print(l.job.Ground.CloseTo), run.Count, l.Down(run.Allowed)),
		Source:  "derived: twice √2 times the error of one reading; near 5 mm × √set-ups, common practice, no source",
		From:    []string{"ground.close_to", "ground.setups"}})
}

const (
	spareSights  = "sights beyond those that the heights need"
	readingError = "standard error of one reading, as the sights beyond those needed show it"
)

// network adds what the adjustment by least squares says of the readings.
func (l *ledger) network(b *Book) {
	net := b.Network
	if net == nil {
		l.Blank("ground.spare_sights", spareSights, "ground.reading_error", readingError)
		return
	}
	var from []string
	sights := 0
	for _, s := range b.SetUps {
		for n := range s.count() {
			from = append(from, sightKey(s.Number, n+1))
			sights++
		}
	}
	points := sights - len(b.SetUps) - net.Redundancy
	l.Add(figure.Figure{Key: "ground.spare_sights", Means: spareSights, Value: measure.Count(net.Redundancy),
		Formula: "sights − set-ups − points sought",
		Working: fmt.Sprintf("%d − %d − %d = %d", sights, len(b.SetUps), points, net.Redundancy), From: append(from, "ground.setups")})
	l.Add(figure.Figure{Key: "ground.reading_error", Means: readingError, Value: net.Residual, Rounding: measure.Up,
		Formula: "√(sum of squared residuals of all sights ÷ spare sights), the sum least",
		Working: fmt.Sprintf("√(%.2f mm² ÷ %d) = %s", net.Squares*1e6, net.Redundancy, l.Up(net.Residual)),
		From:    []string{"ground.spare_sights"}})
}

// HeightFigure returns the figure of a point that was read, under the key that
// the point has as a pier or as a spot.
func (b *Book) HeightFigure(style measure.Style, key, means string, p PointHeight) figure.Figure {
	l := figure.Ledger{Style: style}
	f := figure.Figure{Key: key, Means: means, Value: p.Height,
		Formula: "height = instrument − reading − misclosure × set-ups so far ÷ all set-ups"}
	if b.Network != nil {
		f.Formula = "height = instrument − reading + correction of the set-up by least squares"
	}
	if p.Sights > 1 {
		f.Formula += fmt.Sprintf(", mean of %s that differ by %s", measure.Counted(p.Sights, "sight"), l.Print(p.Spread))
	}
	var sums []string
	for _, at := range p.From {
		s, shot := b.SetUps[at.SetUp], b.Shot(at)
		sums = append(sums, l.Sum(shot.Reduced(), figure.Plus(s.Instrument), figure.Minus(measure.Reading(shot.Reading)), figure.Plus(shot.Correction)))
		f.From = append(f.From, instrumentKey(s.Number))
		for _, number := range shot.Numbers {
			f.From = append(f.From, sightKey(s.Number, number))
		}
	}
	for _, setUp := range p.Behind {
		s, correction := b.SetUps[setUp], b.Network.Corrections[setUp]
		sums = append(sums, l.Sum(s.FromHeight+correction, figure.Plus(s.Instrument), figure.Minus(measure.Reading(s.Backsight.Reading)), figure.Plus(correction)))
		f.From = append(f.From, instrumentKey(s.Number), sightKey(s.Number, 1))
	}
	f.Working = strings.Join(sums, "; ")
	switch {
	case b.Network != nil:
		f.From = append(f.From, "ground.spare_sights")
	case b.Closed():
		f.From = append(f.From, "ground.misclosure")
	}
	return f
}
