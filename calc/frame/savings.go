package frame

import (
	"fmt"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// givenUp is how much smaller a platform may become for the sake of a saving.
func (l *layout) givenUp() measure.Length { return trade.GivenUp.In(l.job.Units) }

// savings looks at sizes a little smaller than the one asked for and says what
// they would save. Nothing is changed.
func (l *layout) savings() {
	switch {
	case len(l.frame.Surface.Panels) > 0:
		l.saveRow()
		l.savePanels()
	case len(l.frame.Surface.Boards) > 0:
		l.saveBoard()
	}
	l.saveJoists()
	l.saveSplices()
}

// saveRow looks for the width at which the last row is a whole one:
//
//	width = rows × face width + (rows − 1) gap
func (l *layout) saveRow() {
	rows := l.frame.Surface.Rows
	wish := l.job.Platform.Surface
	width := measure.Length(len(rows)-1)*(wish.FaceWidth+wish.Gap) - wish.Gap
	if !rows[len(rows)-1].Ripped || len(rows) == 1 || l.frame.Width-width > l.givenUp() {
		return
	}
	l.advise("platform.width", "A width of %s would save a ripped row%s.", l.sayDown(width),
		l.sheetsSaved(l.frame.Length, width, l.frame.marks()))
}

// savePanels looks for the length at which whole panels end with the frame.
func (l *layout) savePanels() {
	wish, f := l.job.Platform.Surface, l.frame
	pitch := wish.FaceLength + wish.Gap
	whole := (f.Length + wish.Gap) / pitch
	length := whole*pitch - wish.Gap
	if whole == 0 || length == f.Length || f.Length-length > l.givenUp() {
		return
	}
	near := joistMarks(length, f.Sections.Joist.Width, l.job.Frame.Joists.Spacing)
	if saved := l.sheetsSaved(length, f.Width, near); saved != "" {
		l.advise("platform.length", "A length of %s would save a row of short ends%s.", l.sayDown(length), saved)
	}
}

// sheetsSaved says how many sheets a floor of another size saves, nothing when none.
func (l *layout) sheetsSaved(length, width measure.Length, near []measure.Length) string {
	c, ok := l.floorOf(length, width, near).best()
	if !ok {
		return ""
	}
	switch saved := l.frame.Surface.Sheets - c.sheets; {
	case saved == 1:
		return " and a sheet"
	case saved > 1:
		return fmt.Sprintf(" and %d sheets", saved)
	}
	return ""
}

// saveBoard looks for the width at which no board is ripped.
func (l *layout) saveBoard() {
	boards, wish := l.frame.Surface.Boards, l.job.Platform.Surface
	if len(boards) < 2 || !boards[len(boards)-1].Ripped {
		return
	}
	width := measure.Length(len(boards)-1)*(wish.BoardWidth+wish.Gap) - wish.Gap
	if l.frame.Width-width > l.givenUp() {
		return
	}
	l.advise("platform.width", "A width of %s would save ripping a board from end to end.", l.sayDown(width))
}

// saveJoists looks for the width at which every joist comes from the next
// shorter stick. Only lengths that the yard lists count.
func (l *layout) saveJoists() {
	stock, known := l.stock(l.frame.Sections.Joist)
	if !known || l.between() {
		return
	}
	joist := l.frame.longestJoist()
	for i := len(stock) - 2; i >= 0; i-- {
		over := joist - stock[i]
		if over <= 0 || stock[i+1] < joist || over > l.givenUp() {
			continue
		}
		l.advise("platform.width", "A width of %s would let every joist be cut from %s sticks instead of %s.",
			l.sayDown(l.frame.Width-over), l.say(stock[i]), l.say(stock[i+1]))
	}
}

// saveSplices looks for the length at which beams need no joint.
func (l *layout) saveSplices() {
	beams := l.job.Frame.Beams
	l.saveJoint("beam", l.frame.Sections.Beam, l.frame.Length-2*beams.SetBack)
	if l.hasRims() && l.frame.Sections.Rim.Size != l.frame.Sections.Beam.Size {
		l.saveJoint("rim", l.frame.Sections.Rim, l.frame.Length)
	}
}

func (l *layout) saveJoint(what string, section job.Section, long measure.Length) {
	stock, known := l.stock(section)
	over := long - stock[len(stock)-1]
	if !known || over <= 0 || over > l.givenUp() {
		return
	}
	l.advise("platform.length", "A length of %s would make every %s one piece.", l.sayDown(l.frame.Length-over), what)
}
