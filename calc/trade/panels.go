package trade

import (
	"slices"

	"pierbook/calc/measure"
)

// Panel is a thickness of floor panel with the span ratings it is stamped with.
type Panel struct {
	Thickness measure.Length
	Ratings   []int // greatest joist spacing in inches; the first is what an unmarked panel is sure of
	Source    string
}

// panelSpan is what a rated panel carries at one joist spacing.
type panelSpan struct {
	rating  int
	spacing measure.Length
	load    measure.Stress
	source  string
	memory  bool
}

func readPanels(rows []row) []Panel {
	list := make([]Panel, len(rows))
	for i, r := range rows {
		list[i] = Panel{Thickness: r.length("thickness"), Ratings: []int{r.whole("rating")}, Source: r.text("source")}
		if other := r.whole("or"); other != 0 {
			list[i].Ratings = append(list[i].Ratings, other)
		}
	}
	return list
}

func readSpans(rows []row) []panelSpan {
	list := make([]panelSpan, len(rows))
	for i, r := range rows {
		list[i] = panelSpan{r.whole("rating"), r.length("spacing"), r.stress("load"), r.text("source"), r.yes("memory")}
	}
	return list
}

// Panels returns the thicknesses of single-floor panels that have a rating of
// their own.
func Panels() []Panel { return facts().panels }

// FindPanel returns the panel of a thickness and whether the table has it, within
// a tenth of a millimetre.
func FindPanel(thickness measure.Length) (Panel, bool) {
	return find(facts().panels, func(p Panel) bool { return (p.Thickness - thickness).Abs() <= alike })
}

// alike is how near two ways of writing one thickness come: a panel of 19/32 in
// is 15.1 mm thick, one of 23/32 in 18.3 mm.
const alike = measure.Millimetre / 10

// TooThin says whether no single-floor panel is so thin.
func TooThin(thickness measure.Length) bool { return Thinner(thickness, ThinnestPanel()) }

// Thinner says whether a thickness falls short of a least one by more than two
// ways of writing one thickness do.
func Thinner(thickness, least measure.Length) bool { return thickness < least-alike }

// ThinnestPanel returns the least thickness of a single-floor panel.
func ThinnestPanel() measure.Length {
	return slices.MinFunc(facts().panels, func(a, b Panel) int { return int(a.Thickness - b.Thickness) }).Thickness
}

// RatedSpacing returns the joist spacing of a span rating, which the stamp gives
// in inches.
func RatedSpacing(rating int) measure.Length { return measure.Length(rating) * measure.Inch }

// sanded is how much thinner a panel may be than it is called: 18 mm for 23/32 in.
// PS 1-09, sanded panels, from memory.
const sanded = measure.Inch / 64

// RatingsUpTo returns the span ratings that a panel between two published
// thicknesses may be stamped with: those of panels no thicker, from the least up.
func RatingsUpTo(thickness measure.Length) []int {
	var list []int
	for _, p := range facts().panels {
		if p.Thickness <= thickness+sanded {
			list = append(list, p.Ratings...)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// PanelLoad returns the live load of a span rating at the least spacing of the
// table that is not below the joists', with its source and whether that is from
// memory; ok is false when the table has no such spacing.
func PanelLoad(rating int, spacing measure.Length) (load measure.Stress, source string, memory, ok bool) {
	s, ok := find(facts().spans, func(s panelSpan) bool { return s.rating == rating && spacing <= s.spacing })
	return s.load, s.source, s.memory, ok
}

// Board is a least thickness of floor boards with the joist spacing it allows.
type Board struct {
	Of                 string // floor of a building, or deck
	Thickness, Spacing measure.Length
	Source             string
}

func readBoards(rows []row) []Board {
	list := make([]Board, len(rows))
	for i, r := range rows {
		list[i] = Board{r.text("of"), r.length("thickness"), r.length("spacing"), r.text("source")}
	}
	return list
}

// ThinnestBoard returns the least thickness of floor boards of a kind.
func ThinnestBoard(of string) measure.Length {
	least := measure.Length(0)
	for _, b := range facts().boards {
		if b.Of == of && (least == 0 || b.Thickness < least) {
			least = b.Thickness
		}
	}
	return least
}

// FindBoard returns the row with the widest spacing for boards of a thickness,
// laid square to the joists, and whether there is one.
func FindBoard(of string, thickness measure.Length) (Board, bool) {
	var best Board
	for _, b := range facts().boards {
		if b.Of == of && !Thinner(thickness, b.Thickness) && b.Spacing > best.Spacing {
			best = b
		}
	}
	return best, best.Spacing > 0
}
