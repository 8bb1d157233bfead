package levelling

import "pierbook/calc/figure"

// Questions are what pages ask of the level book with {when}; b is nil as long as
// nothing was read.
func (b *Book) Questions() []figure.Figure {
	return []figure.Figure{
		figure.Answer("has.readings", "heights were read", b != nil, "the job file has sights"),
		figure.Answer("has.open_book", "the level book does not come back to the bench mark", b != nil && !b.Closed(), "a run of set-ups ends elsewhere", "ground.setups"),
		figure.Answer("has.routes", "points were read from more than one set-up", b != nil && b.Network != nil, "sights beyond those needed", "ground.spare_sights"),
	}
}
