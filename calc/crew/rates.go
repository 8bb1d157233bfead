package crew

import (
	"fmt"

	"pierbook/calc/measure"
)

// rate is one term of an estimate: hours for one of what is counted.
type rate struct {
	step, what  string
	amount      func(Work) measure.Quantity
	key         string  // of the figure that the amount is, or empty
	least, most float64 // hours for one thing, cubic yard, square foot or foot
	source      string
	memory      bool
}

// judgement is the source of all rates: hours differ from crew to crew, and a
// shop writes its own under crew.rates.
const judgement = "common practice, no source"

func once(Work) measure.Quantity       { return nil }
func piers(w Work) measure.Quantity    { return measure.Count(w.Piers) }
func posts(w Work) measure.Quantity    { return measure.Count(w.Posts) }
func beams(w Work) measure.Quantity    { return measure.Count(w.BeamPieces) }
func joists(w Work) measure.Quantity   { return measure.Count(w.Joists) }
func rims(w Work) measure.Quantity     { return measure.Count(w.Rims) }
func panels(w Work) measure.Quantity   { return measure.Count(w.Panels) }
func boards(w Work) measure.Quantity   { return measure.Count(w.Boards) }
func readings(w Work) measure.Quantity { return measure.Count(w.Readings) }
func dug(w Work) measure.Quantity      { return w.Dig }
func stone(w Work) measure.Quantity    { return w.Stone }
func area(w Work) measure.Quantity     { return w.Area }
func joistRun(w Work) measure.Quantity { return w.JoistRun }
func beamRun(w Work) measure.Quantity  { return w.BeamRun }

func panelArea(w Work) measure.Quantity {
	if w.Panels == 0 {
		return measure.Area(0)
	}
	return w.Area
}

// rates are the terms of all steps: a practised hand's rate is the lower end, a
// first-timer's, about four times that, the upper.
var rates = []rate{
	{"set-out", "batter boards, strings and squaring", once, "", 1.5, 7, judgement, false},
	{"survey", "setting up and checking the instrument", once, "", 0.5, 1, judgement, false},
	{"survey", "readings", readings, "", 0.03, 0.08, judgement, false},
	{"choose-height", "working through the sheet", once, "", 0.25, 0.75, judgement, false},
	{"mark-piers", "piers", piers, "frame.piers", 0.03, 0.1, judgement, false},
	{"dig", "digging by hand, in the bank", dug, "", 1.32, 3.23, judgement + ": average soil, and hard pan", false},
	{"dig", "trimming holes to their depth", piers, "frame.piers", 0.05, 0.25, judgement, false},
	{"stone", "spreading and tamping", stone, "stone.compacted", 0.86, 3.44, judgement, false},
	{"stone", "levelling beds", piers, "frame.piers", 0.05, 0.2, judgement, false},
	{"blocks", "blocks, level both ways, and their readings", piers, "frame.piers", 0.15, 0.5, judgement, false},
	{"posts", "posts", posts, "frame.piers", 0.15, 0.5, judgement + ": 20 to 30 minutes each for a first-timer", false},
	{"beams", "pieces", beams, "beam.pieces", 0.2, 0.5, judgement, false},
	{"beams", "run of the plies", beamRun, "", 0.017, 0.05, judgement, false},
	{"square-again", "measuring and racking", once, "", 0.25, 1, judgement, false},
	{"ground-cloth", "area", area, "frame.area", 0.002, 0.005, judgement, false},
	{"joists", "run of the joists", joistRun, "", 0.015, 0.045, judgement, false},
	{"joists", "joists, both ends", joists, "joist.count", 0.03, 0.08, judgement, false},
	{"joists", "rims", rims, "", 0.3, 0.6, judgement, false},
	{"surface", "area of panels", panelArea, "frame.area", 0.0125, 0.035, judgement + ": 1.07 h at most for a sheet of 32 ft²", false},
	{"surface", "pieces of panel", panels, "panel.count", 0.05, 0.15, judgement, false},
	{"surface", "boards", boards, "board.count", 0.2, 0.5, judgement, false},
	{"final-check", "readings on the floor and the walk round", once, "", 0.75, 1.5, judgement, false},
}

// Term is one part of an estimate.
type Term struct {
	What   string
	Amount measure.Quantity // nil for what is done once
	Key    string           // of the amount's figure
	Each   Range            // for one, or one cubic yard, square foot, foot
	Hours  Range
	Source string
	Memory bool
}

// number returns how often the rate counts: things, cubic yards, square feet or feet.
func number(amount measure.Quantity) float64 {
	switch v := amount.(type) {
	case nil:
		return 1
	case measure.Count:
		return float64(v)
	case measure.Volume:
		return float64(v / measure.CubicYard)
	case measure.Area:
		return float64(v / measure.SquareFoot)
	case measure.Length:
		return v.Metres() / measure.Foot.Metres()
	default:
		panic(fmt.Sprintf("crew: no rate for a %T", amount))
	}
}

func (r rate) term(w Work) Term {
	amount := r.amount(w)
	n := measure.Hours(number(amount))
	each := Range{measure.Hours(r.least), measure.Hours(r.most)}
	return Term{What: r.what, Amount: amount, Key: r.key, Each: each, Hours: Range{n * each.Least, n * each.Most}, Source: r.source, Memory: r.memory}
}

// Working returns the term with its numbers: "digging by hand, in the bank: 1.75 yd³ ×
// 1.32 to 3.23 h/yd³". In a metric job the rates are per metric unit.
func (t Term) Working(style measure.Style) string {
	if t.Amount == nil {
		return fmt.Sprintf("%s: %.2g to %.2g h", t.What, float64(t.Each.Least), float64(t.Each.Most))
	}
	unit, per := "", 1.0
	metric := style.System == measure.Metric
	pick := func(imperial, inMetric string, times float64) {
		unit = "/" + imperial
		if metric {
			unit, per = "/"+inMetric, times
		}
	}
	switch t.Amount.(type) {
	case measure.Volume:
		pick("yd³", "m³", 1/float64(measure.CubicYard))
	case measure.Area:
		pick("ft²", "m²", 1/float64(measure.SquareFoot))
	case measure.Length:
		pick("ft", "m", 1/measure.Foot.Metres())
	}
	return fmt.Sprintf("%s: %s × %.3g to %.3g h%s", t.What, t.Amount.Print(style), float64(t.Each.Least)*per, float64(t.Each.Most)*per, unit)
}
