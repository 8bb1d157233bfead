package order

import (
	"fmt"
	"slices"

	"pierbook/calc/measure"
)

// stepUses names what the lines of the order and the joints are for, step by step.
var stepUses = map[string][]string{
	"set-out":      {"set-out"},
	"stone":        {"stone"},
	"blocks":       {"blocks", "straps", "anchors"},
	"posts":        {"coating"},
	"beams":        {"caps", "beams", "strap-nails", "braces", "brace-screws"},
	"ground-cloth": {"cloth"},
	"joists":       {"hangers", "joists", "rims", "blocking"},
	"surface":      {"surface"},
}

// Parts returns what a step takes: pieces of timber as they are cut, hardware,
// and the nails of its own joints, spares counted in.
func (o *Order) Parts(step string) []Part {
	var parts []Part
	switch step {
	case "beams":
		parts = append(parts, o.beams...)
	case "joists":
		parts = append(parts, o.joists...)
	case "posts":
		parts = append(parts, o.posts...)
	case "surface":
		parts = append(parts, o.boards...)
	}
	for _, l := range o.Needed {
		if (l.Group != Timber || l.Part != "") && l.Group != Fasteners && slices.Contains(stepUses[step], l.Part) {
			if l.Key == boardsKey {
				continue // its weight is that of a running foot or metre; the pieces stand above
			}
			part := Part{What: l.What, Count: l.Count, Unit: l.Units(), Each: l.Each}
			if l.Group == Stone {
				part.Each = 0
			}
			parts = append(parts, part)
		}
	}
	var joints []Joint
	for _, row := range o.schedule {
		if slices.Contains(stepUses[step], row.part) {
			joints = append(joints, row)
		}
	}
	for _, rows := range byNail(joints) {
		count := 0
		for _, row := range rows {
			count += row.Count
		}
		parts = append(parts, Part{What: rows[0].Nail.Name(o.style), Count: count + spareOf(count), Unit: fmt.Sprintf("with %d spare", spareOf(count))})
	}
	return parts
}

// boardParts returns the pieces of floor board as one part.
func boardParts(in Input) []Part {
	var longest measure.Length
	count := 0
	for _, b := range in.Frame.Surface.Boards {
		for _, p := range b.Pieces {
			longest = max(longest, p.Long())
			count++
		}
	}
	if count == 0 {
		return nil
	}
	s, style := in.Job.Platform.Surface, in.Job.Style()
	return []Part{{What: fmt.Sprintf("floor board %s × %s, the longest", measure.Exact(s.Thickness).Print(style), measure.Exact(s.BoardWidth).Print(style)), Count: count, Unit: "pieces", Long: &longest,
		Each: s.Density.Of(s.Thickness.Times(s.BoardWidth).Deep(longest))}}
}

// postParts returns the posts as one part: their lengths are on their own sheet.
func postParts(in Input) []Part {
	var longest measure.Length
	for _, l := range in.Posts {
		longest = max(longest, l)
	}
	if longest == 0 {
		return nil
	}
	s := in.Frame.Sections.Post
	return []Part{{What: "post " + s.Size + ", the longest", Count: len(in.Posts), Unit: "pieces", Long: &longest, Each: massOf(in.Job, s, longest)}}
}

// Heaviest returns the heaviest lift of a step, and whether it has one.
func (o *Order) Heaviest(step string) (Part, bool) {
	var heaviest Part
	for _, p := range o.Parts(step) {
		if p.Each > heaviest.Each {
			heaviest = p
		}
	}
	return heaviest, heaviest.Each > 0
}
