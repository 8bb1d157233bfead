package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// CheckBars are two bars of known length, 4 in and 100 mm, along the paper and
// across it. A sheet on which they measure short was printed shrunk, and so was
// every drawing that states a scale.
type CheckBars struct{}

// About returns the record of the drawing.
func (CheckBars) About() About {
	return About{
		Name: "check-bars", Title: "Check bars for the printer",
		Shows: "A bar 4 in long and one 100 mm long, each drawn across the paper and along it. Measure them before the drawings are used.",
	}
}

const (
	barsWide  = 128.0 // of the sheet
	barsHigh  = 116.0
	barsLeft  = 22.0 // where the bars across begin
	barsTop   = 8.0  // and the bars along
	barsPitch = 10.0
)

func (b CheckBars) sheet(measure.Style) *kit.Sheet {
	about := b.About()
	s := kit.New(about.Name, about.Title, about.Shows, barsWide, barsHigh)
	for i, bar := range []struct {
		long          measure.Length
		words         string
		across, along [2]string
	}{
		{4 * measure.Inch, "4 in", [2]string{"P", "Q"}, [2]string{"T", "U"}},
		{100 * measure.Millimetre, "100 mm", [2]string{"R", "S"}, [2]string{"V", "W"}},
	} {
		at := barsPitch * float64(i)
		start := kit.Point{X: barsLeft, Y: barsTop + at}
		drawBar(s, start, start.Plus(bar.long.Millimetres(), 0), bar.across)
		start = kit.Point{X: 3 + at, Y: barsTop + 4}
		drawBar(s, start, start.Plus(0, bar.long.Millimetres()), bar.along)
	}
	s.WriteLines(kit.Text{At: kit.Point{X: 40, Y: 44}, Size: kit.Medium, Align: kit.Start, Bold: true},
		[]string{"Measure before use."})
	s.WriteLines(kit.Text{At: kit.Point{X: 40, Y: 52}, Align: kit.Start}, []string{
		"P–Q and T–U are 4 in,", "R–S and V–W are 100 mm.", "If one is off, the sheets were", "shrunk: reject them, and print", "again at 100 per cent."})
	return s
}

// drawBar draws a bar with a mark and a letter at each end.
func drawBar(s *kit.Sheet, from, to kit.Point, letters [2]string) {
	s.Line(kit.Cut, from, to)
	for i, end := range []kit.Point{from, to} {
		if from.Y == to.Y {
			s.Upright(kit.Cut, end.X, end.Y-2, end.Y+2)
			s.Write(kit.Text{Words: letters[i], At: end.Plus(0, -4.6), Align: kit.Start, Bold: true})
			continue
		}
		s.Across(kit.Cut, end.X-2, end.X+2, end.Y)
		s.Write(kit.Text{Words: letters[i], At: end.Plus(3.2, 0), Align: kit.Start, Bold: true})
	}
}
