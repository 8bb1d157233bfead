package crew

import "pierbook/calc/measure"

// Work is how much there is to do.
type Work struct {
	Piers, Corners, Posts, BeamPieces, Joists, Rims, Panels, Boards int
	Readings                                                        int
	Dig, Stone                                                      measure.Volume // dug in the bank, stone compacted
	Area                                                            measure.Area
	BeamRun, JoistRun                                               measure.Length
}

// Step is one step of the work, in order, as the binder's step sheets name it.
type Step struct {
	Name      string // "dig"
	Title     string
	People    int
	Overnight string // whether the work may be left overnight after it
	Hold      string // the hold point at its end
	rates     []rate
}

// rate is one term of an estimate.
type rate struct {
	what        string
	amount      func(Work) float64
	least, most float64 // hours for one
	source      string
	memory      bool
}

const (
	costBook  = "national cost book, hand labour"
	novice    = "cost book and a first-timer's diary, about four to one"
	judgement = "common practice, no source"
)

func once(Work) float64                  { return 1 }
func piers(w Work) float64               { return float64(w.Piers) }
func dug(w Work) float64                 { return float64(w.Dig) }
func stone(w Work) float64               { return float64(w.Stone) }
func area(w Work) float64                { return float64(w.Area) }
func joists(w Work) float64              { return float64(w.Joists) }
func beams(w Work) float64               { return float64(w.BeamPieces) }
func readings(w Work) float64            { return float64(w.Readings) }
func panels(w Work) float64              { return float64(w.Panels) }
func joistRun(w Work) float64            { return w.JoistRun.Metres() }
func beamRun(w Work) float64             { return w.BeamRun.Metres() }
func boardRun(w Work) float64            { return float64(w.Boards) }
func rims(w Work) float64                { return float64(w.Rims) }
func posts(w Work) float64               { return float64(w.Posts) }
func perCubicYard(hours float64) float64 { return hours / float64(measure.CubicYard) }
func perFoot(hours float64) float64      { return hours / measure.Foot.Metres() }

// Steps returns the steps of the work in order.
func Steps() []Step {
	return []Step{
		{"set-out", "Set out and square", 2, "yes, strings down and line marks kept", "four sides and two diagonals within their limits", []rate{{"batter boards and strings", once, 1.5, 7, "a builder's diary has 7 h for a first-timer; the lower end is " + judgement, false}}},
		{"survey", "Read the ground", 2, "yes", "the level book closes", []rate{{"setting up and checking the instrument", once, 0.5, 1, judgement, false}, {"each reading", readings, 0.03, 0.08, judgement, false}}},
		{"choose-height", "Choose the height", 1, "yes", "the floor height is agreed and written down", []rate{{"working through the sheet", once, 0.25, 0.75, judgement, false}}},
		{"mark-piers", "Mark the piers", 2, "yes", "every pier centre checked from the hook corner", []rate{{"each pier", piers, 0.03, 0.1, judgement, false}}},
		{"dig", "Dig", 2, "yes, every hole covered", "firm ground in every hole, written down", []rate{{"digging by hand", dug, perCubicYard(1.32), perCubicYard(3.23), costBook, false}, {"trimming each hole to its depth", piers, 0.05, 0.25, novice, false}}},
		{"stone", "Lay and tamp the stone", 2, "yes, covered against rain", "top of every bed at its height", []rate{{"spreading and tamping", stone, perCubicYard(0.86), perCubicYard(3.4), novice, false}, {"each bed", piers, 0.05, 0.2, judgement, false}}},
		{"blocks", "Set the blocks", 2, "yes", "every seat read and written down", []rate{{"each block, level both ways, and its reading", piers, 0.15, 0.5, "a first-timer's diary: 0.75 h a pier for digging, stone and block together", false}}},
		{"posts", "Cut and set the posts", 2, "no: brace them or lay them down", "every post top at one reading", []rate{{"each post", posts, 0.15, 0.5, "an article on setting posts: 20 to 30 minutes each", false}}},
		{"beams", "Lay the beams", 2, "yes, once braced", "all lines level and straight, joints over posts", []rate{{"each piece", beams, 0.2, 0.5, judgement, false}, {"the run of the beams", beamRun, perFoot(0.017), perFoot(0.05), costBook, false}}},
		{"square-again", "Square again", 2, "yes, braced", "four sides and two diagonals within their limits", []rate{{"measuring and racking", once, 0.25, 1, judgement, false}}},
		{"ground-cloth", "Lay the ground cloth", 2, "yes, weighted down", "laps the right way and wide enough", []rate{{"the area", area, 0.02, 0.05, judgement, false}}},
		{"joists", "Set the joists", 2, "yes, with the rims nailed", "every joist on its mark, crown up", []rate{{"the run of the joists", joistRun, perFoot(0.015), perFoot(0.045), "labour rate recalled from a cost book", true}, {"each joist's two ends", joists, 0.03, 0.08, judgement, false}, {"rims", rims, 0.3, 0.6, judgement, false}}},
		{"surface", "Lay the floor", 2, "no: fix what is laid, tie down what is loose", "gaps, fasteners and edges checked", []rate{{"the area of panels", func(w Work) float64 {
			if w.Panels == 0 {
				return 0
			}
			return area(w)
		}, 0.0125 / float64(measure.SquareFoot), 0.035 / float64(measure.SquareFoot), "labour rate recalled from a cost book; a sheet of rates has 1.07 h a sheet", true}, {"each panel's cuts", panels, 0.05, 0.15, judgement, false}, {"boards", boardRun, 0.2, 0.5, judgement, false}}},
		{"final-check", "Check and hand over", 2, "yes", "as-built readings within their limits, the book signed", []rate{{"readings on the floor and the walk round", once, 0.75, 1.5, judgement, false}}},
	}
}
