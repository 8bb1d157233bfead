package frame

import (
	"fmt"
	"strconv"

	"pierbook/calc/measure"
)

func (l *ledger) surface() {
	wish := l.job.Platform.Surface
	l.given("surface.kind", "platform.surface.kind", "what the surface is made of", measure.Word(wish.Kind))
	l.given("surface.thickness", "platform.surface.thickness", "thickness of the surface", measure.Exact(wish.Thickness))
	l.given("surface.gap", "platform.surface.gap", "gap between the pieces of the surface", measure.Exact(wish.Gap))
	if wish.Kind == "boards" {
		l.boards()
	} else {
		l.panels()
	}
	l.blocks()
}

func (l *ledger) panels() {
	wish, s := l.job.Platform.Surface, l.frame.Surface
	l.given("panel.face_length", "platform.surface.face.length", "length of a sheet along its strength axis", wish.FaceLength)
	l.given("panel.face_width", "platform.surface.face.width", "width of a sheet without the tongue", wish.FaceWidth)
	l.computed("panel.count", "panels as laid", measure.Count(len(s.Panels)), "all rows together", "", "surface.rows")
	l.computed("surface.rows", "rows of panels", measure.Count(len(s.Rows)), "width / (face width + gap), rounded up, the last without its gap",
		fmt.Sprintf("(%s + %s) / (%s + %s), rounded up", l.say(l.frame.Width), l.say(wish.Gap), l.say(wish.FaceWidth), l.say(wish.Gap)),
		"frame.width", "panel.face_width", "surface.gap")
	l.computed("surface.sheets", "sheets to buy, before spares", measure.Count(s.Sheets),
		"panels cut longest first, each from the offcut that it fills best", "", "surface.rows", "panel.face_length", "frame.length")
	last := s.Rows[len(s.Rows)-1]
	l.computed("surface.last_row", "width of the last row", last.Width, "width − (rows − 1) (face width + gap), at most the face width",
		fmt.Sprintf("%s − %d × (%s + %s)", l.say(l.frame.Width), len(s.Rows)-1, l.say(wish.FaceWidth), l.say(wish.Gap)),
		"frame.width", "panel.face_width", "surface.gap", "surface.rows")
	for _, row := range s.Rows {
		key := "row." + strconv.Itoa(row.Number)
		l.computed(key+".y", fmt.Sprintf("near edge of row %d from the frame side next to A", row.Number), row.Y, "(n − 1) (face width + gap)",
			fmt.Sprintf("%d × (%s + %s)", row.Number-1, l.say(wish.FaceWidth), l.say(wish.Gap)), "panel.face_width", "surface.gap")
	}
	l.missing("board.width", "width of a board", "the surface is of panels")
	l.missing("board.count", "boards side by side", "the surface is of panels")
	l.missing("board.pieces", "pieces of board", "the surface is of panels")
}

func (l *ledger) boards() {
	wish, boards := l.job.Platform.Surface, l.frame.Surface.Boards
	l.given("board.width", "platform.surface.width", "width of a board", wish.BoardWidth)
	l.computed("board.count", "boards side by side", measure.Count(len(boards)), "(width + gap) / (board + gap), rounded up",
		fmt.Sprintf("(%s + %s) / (%s + %s), rounded up", l.say(l.frame.Width), l.say(wish.Gap), l.say(wish.BoardWidth), l.say(wish.Gap)),
		"frame.width", "board.width", "surface.gap")
	pieces := 0
	for _, b := range boards {
		pieces += len(b.Pieces)
	}
	l.computed("board.pieces", "pieces of board", measure.Count(pieces), "the fewest that meet over joists, with one more in every second board where the stagger needs it", "", "board.count", "frame.length")
	l.computed("surface.rows", "runs of boards", measure.Count(len(boards)), "boards side by side", "", "board.count")
	l.computed("surface.last_row", "width of the last board", boards[len(boards)-1].Width,
		"width less the others and their gaps; under half a board it shares the narrowing with the first", "", "frame.width", "board.width", "surface.gap")
	l.missing("surface.sheets", "sheets to buy, before spares", "the surface is of boards")
	l.missing("panel.count", "panels as laid", "the surface is of boards")
	l.missing("panel.face_length", "length of a sheet along its strength axis", "the surface is of boards")
	l.missing("panel.face_width", "width of a sheet without the tongue", "the surface is of boards")
}

func (l *ledger) blocks() {
	f, under := l.frame, len(l.frame.Blocking)
	for _, o := range f.Openings {
		under -= len(o.Blocks)
	}
	formula, from := "none: the long edges of the surface carry one another", []string{"surface.rows", "joist.positions"}
	if under > 0 {
		formula = "one in every bay under every long joint of square-edged panels"
	}
	if under < len(f.Blocking) {
		formula, from = formula+"; and those at openings", append(from, "openings.blocks")
	}
	l.computed("blocking.count", "blocks between joists", measure.Count(len(f.Blocking)), formula, "", from...)
	l.source("APA Form E30V (2011), p. 37: tongue and groove or blocked long edges")
	if under == 0 {
		l.missing("blocking.length", "length of the usual block", formula)
		return
	}
	l.computed("blocking.length", "length of the usual block", f.WidestBay-f.Sections.Joist.Width, "spacing − thickness",
		fmt.Sprintf("%s − %s", l.say(f.WidestBay), l.say(f.Sections.Joist.Width)), "joist.widest", "joist.section")
}
