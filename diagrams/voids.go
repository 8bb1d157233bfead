package diagrams

import (
	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// Void is an opening in the floor, by its corner nearest the origin.
type Void struct {
	Name          string
	X, Y          measure.Length
	Length, Width measure.Length // along the beams and across
}

// longestVoidName keeps a long name from taking the floor's room, millimetres.
const longestVoidName = 34

// drawVoids draws openings as technical drawing shows a void: outlined, and
// crossed from corner to corner.
func (v gridView) drawVoids(s *kit.Sheet, voids []Void) {
	for _, o := range voids {
		b := v.voidBox(o)
		s.Rectangle(kit.Outline, kit.White, b)
		s.Lines(kit.Thin,
			kit.Segment{From: kit.Point{X: b.Left, Y: b.Top}, To: kit.Point{X: b.Right, Y: b.Bottom}},
			kit.Segment{From: kit.Point{X: b.Left, Y: b.Bottom}, To: kit.Point{X: b.Right, Y: b.Top}})
	}
}

func (v gridView) voidBox(o Void) kit.Box { return v.box(o.X, o.Y, o.X+o.Length, o.Y+o.Width) }

// voidNotes are the notes beside a floor that name its openings with their size:
// so many lines as its height has room for, the size left out first and then the
// last ones. The table of openings has them all.
func voidNotes(voids []Void, high float64, style measure.Style) [][]string {
	room := int(high / (kit.Pitch(kit.Small) + 0.2))
	var notes [][]string
	for _, o := range voids[:min(len(voids), room)] {
		note := []string{kit.Shorten(o.Name, kit.Small, longestVoidName, true)}
		if 2*len(voids) <= room {
			note = append(note, o.Length.Print(style)+" × "+o.Width.Print(style))
		}
		notes = append(notes, note)
	}
	return notes
}

// Room between the floor, or what stands right of it, and the notes beside it.
const leaderRoom = 9

// voidRoom is how much wider a drawing is for the notes on its openings.
func voidRoom(voids []Void, style measure.Style) float64 {
	wide := 0.0
	for _, note := range voidNotes(voids, leastPlan, style) {
		for _, words := range note {
			wide = max(wide, kit.Width(words, kit.Small, true))
		}
	}
	for _, o := range voids {
		wide = max(wide, kit.Width(o.Length.Print(style)+" × "+o.Width.Print(style), kit.Small, true))
	}
	if wide == 0 {
		return 0
	}
	return wide + leaderRoom
}

// nameVoids writes the notes so far right of the floor.
func (v gridView) nameVoids(s *kit.Sheet, voids []Void, right float64, style measure.Style) {
	var notes []kit.Note
	for i, lines := range voidNotes(voids, v.frame.Bottom-v.frame.Top, style) {
		notes = append(notes, kit.Note{Tip: v.voidBox(voids[i]).Centre(), Lines: lines, Bold: true, Dot: true})
	}
	s.Notes(v.frame.Right+right+leaderRoom-1, false, v.frame.Top, v.frame.Bottom, notes...)
}

// besideVoids returns the largest part of a box on one side of the openings in
// it, for words about the box.
func (v gridView) besideVoids(b kit.Box, voids []Void) kit.Box {
	for _, o := range voids {
		void := v.voidBox(o)
		if !void.Meets(b) {
			continue
		}
		left, right, above, below := b, b, b, b
		left.Right, right.Left = min(b.Right, void.Left), max(b.Left, void.Right)
		above.Bottom, below.Top = min(b.Bottom, void.Top), max(b.Top, void.Bottom)
		best := left
		for _, part := range []kit.Box{right, above, below} {
			if sizeOf(part) > sizeOf(best) {
				best = part
			}
		}
		b = best
	}
	return b
}

func sizeOf(b kit.Box) float64 { return (b.Right - b.Left) * (b.Bottom - b.Top) }

// withVoids says in words how many openings a drawing shows.
func withVoids(voids []Void) string {
	if len(voids) == 0 {
		return ""
	}
	return " Outlined and crossed: " + counted(len(voids), "opening", "openings") + " in the floor, by name."
}
