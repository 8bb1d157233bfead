package order

import (
	"fmt"
	"math"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Hold is what the checks want held at so many piers. What holds it, and how
// strong that is, is designed by others.
type Hold struct {
	Joint     string // "block to ground"
	ToGround  bool
	Piers     int
	Up, Level measure.Force // the greatest of all these piers
	From      []string      // keys of the figures it comes from
}

// Braces are wanted both ways at posts taller than the limit.
type Braces struct {
	Posts   int
	Tallest measure.Length
	Above   measure.Length // the limit
	From    []string
}

// Weights of what others design, kilograms: estimates, the maker's list rules.
const (
	tieMass    = 1.0 * measure.Pound // two straps or angles with their nails
	anchorMass = 7 * measure.Pound   // a screwed-in anchor with its strap
)

const byOthers = "the checks want it; what it is and what it carries is for whoever designs it to say"

// holdLines list the ties and anchors that the checks want, one set a pier. A
// joint that is only pushed sideways is the post cap's and the seat's: see
// [capNote].
func holdLines(in Input) []Line {
	var lines []Line
	style := in.Job.Style()
	for _, h := range in.Holds {
		key, what, part, mass := "order.tie", "tie", "ties", tieMass
		switch {
		case h.ToGround:
			key, what, part, mass = "order.anchor", "ground anchor", "anchors", anchorMass
		case h.Up == 0:
			continue
		}
		lines = append(lines, Line{Key: key, Group: Hardware, What: what + ", as others design it, galvanised", Use: h.Joint,
			Count: h.Piers, Unit: "sets", Each: mass, Price: price(in.Job, strings.TrimSuffix(part, "s")), Part: part, Note: fmt.Sprintf("up to %s up and %s sideways each; have them designed before they are bought.", h.Up.Print(style), h.Level.Print(style)),
			Source: byOthers, Formula: "a set at each pier that wants one", Working: fmt.Sprintf("%d", h.Piers), From: h.From, Weighed: estimated})
	}
	return lines
}

// capNote says what caps and seats have to hold sideways where no tie is wanted.
func capNote(in Input) string {
	for _, h := range in.Holds {
		if !h.ToGround && h.Up == 0 && h.Level > 0 {
			return fmt.Sprintf("caps, and seats with their posts, have to hold %s sideways each; read it off the makers' lists.", h.Level.Print(in.Job.Style()))
		}
	}
	return ""
}

// braceLines list two braces at 45° for each tall post, one along the beam and
// one across it, each as long as the whole post asks for.
//
//	length = √2 × tallest post, up to the next foot or 300 mm
func braceLines(in Input) []Line {
	b, style := in.Braces, in.Job.Style()
	if b.Posts == 0 {
		return nil
	}
	section, size, step := job.Section{Width: measure.Inch * 3 / 2, Depth: measure.Inch * 7 / 2}, "2x4", measure.Foot
	if in.Job.Units == measure.Metric {
		section, size, step = job.Section{Width: 38 * measure.Millimetre, Depth: 89 * measure.Millimetre}, "38x89 mm", 300*measure.Millimetre
	}
	long := b.Tallest.Scale(math.Sqrt2).RoundUpTo(step)
	return []Line{{Key: "order.brace", Group: Timber, What: fmt.Sprintf("brace %s, %s", size, long.Print(style)), Use: "posts over " + b.Above.Print(style) + ", two each, along and across", Count: 2 * b.Posts, Unit: "pieces", Each: massOf(in.Job, section, long),
		Price: price(in.Job, "brace"), Long: &long, Part: "braces", Note: "size and fastening of the braces are not worked out here; have them designed before they are bought.",
		Source: byOthers + "; two a post at 45° is common practice, no source", Formula: "2 × posts above the limit", Working: fmt.Sprintf("2 × %d, each √2 × %s, rounded up", b.Posts, b.Tallest.Print(style)), From: b.From,
		Weighed: fmt.Sprintf("%s × %s × %s at the density of the timber", section.Width.Print(style), section.Depth.Print(style), long.Print(style))}}
}
