package setout

import (
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Figures returns the figures of the setting out.
func (s *SetOut) Figures(j *job.Job) []figure.Figure {
	style := j.Style()
	l := s.FrameLimits
	print := func(v measure.Length) string { return v.Print(style) }
	figures := []figure.Figure{
		{Key: "tape.error", Means: "error of one tape reading, one standard deviation", Value: l.Tape, Origin: figure.Assumed,
			Source: "NIST Handbook 44 (2020), section 5.52, allows a tape 1/16 in from 7 to 30 ft; marking and hooking are common practice, no source"},
		{Key: "diagonals.allowed", Means: "difference of the diagonals that squareness allows", Value: l.Allowed, Rounding: measure.Down, Origin: figure.Computed,
			Source: LimitsBasis, Formula: "allowed = 2 a e / D", From: []string{"frame.length", "frame.width", "frame.diagonal"},
			Working: fmt.Sprintf("2 × %s × %s / %s", print(max(s.Frame.Length, s.Frame.Width)), print(l.Lateral), print(s.Frame.Diagonal()))},
		{Key: "diagonals.do", Means: "difference of the diagonals to work to", Value: l.Do, Rounding: measure.Down, Origin: figure.Computed,
			Source: LimitsBasis, Formula: "half of what is accepted, not under one tape reading", Working: print(l.Accept) + " / 2", From: []string{"diagonals.accept", "tape.error"}},
		{Key: "diagonals.accept", Means: "difference of the diagonals up to which the frame is square for certain", Value: l.Accept, Rounding: measure.Down, Origin: figure.Computed,
			Source: LimitsBasis, Formula: "accept = allowed − 1.96 √2 σ", Working: print(l.Allowed) + " − " + print(l.Guard), From: []string{"diagonals.allowed", "tape.error"}},
		{Key: "diagonals.stop", Means: "difference of the diagonals beyond which the frame is out of square", Value: l.Stop, Rounding: measure.Down, Origin: figure.Computed,
			Source: LimitsBasis, Formula: "stop = allowed + 1.96 √2 σ", Working: print(l.Allowed) + " + " + print(l.Guard), From: []string{"diagonals.allowed", "tape.error"}},
		{Key: "racking.quarter", Means: "slide of the far side for the first row of the racking table", Value: s.Racking[0].Slide, Origin: figure.Computed,
			Source: "law of cosines", Formula: "slide = (d1² − d2²) / (4 a)", Working: "diagonals " + print(s.Racking[0].Long) + " and " + print(s.Racking[0].Short),
			From: []string{"frame.length", "frame.width"}},
	}
	figures = append(figures, s.triangleFigures(style)...)
	figures = append(figures, s.boardFigures(style)...)
	figures = append(figures, s.tapeFigures(style)...)
	figures = append(figures, s.precisionFigures(style)...)
	for _, check := range []checked{
		{name: "strings", of: "strings", path: "measured.strings", rectangle: s.Frame, lengths: j.Measured.Strings, Check: s.Strings},
		{name: "frame_measured", of: "beams", path: "measured.frame", rectangle: s.Beams, lengths: j.Measured.FrameSides, Check: s.Sides},
	} {
		check.job, check.style = j, style
		figures = append(figures, check.figures()...)
	}
	return figures
}

func (s *SetOut) triangleFigures(style measure.Style) []figure.Figure {
	source := "3² + 4² = 5²; in metric multiples of 300, 400 and 500 mm"
	from := []string{"frame.length", "frame.width"}
	t := s.Triangle
	part := func(key, means string, v measure.Length) figure.Figure {
		f := figure.Figure{Key: key, Means: means, Origin: figure.Computed, Source: source, From: from, Formula: "the largest whole multiple of 3, 4 and 5 that fits the frame"}
		if v > 0 {
			f.Value = v
			f.Working = fmt.Sprintf("%s by %s fit %s by %s", t.AlongLength.Print(style), t.AlongWidth.Print(style), s.Frame.Length.Print(style), s.Frame.Width.Print(style))
		}
		return f
	}
	return []figure.Figure{
		part("triangle.a", "leg of the largest 3-4-5 triangle along the length", t.AlongLength),
		part("triangle.b", "leg of the largest 3-4-5 triangle across", t.AlongWidth),
		part("triangle.c", "long side of the largest 3-4-5 triangle", t.Across),
	}
}

func (s *SetOut) boardFigures(style measure.Style) []figure.Figure {
	b := s.Boards
	source := trade.BoardClear.Source()
	print := func(l measure.Length) string { return l.Print(style) }
	computed := func(key, means string, value measure.Quantity, formula, working string, from ...string) figure.Figure {
		return figure.Figure{Key: key, Means: means, Value: value, Rounding: measure.Up, Origin: figure.Computed, Formula: formula, Working: working, From: from}
	}
	offset := computed("batter.offset", "batter boards from the frame's faces", b.Offset, "clear distance + what the holes reach beyond the frame",
		print(b.Clear)+" + "+print(b.Offset-b.Clear), trade.BoardClear.Key(), "hole.side", "pier."+s.Frame.Corners[0]+".x")
	offset.Source = source
	return []figure.Figure{
		offset,
		computed("batter.boards", "batter boards", measure.Count(b.Boards), "two at each corner", "2 × 4", "corner.1"),
		computed("batter.stakes", "stakes for the batter boards", measure.Count(b.Stakes), "two for each board", fmt.Sprintf("2 × %d", b.Boards), "batter.boards"),
		computed("string.long", "string from board to board along the length", b.StringLong, "length + 2 × offset", print(s.Frame.Length)+" + 2 × "+print(b.Offset), "frame.length", "batter.offset"),
		computed("string.cross", "string from board to board across", b.StringCross, "width + 2 × offset", print(s.Frame.Width)+" + 2 × "+print(b.Offset), "frame.width", "batter.offset"),
		computed("string.total", "string for all four lines with tails for the knots", b.StringTotal, "2 × (long + cross) + 4 tails",
			fmt.Sprintf("2 × (%s + %s) + 4 × %s", print(b.StringLong), print(b.StringCross), print(b.KnotTail)), "string.long", "string.cross"),
	}
}
