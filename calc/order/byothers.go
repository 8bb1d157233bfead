package order

import (
	"fmt"
	"math"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Hold is what the checks want held at so many piers: by cap and strap, or by
// anchors in the ground that others design.
type Hold struct {
	Joint     string // "block to ground"
	ToGround  bool
	Piers     int
	Up, Level measure.Force // the greatest of all these piers
	At        string        // the pier with the greatest lift
	From      []string      // keys of the figures it comes from
}

// Straps hold the posts to their blocks, one under each block.
type Straps struct {
	Nails  int  // in each end
	ToBeam bool // as many again in the beam
}

// Braces are put both ways on posts taller than the limit.
type Braces struct {
	Posts   int
	Screws  int // in each end
	Tallest measure.Length
	Above   measure.Length // the limit
	From    []string
}

const (
	anchorMass = 7 * measure.Pound     // a screwed-in anchor with its strap: an estimate, the maker's list rules
	strapMass  = 0.155 * measure.Pound // a foot of 1 1/4 in × 20 gauge steel: 1.25 × 0.036 × 12 in at 0.2836 lb/in3
	nailPitch  = 3 * measure.Inch / 4  // of the nails in a strap: common practice, no source
)

const byOthers = "the checks want it; what it is and what it carries is for whoever designs it to say"

// holdLines list the ground anchors that the checks want, a set each pier, with the
// greatest force of one.
func holdLines(in Input) []Line {
	style := in.Job.Style()
	for _, h := range in.Holds {
		if !h.ToGround {
			continue
		}
		return []Line{{Key: "order.anchor", Group: Hardware, What: "ground anchor, as others design it, galvanised", Use: h.Joint, Count: h.Piers, Unit: "sets", Each: anchorMass, Price: price(in.Job, "anchor"), Part: "anchors",
			Note:   fmt.Sprintf("up to %s up, at %s, and %s sideways; have them designed before they are bought.", h.Up.Print(style), h.At, h.Level.Print(style)),
			Source: byOthers, Formula: "a set at each pier that wants one", Working: fmt.Sprintf("%d", h.Piers), From: h.From, Weighed: estimated}}
	}
	return nil
}

// strapLines list the straps: each goes under its block and up two faces of the post,
// or on up to the beam past the cap.
//
//	length = base + 2·√(seat² + ((base − post)/2)²) + 2·(nails + 1)·3/4 in, and twice post and cap where it runs to the beam
func strapLines(in Input) []Line {
	if in.Straps.Nails == 0 {
		return nil
	}
	j, style, post := in.Job, in.Job.Style(), in.Frame.Sections.Post
	slope := measure.Hypot(j.Block.SeatHeight, (j.Block.Base-min(post.Width, post.Depth))/2)
	long := j.Block.Base + 2*slope + 2*measure.Length(in.Straps.Nails+1)*nailPitch
	use := "under each block, up two faces of its post"
	if in.Straps.ToBeam {
		tallest := measure.Length(0)
		for _, p := range in.Posts {
			tallest = max(tallest, p)
		}
		long += 2 * (tallest + j.Frame.Posts.Cap)
		use = "under each block, up two faces of its post to the beam"
	}
	step := measure.Inch
	if j.Units == measure.Metric {
		step = 25 * measure.Millimetre
	}
	long = long.RoundUpTo(step)
	return []Line{{Key: "order.strap", Group: Hardware, What: "steel strap 1 1/4 in × 20 gauge, galvanised, " + long.Print(style), Use: use, Count: len(in.Frame.Piers), Unit: "pieces", Each: strapMass * measure.Mass(long.Feet()), Price: price(j, "strap"), Part: "straps",
		Source: "one for each block; size and grade as the frame manual of the American Wood Council has straps", Formula: "one for each block", Working: fmt.Sprintf("%d", len(in.Frame.Piers)), From: []string{"frame.piers"}, Weighed: "width × thickness × length at the density of steel"}}
}

// capNote says what caps and seats have to hold sideways where no tie is wanted.
func capNote(in Input) string {
	for _, h := range in.Holds {
		if !h.ToGround && h.Level > 0 {
			return fmt.Sprintf("caps, and seats with their posts, have to hold up to %s sideways; read it off the makers' lists.", h.Level.Print(in.Job.Style()))
		}
	}
	return ""
}

// braceLines list two knee braces at 45° for each tall post, one along the beam and
// one across it.
//
//	length = √2 × 3/4 × tallest post and its width, up to the next foot or 300 mm
func braceLines(in Input) []Line {
	b, style := in.Braces, in.Job.Style()
	if b.Posts == 0 {
		return nil
	}
	section, size, step := job.Section{Width: measure.Inch * 3 / 2, Depth: measure.Inch * 7 / 2}, "2x4", measure.Foot
	if in.Job.Units == measure.Metric {
		section, size, step = job.Section{Width: 38 * measure.Millimetre, Depth: 89 * measure.Millimetre}, "38x89 mm", 300*measure.Millimetre
	}
	long := (b.Tallest.Scale(math.Sqrt2*3/4) + in.Frame.Sections.Post.Width).RoundUpTo(step)
	return []Line{{Key: "order.brace", Group: Timber, What: fmt.Sprintf("knee brace %s, %s", size, long.Print(style)), Use: "posts over " + b.Above.Print(style) + ", two each, along and across", Count: 2 * b.Posts, Unit: "pieces", Each: massOf(in.Job, section, long),
		Price: price(in.Job, "brace"), Long: &long, Part: "braces", Source: "sized by the check of bracing at each pier", Formula: "2 × posts above the limit", Working: fmt.Sprintf("2 × %d, each √2 × 3/4 × %s and the post's width, rounded up", b.Posts, b.Tallest.Print(style)), From: b.From,
		Weighed: fmt.Sprintf("%s × %s × %s at the density of the timber", section.Width.Print(style), section.Depth.Print(style), long.Print(style))}}
}
