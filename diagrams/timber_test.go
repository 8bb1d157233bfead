package diagrams

import (
	"strconv"

	"pierbook/calc/measure"
)

func samplePierSection(j site) PierSection {
	return PierSection{
		Pier: "A1", Known: !j.planned, Dig: 8*in + in/16, Stone: 6 * in, PostLong: j.words1(5*in+7*in/16, 24*in), Cap: in / 16,
		Post: 3*in + in/2, Beam: 3*in + in/2, BeamDepth: 5*in + in/2, SeatHeight: 5 * in, Base: 12 * in, SeatWidth: 3*in + in/2, Hole: 20 * in, Beside: "stone",
	}
}

func (j site) words1(short, long measure.Length) measure.Length {
	if j.longName {
		return long
	}
	return short
}

func sampleJoistMarks(j site) JoistMarks {
	m := JoistMarks{On: "each rim", Length: j.long}
	for i, x := range j.joists() {
		m.Joists = append(m.Joists, JoistMark{Number: i + 1, Near: x - 3*in/4})
	}
	last := &m.Joists[len(m.Joists)-1]
	last.Near, last.Before = j.long-3*in/2, false
	return m
}

func samplePanels(j site) Panels {
	p := Panels{Length: j.long, Width: j.wide, LinesGoLeft: j.left, Joists: j.joists(), Gap: in / 8, Note: "tongue away from line A"}
	for row := 0; measure.Length(row)*(48*in) < j.wide; row++ {
		y := measure.Length(row) * 48 * in
		width := min(47*in+in/2, j.wide-y)
		x, k := measure.Length(0), 1
		for x < j.long {
			long := min(96*in, j.long-x)
			if row%2 == 1 && x == 0 {
				long = min(48*in, j.long)
			}
			p.Panels = append(p.Panels, PanelPiece{
				Name: number(row+1) + "." + number(k), X: x, Y: y, Length: long, Width: width,
				Cut: long < 96*in || width < 47*in, FromOffcut: long < 50*in,
			})
			x, k = x+long, k+1
		}
	}
	p.Openings = sampleVoids(j)
	return p
}

// sampleVoids are a hatch in the middle of the floor and a sleeve by its far end.
func sampleVoids(j site) []Void {
	return []Void{
		{Name: j.words("hatch", "hatch_over_the_cellar_rm"), X: j.long / 3, Y: j.wide / 3, Length: 24 * in, Width: min(20*in, j.wide/2)},
		{Name: "sleeve", X: j.long - 12*in, Y: j.wide / 2, Length: 4 * in, Width: 4 * in},
	}
}

func sampleNailing(j site) Nailing {
	return Nailing{
		Fastener:     j.words("ring-shank nail 2 1/2″", "hot-dipped galvanized ring-shank flooring nail, 2 1/2″ × 0.131″"),
		EdgeDistance: 3 * in / 8, Edge: 6 * in, Field: 12 * in, Spacing: 16 * in, Joist: 3 * in / 2, Gap: in / 8,
	}
}

func sampleBoards(j site) Boards {
	b := Boards{Length: j.long, Width: j.wide, LinesGoLeft: j.left, Joists: j.joists(), Gap: 5 * mm}
	for y := measure.Length(0); y < j.wide; y += 125 * mm {
		run := BoardRun{Y: y, Width: min(120*mm, j.wide-y), Ends: []measure.Length{j.long}}
		run.Ripped = run.Width < 120*mm
		if len(b.Boards)%2 == 1 && j.long > 48*in {
			run.Ends = []measure.Length{48 * in, j.long}
		}
		b.Boards = append(b.Boards, run)
	}
	b.Openings = sampleVoids(j)
	return b
}

func sampleSheetCuts(j site) SheetCuts {
	c := SheetCuts{Name: "plywood", Part: 1, Length: 8 * ft, Width: 4 * ft}
	strips := CutSheet{Name: j.words("plywood no. 1 to 3", "plywood for skirts, the one that was kept dry in the barn, no. 1 to 3")}
	for i := range 3 {
		strips.Parts = append(strips.Parts, CutPart{Label: j.words("skirt", "skirt of the long side that faces the lane"), Y: (14*in + in/8).Part(i, 1), Length: 8 * ft, Width: 14 * in})
	}
	small := CutSheet{Name: "plywood no. 4"}
	for i := range 9 {
		small.Parts = append(small.Parts, CutPart{Label: "gusset " + strconv.Itoa(i+1), X: (10 * in).Part(i, 1), Length: 9*in + 7*in/8, Width: 5*in + 1*in/2})
	}
	small.Parts = append(small.Parts, CutPart{Label: "tall", Y: 6 * in, Length: 8 * in, Width: 42 * in}, CutPart{Label: "sliver", X: 20 * in, Y: 6 * in, Length: in / 2, Width: 20 * in})
	c.Sheets = []CutSheet{strips, small, {Name: "plywood no. 5", Parts: []CutPart{{Label: "hatch", Length: 30 * in, Width: 24 * in}}}}
	return c
}

func sampleSticks(j site) Sticks {
	posts := Stick{Name: "stick 1", Stock: 96 * in, Kerf: in / 8, Trim: in / 2}
	for i, p := range j.grid().Piers {
		long := 4*in + in.Part(i*7, 16)
		if posts.Offcut() < long+in {
			break
		}
		posts.Pieces = append(posts.Pieces, StickPiece{p.Name, long})
	}
	return Sticks{Section: "4x4", Part: 1, Sticks: []Stick{
		posts,
		{Name: "sticks 2 to 4", Stock: 12 * ft, Kerf: in / 8, Pieces: []StickPiece{{"B1, B2", 22*in + 3*in/8}, {"B3", 20 * in}, {j.words("C1", "rim of side C, second piece"), 64 * in}}},
		{Name: "stick 5", Stock: 16 * ft, Kerf: in / 8, Pieces: []StickPiece{{"J1", 11*ft + 9*in}, {"J2", 4 * ft}}},
		{Name: "stick 6", Stock: 8 * ft, Kerf: in / 8, Pieces: []StickPiece{{"J3", 8 * ft}}},
	}}
}
