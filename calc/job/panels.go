package job

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

const ratingPath = "platform.surface.span_rating"

// ratingOf is the span rating that follows from the thickness of a panel, none
// for a thickness that has no published one.
func ratingOf(j *Job) Default {
	panel, known := trade.FindPanel(j.Platform.Surface.Thickness)
	if !known {
		return Default{}
	}
	return same(strconv.Itoa(panel.Ratings[0]), panel.Source)
}

// checkPanels sees that the panels are ones that can be bought for a single
// floor, and that their rating is one of theirs.
func (j *Job) checkPanels(r *reader) {
	const path = "platform.surface.thickness"
	s, style := j.Platform.Surface, j.Style()
	if s.Kind != "panels" || s.Thickness <= 0 || r.spoilt(path) || r.spoilt(ratingPath) {
		return
	}
	thick := measure.Exact(s.Thickness).Print(style)
	panel, known := trade.FindPanel(s.Thickness)
	ratings := trade.RatingsUpTo(s.Thickness)
	if known {
		ratings = panel.Ratings
	}
	choices := choiceOf(ratings)
	switch {
	case trade.TooThin(s.Thickness):
		r.wrong(path, r.at(path), fmt.Sprintf("panels of %s are for no single floor", thick), "take panels of "+measure.Exact(trade.ThinnestPanel()).Print(style)+" or more, or boards")
	case s.SpanRating == 0 && !known:
		r.wrong(ratingPath, r.at(path), fmt.Sprintf("no rating is published for panels of %s", thick), "write the span rating of their stamp: "+choices)
	case !slices.Contains(ratings, s.SpanRating):
		r.wrong(ratingPath, r.at(ratingPath), fmt.Sprintf("no single-floor panel of %s is rated %d", thick, s.SpanRating), "write the rating of the stamp: "+choices+"; or look at the thickness again")
	}
}

func choiceOf(ratings []int) string {
	words := make([]string, len(ratings))
	for i, n := range ratings {
		words[i] = strconv.Itoa(n)
	}
	return strings.Join(words, " or ")
}
