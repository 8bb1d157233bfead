package setout

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sets returns the lengths to measure, what slides, and what the measured lengths
// mean, in the order in which tables list them.
func (s *SetOut) Sets() []figure.Set {
	return []figure.Set{s.sideSet(), rackingSet("racking", s.Racking), rackingSet("beam-racking", s.BeamRacking), s.sixSet(), s.moveSet()}
}

func wantedOf(r Rectangle) Six {
	return Six{r.Length, r.Width, r.Length, r.Width, r.Diagonal(), r.Diagonal()}
}

// sideSet is the four sides and two diagonals of the strings, the piers and the
// beams: wanted, and as measured twice. The frame's faces are measured again on
// the beams.
func (s *SetOut) sideSet() figure.Set {
	set := figure.Set{Name: "sides", Key: "sides", Fields: []figure.Field{
		{Key: "of", Means: "what % is a length of", Formula: "strings, pier centres, beams"},
		{Key: "wanted", Means: "length % wanted", Formula: "by the plan; √(length² + width²) across the corners"},
		{Key: "first", Means: "first measuring of %", Formula: "as measured"},
		{Key: "first_off", Means: "off by, first measuring of %", Formula: "measured − wanted", From: []string{".first", ".wanted"}},
		{Key: "second", Means: "second measuring of %", Formula: "as measured"},
		{Key: "second_off", Means: "off by, second measuring of %", Formula: "measured − wanted", From: []string{".second", ".wanted"}},
	}}
	for k, r := range []Rectangle{s.Frame, s.Piers, s.Beams} {
		for i, want := range wantedOf(r) {
			name := SideName(r, i)
			row := []measure.Quantity{measure.Word(r.Title), want, nil, nil, nil, nil}
			for _, check := range s.Checks() {
				if r != check.Rectangle {
					continue
				}
				at, measured := 2, check.Adjustment.Measured[i]
				if check == s.Sides && r == s.Frame {
					at = 4
				}
				row[at], row[at+1] = measured, measured-want
			}
			set.Row([]string{"frame", "piers", "beams"}[k]+"."+name, name, row...)
		}
	}
	return set
}

func rackingSet(name string, rows []Racked) figure.Set {
	set := figure.Set{Name: name, Key: strings.ReplaceAll(name, "-", "_"), Fields: []figure.Field{
		{Key: "difference", Means: "difference of the diagonals, row %", Formula: "by steps of the tape"},
		{Key: "far_board", Means: "way of both end strings on the far boards, row %", Formula: "slide × string from board to board ÷ width", From: []string{".slide"}},
		{Key: "slide", Means: "slide of the far side, row %", Formula: "slide = (d1² − d2²) / (4 a)", From: []string{".difference"}},
		{Key: "long", Means: "long diagonal, row %", Formula: "law of cosines", From: []string{".slide"}},
		{Key: "short", Means: "short diagonal, row %", Formula: "law of cosines", From: []string{".slide"}},
	}}
	for i, row := range rows {
		n := strconv.Itoa(i + 1)
		set.Row(n, n, row.Difference, row.FarBoard, row.Slide, row.Long, row.Short)
	}
	return set
}

// sixSet is the six measured lengths with what the adjustment makes of them and
// the mistake in each that alone would explain everything.
func (s *SetOut) sixSet() figure.Set {
	set := figure.Set{Name: "measured-sides", Known: []string{"measured", "adjusted"}, Fields: []figure.Field{
		{Key: "of", Means: "what % is a length of", Formula: "strings or beams"},
		{Key: "wanted", Means: "length % wanted", Formula: "by the plan"},
		{Key: "mistake", Means: "mistake, if % is wrong", Formula: "−v / r, where the six do not agree", From: []string{".slip"}},
		{Key: "like", Means: "usual slip that the mistake in % looks like", Formula: "within two standard deviations of it", From: []string{".slip"}},
	}}
	for _, check := range s.Checks() {
		of := measure.Word("The " + check.Of + ": " + check.Rectangle.Title)
		a, r := check.Adjustment, check.Rectangle
		for i, want := range wantedOf(r) {
			var slip measure.Quantity = measure.Word("–")
			like := ""
			if a.Verdict != Agree {
				slip, like = a.Slips[i].Size, a.Slips[i].Usual
				if like != "" && !a.Slips[i].Near {
					like = "perhaps " + like
				}
			}
			key := check.key(s) + ".side." + SideName(r, i)
			said := func(q measure.Quantity, working, from string) figure.Said {
				return figure.Said{Quantity: q, Working: working, From: []string{from}}
			}
			set.Row(key, SideName(r, i), said(of, r.Title, "corner.1"), said(want, SideName(r, i)+" of "+r.Title, "frame.diagonal"),
				said(slip, string(a.Verdict), key+".slip"), said(measure.Word(like), string(a.Verdict), key+".slip"))
		}
	}
	return set
}

