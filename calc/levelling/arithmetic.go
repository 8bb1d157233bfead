package levelling

import "pierbook/calc/measure"

// Arithmetic holds the three checks that are printed under a level book. They
// prove the sums, not the readings. Only the third covers intermediate sights.
// Everything is taken before the misclosure is shared out.
type Arithmetic struct {
	Backsights, Foresights measure.Length // sums
	Rises, Falls           measure.Length // sums, both positive
	Difference             measure.Length // last less first height, summed over the lines of set-ups
	Intermediate           measure.Length // sum of intermediate sights
	Heights                measure.Length // sum of all heights but the known ones the set-ups start from
	FullLeft, FullRight    measure.Length // ΣIS + ΣFS + Σheights, and Σ instrument × heights taken from it
}

// Agree holds when all three checks come out even, to the nanometre; anything
// less is a mistake in the sums.
//
//	ΣBS − ΣFS = Σrises − Σfalls = last − first
//	ΣIS + ΣFS + Σheights = Σ (instrument height × heights taken from it)
func (a Arithmetic) Agree() bool {
	return a.Backsights-a.Foresights == a.Difference && a.Rises-a.Falls == a.Difference && a.FullLeft == a.FullRight
}

// arithmetic works the three checks. A set-up's foresight is booked last,
// whenever it was read; a set-up from which nothing but its backsight was read
// books nothing.
func (b *Book) arithmetic() Arithmetic {
	var a Arithmetic
	for _, s := range b.SetUps {
		if len(s.Shots) == 0 {
			continue
		}
		a.Backsights += s.Backsight.Reading
		order := s.Booked()
		before := s.Backsight.Reading
		for i, shot := range order {
			a.rise(before - shot.Reading)
			before = shot.Reading
			a.Heights += shot.Height
			a.FullRight += s.Instrument
			if i < len(order)-1 {
				a.Intermediate += shot.Reading
				continue
			}
			a.Foresights += shot.Reading
			a.Difference += shot.Height - s.FromHeight
		}
	}
	a.FullLeft = a.Intermediate + a.Foresights + a.Heights
	return a
}

func (a *Arithmetic) rise(by measure.Length) {
	if by > 0 {
		a.Rises += by
	} else {
		a.Falls -= by
	}
}

// Booked returns the shots in the order of a level book: the foresight last,
// whenever it was read.
func (s SetUp) Booked() []Shot {
	last := len(s.Shots) - 1
	for i, shot := range s.Shots {
		if shot.Foresight {
			last = i
		}
	}
	order := make([]Shot, 0, len(s.Shots))
	order = append(order, s.Shots[:last]...)
	order = append(order, s.Shots[last+1:]...)
	return append(order, s.Shots[last])
}
