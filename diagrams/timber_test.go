package diagrams

import "pierbook/calc/measure"

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
	return p
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
	return b
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
