package heights

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// waySet is the ways out for posts that are short or do not fit.
func (h *Heights) waySet(style measure.Style) figure.Set {
	set := figure.Set{Name: "ways-out", Key: "way", Fields: []figure.Field{
		{Key: "post", Means: "post of the way out: %", Formula: "one that is short, or does not fit"},
		{Key: "takes", Means: "what the way out takes: %", Formula: "by its kind"},
		{Key: "brings", Means: "what the way out brings along: %", Formula: "posts to cut again, or too short then"},
	}}
	for _, post := range h.Posts {
		for i, w := range post.Ways {
			set.Row(post.Name+"."+strconv.Itoa(i+1), w.Kind, measure.Word(post.Name), measure.Word(h.wayTakes(post, w, style)), measure.Word(w.brings()))
		}
	}
	return set
}

// wayTakes says what one way out takes.
func (h *Heights) wayTakes(post Post, w WayOut, style measure.Style) string {
	length, by := w.Length.Print(style), w.By.Print(style)
	switch {
	case w.Kind == "another pier" && w.Pier == "":
		return "–"
	case w.Kind == "another pier":
		there := h.Posts[slices.IndexFunc(h.Posts, func(post Post) bool { return post.Name == w.Pier })]
		if w.By <= h.terms.Serves {
			return fmt.Sprintf("stand it at %s as it is; cut a new one of %s for %s", w.Pier, length, post.Name)
		}
		return fmt.Sprintf("cut it down to %s for %s; cut a new one of %s for %s", there.Length().Print(style), w.Pier, length, post.Name)
	case w.Kind == "lower floor":
		return "lower the floor by " + by + "; every post is shorter by as much"
	case w.Kind == "new post":
		return "cut a new one of " + length
	case w.Kind == "lower the seat":
		return fmt.Sprintf("take %s of stone out, set the block again; the post is %s then", by, length)
	default:
		return fmt.Sprintf("put %s of stone in, set the block again; the post is %s then", by, length)
	}
}

func (w WayOut) brings() string {
	var parts []string
	if w.Blocked != "" {
		parts = append(parts, "cannot be done: "+w.Blocked)
	}
	if len(w.Trims) > 0 {
		parts = append(parts, "cut again: "+strings.Join(w.Trims, ", "))
	}
	if len(w.TooShort) > 0 {
		parts = append(parts, "too short then: "+strings.Join(w.TooShort, ", "))
	}
	return strings.Join(parts, "; ")
}
