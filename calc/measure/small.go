package measure

// Small is a length that may be less than the finest printed mark and is not
// nothing: a predicted error, an expected move. Below the mark it prints as
// "under 1/16″" or "under 1 mm", never as 0, and else to the next mark up, the
// careful way for an error.
type Small Length

// Base returns the length in mm.
func (s Small) Base() (float64, string) { return Length(s).Base() }

// Print returns the length, or under which mark it lies.
func (s Small) Print(style Style) string {
	mark := style.mark()
	if style.System == Metric {
		mark = Millimetre
	}
	if s != 0 && Length(s).Abs() < mark {
		style.Rounding = Nearest
		return "under" + noBreak + mark.Print(style)
	}
	style.Rounding = Up
	return Length(s).Print(style)
}
