package diagrams

import "pierbook/calc/measure"

func sampleContours(j site) Contours {
	c := Contours{Grid: j.grid(), Interval: 2 * in}
	if j.planned {
		return c
	}
	if j.style.System == measure.Metric {
		c.Interval = 50 * mm
	}
	f := Field{X0: -3 * ft, Y0: -3 * ft, X1: j.long + 3*ft, Y1: j.wide + 3*ft}
	const n = 24
	for r := range n + 1 {
		var row []measure.Length
		for k := range n + 1 {
			row = append(row, j.ground(f.X0+(f.X1-f.X0).Part(k, n), f.Y0+(f.Y1-f.Y0).Part(r, n)))
		}
		f.Heights = append(f.Heights, row)
	}
	c.Field = f
	for i, p := range c.Piers {
		c.Spots = append(c.Spots, GroundSpot{p.Name, p.X, p.Y, j.ground(p.X, p.Y), i%3 != 1})
	}
	c.Spots = append(c.Spots, GroundSpot{"E1", 3*ft + 6*in, -2 * ft, j.ground(3*ft+6*in, -2*ft), true})
	return c
}

func sampleHeightCurve(j site) HeightCurve {
	low := 14*in + 3*in/16
	h := HeightCurve{Lowest: low, Chosen: low + in/2, Breaks: []measure.Length{low + 2*in, low + 2*in + in/8, low + 5*in}}
	if j.longName {
		h.Chosen = low
	}
	if j.planned {
		return HeightCurve{}
	}
	dig, stone, post := HeightSeries{Name: "dig"}, HeightSeries{Name: "stone"}, HeightSeries{Name: "posts"}
	for i := range 20 {
		floor := low + in.Part(i, 2)
		over := float64(i) / 2
		dig.Points = append(dig.Points, HeightPoint{floor, measure.Volume(1.2 - 0.05*min(over, 4))})
		stone.Points = append(stone.Points, HeightPoint{floor, measure.Volume(0.8)})
		post.Points = append(post.Points, HeightPoint{floor, 9*ft + (15*in).Part(i, 2)})
	}
	h.Series = []HeightSeries{dig, stone, post}
	return h
}

func sampleRacking(j site) Racking {
	names := sampleRectangles(j).Frame.Corners
	d := measure.Hypot(j.long, j.wide)
	r := Racking{Of: "beams", FarLine: names[3][:1], Corners: names, LinesGoLeft: j.left, Length: j.long, Width: j.wide, First: d + in/2, Second: d - in/2, Slide: 5 * in / 8, Measured: !j.planned}
	if j.longName {
		r.First, r.Second = r.Second, r.First
	}
	if j.name == "small" {
		r.Second = r.First
	}
	return r
}

// sampleStringRacking is measured where the beams are not, so that each is
// looked at both ways.
func sampleStringRacking(j site) Racking {
	r := sampleRacking(j)
	r.Of, r.Measured = "strings", j.planned
	r.Slide, r.FarBoard = r.Slide.Abs(), 2*r.Slide
	return r
}

func sampleSquaring(j site) Squaring {
	unit := min(j.long/4, j.wide/3)
	return Squaring{Frame: sampleRectangles(j).Frame, LinesGoLeft: j.left, AlongLength: 4 * unit, AlongWidth: 3 * unit, Across: 5 * unit}
}

func sampleMoves(j site) Moves {
	n := sampleRectangles(j).Frame.Corners
	return Moves{Of: "strings", LinesGoLeft: j.left, Length: j.long, Width: j.wide, Corners: [4]CornerMove{
		{Name: n[0], Held: true},
		{Name: n[1], Along: -3 * in / 16, Forward: in/2 + in/16},
		{Name: n[2], Along: 1*in + 3*in/8, Forward: -3 * in / 16},
		{Name: n[3], Stays: true, Along: in / 16},
	}}
}

func sampleAsBuilt(j site) AsBuilt {
	a := AsBuilt{Grid: j.grid(), Accept: in / 8}
	for i, p := range a.Piers {
		a.Spots = append(a.Spots, FinishedSpot{p.X, p.Y, !j.planned, in.Part((i*5)%7-3, 16)})
	}
	return a
}

func sampleWeekend(j site) Weekend {
	w := Weekend{Days: []WorkDay{{"Saturday 15 May 2027", 8}, {"Sunday 16 May 2027", 8}}}
	if j.longName {
		w.Days = append(w.Days, WorkDay{"Monday 17 May 2027", 6}, WorkDay{"Tuesday 18 May 2027", 6})
	}
	names := []string{"set out and square", "level survey", "choose the height", "mark the piers", "dig", j.words("stone and tamp", "stone in layers and tamping, every layer damp"),
		"blocks", "posts", "caps and beams", "square again", "ground cloth", "joists", "surface", "final check and hand-over"}
	at := 0.0
	for i, name := range names {
		day := int(at / 8)
		w.Steps = append(w.Steps, WorkStep{name, day, measure.Hours(at - float64(day)*8), 0.7, 1.1 + measure.Hours(i%3)/2, i%3 == 0, i%4 == 3})
		at += 1.1
	}
	return w
}

func sampleFall(j site) Fall {
	floor := j.floor()
	f := Fall{Side: "side A", Length: j.long, LeftName: "A1", RightName: "A5", Floor: &floor, Frame: 12 * in, Door: &Doorway{j.long / 3, 3 * ft, 2, 7 * in}, Post: 3*in + in/2}
	for _, p := range j.grid().onLine(0) {
		f.Posts = append(f.Posts, p.X)
	}
	for k := range 9 {
		x := j.long.Part(k, 8)
		f.Ground = append(f.Ground, Spot{x, j.ground(x, 0)})
	}
	if j.planned {
		f.Floor, f.Ground = nil, nil
	}
	return f
}
