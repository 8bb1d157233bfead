package cutting

import (
	"cmp"
	"slices"

	"pierbook/calc/measure"
)

// Setting is one setting of the saw's stop: a length, and all the cuts made at
// it, stick by stick.
type Setting struct {
	Length measure.Length
	Cuts   []SettingCut
}

// SettingCut is one piece made at a setting.
type SettingCut struct {
	Stick int // its number
	Place int // which piece of the stick it is, from 1 at the hook end
	Name  string
}

// Settings returns the settings of the saw, the longest first and equal ones
// together, so that a long piece spoiled can still become a shorter one.
func (r *Result) Settings() []Setting {
	byLength := map[measure.Length]*Setting{}
	var settings []*Setting
	for _, s := range r.Sticks {
		for i, c := range s.Cuts {
			setting := byLength[c.Length]
			if setting == nil {
				setting = &Setting{Length: c.Length}
				byLength[c.Length] = setting
				settings = append(settings, setting)
			}
			setting.Cuts = append(setting.Cuts, SettingCut{Stick: s.Number, Place: i + 1, Name: c.Name})
		}
	}
	slices.SortFunc(settings, func(a, b *Setting) int { return cmp.Compare(b.Length, a.Length) })
	out := make([]Setting, 0, len(settings))
	for _, s := range settings {
		out = append(out, *s)
	}
	return out
}

// Purchase is how many sticks of a length are to be bought.
type Purchase struct {
	Length measure.Length
	Count  int
	Price  int64 // of one, in hundredths, or the length in nanometres
}

// Purchases returns what is to be bought, the shortest first.
func (r *Result) Purchases() []Purchase {
	var buy []Purchase
	for _, s := range r.Sticks {
		if !s.Bought {
			continue
		}
		at := slices.IndexFunc(buy, func(p Purchase) bool { return p.Length == s.Length })
		if at < 0 {
			at = len(buy)
			buy = append(buy, Purchase{Length: s.Length, Price: s.Price})
		}
		buy[at].Count++
	}
	slices.SortFunc(buy, func(a, b Purchase) int { return cmp.Compare(a.Length, b.Length) })
	return buy
}

// UsedShare returns the share of the sticks taken that goes into pieces.
func (r *Result) UsedShare() measure.Percent {
	used, taken := measure.Length(0), measure.Length(0)
	for _, s := range r.Sticks {
		taken += s.Length
		for _, c := range s.Cuts {
			used += c.Length
		}
	}
	if taken == 0 {
		return 0
	}
	return measure.Percent(used.Metres() / taken.Metres())
}
