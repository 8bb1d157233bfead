package savings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Figures are the changes that save, the greatest saving first: what to
// write, and what each takes less of. Where something has no price there is no
// money.
func Figures(found []Alternative, style measure.Style) []figure.Figure {
	count := figure.Figure{Key: "savings.count", Means: "changes of the job that would save and pass every check", Value: measure.Count(len(found)), Origin: figure.Computed,
		Formula: "one line or pier under each line more or fewer, sizes up to 6 in smaller, stock lengths not listed: each laid out, cut and checked; nothing once something is built", Working: strconv.Itoa(len(found))}
	figures := []figure.Figure{count}
	for i, a := range found {
		figures = append(figures, a.figures("saving."+strconv.Itoa(i+1), style)...)
	}
	return figures
}

func (a Alternative) figures(key string, style measure.Style) []figure.Figure {
	from := make([]string, len(a.before.lines))
	for i, line := range a.before.lines {
		from[i] = line + ".cost"
	}
	sticks := slices.DeleteFunc(slices.Clone(a.before.lines), func(line string) bool { return !strings.HasPrefix(line, "order.stick.") })
	less := func(suffix, of, formula string, value measure.Quantity, before, after measure.Quantity, from ...string) figure.Figure {
		return figure.Figure{Key: key + suffix, Means: a.Saying + ": " + of + " saved", Value: value, Origin: figure.Computed, Formula: formula + ", as planned less as changed", From: from,
			Working: fmt.Sprintf("%s − %s", before.Print(style), after.Print(style))}
	}
	money := less(".money", "money", "Σ price of sticks, surface, blocks, caps and hangers", nil, a.before.money, a.after.money, from...)
	if money.Value = a.Saving.Money; !a.Saving.Priced {
		money.Value, money.Working = nil, "something has no price"
	}
	return []figure.Figure{
		{Key: key, Means: "a change that would save: " + a.Saying, Value: measure.Word(a.Path + ": " + a.Write), Origin: figure.Computed, Formula: "the job with this changed, laid out, cut and checked anew",
			Working: a.Sentence(style), From: []string{key + ".money", key + ".timber", key + ".sheets", key + ".piers", key + ".worst"}},
		money,
		less(".timber", "timber", "Σ volume of the sticks bought, posts left out", a.Saving.Timber, a.before.timber, a.after.timber, sticks...),
		less(".sheets", "sheets", "sheets bought", measure.Count(a.Saving.Sheets), measure.Count(a.before.sheets), measure.Count(a.after.sheets)),
		less(".piers", "piers", "piers", measure.Count(a.Saving.Piers), measure.Count(a.before.piers), measure.Count(a.after.piers), "frame.piers"),
		{Key: key + ".worst", Means: a.Saying + ": greatest ratio of the checks then", Value: a.Worst, Origin: figure.Computed, Formula: "greatest ratio of demand to capacity of the frame as changed",
			Working: a.Worst.Print(style) + ", every check of the changed frame at most 1"},
	}
}