// key is what the figures of a check begin with.
func (c *Check) key(s *SetOut) string {
	if c == s.Strings {
		return "strings"
	}
	return "frame_measured"
}

// Said tells what the six lengths and the diagonals among them mean, and what to
// measure again.
func (c *Check) Said(style measure.Style) string {
	print := func(l measure.Length) string { return l.Print(style) }
	said := fmt.Sprintf("The %s: test value %.2f; %s.", c.Of, c.Adjustment.TestValue, c.Adjustment.Verdict)
	if c.MayMove() {
		said += fmt.Sprintf(" The diagonals differ by %s: %s.", print(c.Difference.Abs()), c.Squareness())
	}
	if c.Adjustment.Verdict == Agree {
		said += " That the six agree means that none is mistaken, not that it is square."
	}
	switch suspects := c.Suspects(); {
	case len(suspects) > 0:
		said += " Measure again first: " + strings.Join(suspects, ", ") + "."
	case c.Adjustment.Verdict != Agree:
		said += " To place the mistake, measure from a corner to the middle of the side opposite as well."
	}
	shows := c.Adjustment.Shows()
	return said + fmt.Sprintf(" A mistake under %s in a diagonal, or %s in a short side, would not have shown.", print(min(shows[4], shows[5])), print(max(shows[0], shows[1], shows[2], shows[3])))
}

// moveSet is the corner moves for three choices of what to hold, with what the
// tape leaves open. What the tape cannot show is left out.
func (s *SetOut) moveSet() figure.Set {
	set := figure.Set{Name: "moves", Key: "moves", Fields: []figure.Field{
		{Key: "of", Means: "what is held while % moves", Formula: "three choices"},
		{Key: "along", Means: "move of % along", Formula: "place in the rectangle − adjusted place"},
		{Key: "along_to", Means: "where % moves to along", Formula: "by the sign of the move"},
		{Key: "across", Means: "move of % across", Formula: "place in the rectangle − adjusted place"},
		{Key: "across_to", Means: "where % moves to across", Formula: "by the sign of the move"},
		{Key: "give", Means: "give or take of the move of %", Formula: "two standard deviations"},
		{Key: "moves", Means: "% moves", Formula: "by more than the tape shows"},
	}}
	none := figure.Nothing
	add := func(name, of string, values ...measure.Quantity) {
		set.Row(strconv.Itoa(len(set.Things)+1), name, append([]measure.Quantity{measure.Word(of)}, values...)...)
	}
	for _, check := range s.Checks() {
		if !check.MayMove() {
			continue
		}
		if check.InPlace() {
			add("all four", "The "+check.Of+" are where they belong", measure.Word("stay"), none, none, none, none, figure.Yes(false))
			continue
		}
		for _, hold := range check.Holds {
			for i, m := range hold.Moves {
				add(check.Rectangle.Corners[i], fmt.Sprintf("The %s: %s; %s", check.Of, hold.Name, mayStay(hold.Stay)), check.moveOf(i, m)...)
			}
		}
	}
	return set
}

func (c *Check) moveOf(i int, m Move) []measure.Quantity {
	none := figure.Nothing
	if m.Size() <= c.Tolerance {
		return []measure.Quantity{measure.Word("stays"), none, none, none, none, figure.Yes(false)}
	}
	dash := measure.Word("–")
	row := []measure.Quantity{dash, none, dash, none, 2 * max(m.AlongError, m.AcrossError), figure.Yes(true)}
	along, across := c.Parts(m)
	if along != 0 {
		row[0], row[1] = along.Abs(), measure.Word(c.AlongTowards(i, m))
	}
	if across != 0 {
		row[2], row[3] = across.Abs(), measure.Word(c.AcrossTowards(i, m))
	}
	return row
}

func mayStay(n int) string {
	switch n {
	case 0:
		return "all four move"
	case 1:
		return "one stays"
	case 4:
		return "all four stay"
	default:
		return fmt.Sprintf("%d stay", n)
	}
}
