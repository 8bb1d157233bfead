package measure

// Addend is a length that readings of the rod are added to on paper. It prints as
// the rod reads, with a third decimal of feet, so that the sum is good to the
// last mark; where the rod reads in the system of the style it prints as lengths
// do.
type Addend Length

// Base returns a in millimetres.
func (a Addend) Base() (float64, string) { return Length(a).Base() }

// Print returns a in the units of the style's rod.
func (a Addend) Print(style Style) string {
	switch {
	case style.Rod == TenthsRod:
		return decimals(Length(a).Inches()/12, 3, style.System) + noBreak + "ft"
	case style.Rod == RodBySystem, (style.Rod == MillimetreRod) == (style.System == Metric):
		return Length(a).Print(style)
	}
	return Reading(a).Print(style)
}

// Offset is an Addend that tells what to do with it: how much is added to a reading,
// or taken away. On paper a minus after a minus is read wrong.
type Offset Length

// Base returns o in millimetres.
func (o Offset) Base() (float64, string) { return Length(o).Base() }

// Print returns what to do and a number without a sign.
func (o Offset) Print(style Style) string {
	if o < 0 {
		return "take" + noBreak + "away" + noBreak + Addend(-o).Print(style)
	}
	return "add" + noBreak + Addend(o).Print(style)
}

// Tipped is a volume of loose stone as it is counted while it is used: in cubic
// feet, which a bucket measures, or in cubic metres, all along.
type Tipped Volume

// Base returns t in cubic metres.
func (t Tipped) Base() (float64, string) { return Volume(t).Base() }

// Print returns t to a tenth of a cubic foot, or as a [Volume] in cubic metres.
func (t Tipped) Print(style Style) string {
	if style.System == Metric {
		return Volume(t).Print(style)
	}
	return decimals(float64(Volume(t)/CubicFoot), 1, style.System) + noBreak + "ft³"
}
