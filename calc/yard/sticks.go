package yard

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// Use says what the pieces are for: "joists, rims".
func (c Cut) Use() string { return strings.Join(c.Uses, ", ") }

// Purchase is so many sticks of one length.
type Purchase struct {
	Length measure.Length
	Count  int
	Price  *measure.Money // of one, nil when not known
}

// Bought counts the sticks to buy by length, in the order of the plan.
func (c Cut) Bought() []Purchase {
	if c.Result == nil {
		return nil
	}
	var list []Purchase
	index := map[measure.Length]int{}
	for _, s := range c.Result.Sticks {
		if !s.Bought {
			continue
		}
		i, seen := index[s.Length]
		if !seen {
			i = len(list)
			index[s.Length] = i
			list = append(list, Purchase{Length: s.Length, Price: c.prices[s.Length]})
		}
		list[i].Count++
	}
	return list
}

// StickName names a stick as it is written on it and on the sheet.
func (c Cut) StickName(s cutting.CutStick) string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%s no. %d", c.Section.Size, s.Number)
}

// Stick returns the stick that gives the piece of a name, nothing when none does.
func (c Cut) Stick(piece string) []cutting.CutStick {
	if c.Result == nil {
		return nil
	}
	for i, s := range c.Result.Sticks {
		if slices.ContainsFunc(s.Cuts, func(cut cutting.Cut) bool { return cut.Name == piece }) {
			return c.Result.Sticks[i : i+1]
		}
	}
	return nil
}

// Alike returns the sticks of the plan in groups that are cut alike and follow
// one another; sticks on hand, which have names, stand alone.
func (c Cut) Alike() [][]cutting.CutStick {
	if c.Result == nil {
		return nil
	}
	var groups [][]cutting.CutStick
	for _, s := range c.Result.Sticks {
		if n := len(groups); n > 0 && s.Name == "" {
			if before := groups[n-1][0]; before.Name == "" && before.Pattern == s.Pattern && before.Length == s.Length {
				groups[n-1] = append(groups[n-1], s)
				continue
			}
		}
		groups = append(groups, []cutting.CutStick{s})
	}
	return groups
}

// StickNames names sticks that are cut alike: "2x8 no. 3 to 15".
func (c Cut) StickNames(like []cutting.CutStick) string {
	name := c.StickName(like[0])
	if len(like) > 1 {
		name += fmt.Sprintf(" to %d", like[len(like)-1].Number)
	}
	return name
}

// Note says what the count of sticks stands on, where that is not the plan itself.
func (c Cut) Note(style measure.Style) string {
	switch {
	case c.Estimate:
		return fmt.Sprintf("no heights yet, so every post is counted at %s, the longest allowed. Read the ground first and this order shrinks.", c.longestPost.Print(style))
	case c.Allowance > 0:
		return fmt.Sprintf("ground at some piers is estimated, so %s more post in all is counted, enough nine times in ten.", c.Allowance.Print(style))
	}
	return ""
}

// Ends returns the area of both ends of every piece.
func (c Cut) Ends() measure.Area {
	count := 0
	for _, piece := range c.Pieces {
		count += piece.Count
	}
	return measure.Area(2*count) * c.Section.Width.Times(c.Section.Depth)
}
