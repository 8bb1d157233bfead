package frame

import (
	"fmt"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// blocking puts blocks between the joists under the long joints of panels whose
// edges do not mate: span ratings ask for tongue and groove or blocked long
// edges (APA Form E30V, 2011, p. 37; Wis. Adm. Code SPS 327.31). A joint that
// lies on a rim or on a beam flush with the joists is held already.
func (l *layout) blocking() {
	wish, f := l.job.Platform.Surface, l.frame
	if wish.Kind != "panels" || wish.Edge == "tongue_and_groove" {
		return
	}
	near, thick := f.marks(), f.Sections.Joist.Width
	for _, row := range f.Surface.Rows[min(1, len(f.Surface.Rows)):] {
		if l.held(row.Y-wish.Gap, row.Y) {
			continue
		}
		for i := 1; i < len(near); i++ {
			f.Blocking = append(f.Blocking, Blocking{
				Name: fmt.Sprintf("K%d.%d", row.Number-1, i), Y: row.Y - wish.Gap/2,
				From: near[i-1] + thick, To: near[i],
			})
		}
	}
	if n := len(f.Blocking); n > 0 {
		l.advise("platform.surface.edge", "Square-edged panels want blocking under their long joints: %d blocks, the usual one %s long. Panels with tongue and groove need none.",
			n, l.say(f.WidestBay-thick))
	}
}

// held says whether a joint open from y to to lies on wood that reaches past it
// far enough to hold both edges.
func (l *layout) held(y, to measure.Length) bool {
	f, rim := l.frame, l.rimThickness()
	hold := trade.EdgeBearing.In(l.job.Units)
	on := func(from, end measure.Length) bool { return from+hold <= y && to+hold <= end }
	if on(0, rim) || on(f.Width-rim, f.Width) {
		return true
	}
	if !l.between() {
		return false
	}
	half := f.Sections.Beam.Across() / 2
	for _, line := range f.Lines {
		if on(line.Y-half, line.Y+half) {
			return true
		}
	}
	return false
}
