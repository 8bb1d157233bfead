package strength

import (
	"slices"

	"pierbook/calc/statics"
)

// cross prepares the floor's run across the lines.
func (c *checker) cross() bool {
	r, marks := c.floorRun()
	g, err := c.store.Of(r, marks)
	if err != nil {
		c.wrong("frame.beams.lines", "the joists have fewer than two lines to stand on", "write 2 or more lines")
		return false
	}
	c.floor = &statics.Crossing{Gauge: g}
	return true
}

// floorRun returns the floor's run, and the places of the loads along the lines.
func (c *checker) floorRun() (statics.Run, []float64) {
	r := statics.Run{End: c.frame.Width.Metres()}
	for _, line := range c.frame.Lines {
		r.Supports = append(r.Supports, line.Y.Metres())
		r.Hinges = append(r.Hinges, c.between())
	}
	if c.between() {
		r.Start, r.End = r.Supports[0], r.Supports[len(r.Supports)-1]
	}
	var marks []float64
	for _, s := range c.loads.strips {
		if s.alongX() && !slices.Contains(marks, s.y1) {
			marks = append(marks, s.y1)
		}
	}
	slices.Sort(marks)
	return r, marks
}

func (c *checker) between() bool { return c.job.Frame.Joists.Sit == "between_beams" }

// liveShare returns the most, the least and the whole that each line gets of one
// newton per square metre of live load, by metre of line.
func (c *checker) liveShare() (most, least, whole []float64) {
	g := c.floor.Gauge
	n := len(g.Run.Supports)
	most, least, whole = make([]float64, n), make([]float64, n), make([]float64, n)
	for _, u := range g.Unit {
		for i, r := range u.Reactions {
			most[i] += max(0, r)
			least[i] += min(0, r)
			whole[i] += r
		}
	}
	near, far := c.floor.Edges(c.frame.Width.Metres())
	most[0], whole[0] = most[0]+near, whole[0]+near
	most[n-1], whole[n-1] = most[n-1]+far, whole[n-1]+far
	return most, least, whole
}

// joistPlaces returns the tributary width of each joist place along x: joists
// of several bays at one place count once.
func (c *checker) joistPlaces() (centres, widths []float64) {
	for _, j := range c.frame.Joists {
		if x := j.Centre.Metres(); !slices.Contains(centres, x) {
			centres = append(centres, x)
		}
	}
	slices.Sort(centres)
	for i := range centres {
		from, to := 0.0, c.frame.Length.Metres()
		if i > 0 {
			from = (centres[i-1] + centres[i]) / 2
		}
		if i < len(centres)-1 {
			to = (centres[i] + centres[i+1]) / 2
		}
		widths = append(widths, to-from)
	}
	return centres, widths
}

// onLine is what one beam line gets.
type onLine struct {
	fixed                        [caseCount][]statics.Push
	liveMost, liveLeast, liveAll float64 // N/m
	patches                      []statics.Push
}

// lineLoads carries everything on the floor through the joists to the lines.
func (c *checker) lineLoads() []onLine {
	n, length := len(c.frame.Lines), c.frame.Length.Metres()
	lines := make([]onLine, n)
	most, least, whole := c.liveShare()
	p := c.loads.area[liveCase]
	for i := range lines {
		lines[i].liveMost, lines[i].liveLeast, lines[i].liveAll = p*most[i], p*least[i], p*whole[i]
		for kind, area := range c.loads.area {
			if area != 0 && loadCase(kind) != liveCase {
				lines[i].put(loadCase(kind), statics.Push{From: 0, To: length, Size: area * whole[i]})
			}
		}
		line := c.frame.Lines[i]
		lines[i].put(deadCase, statics.Push{From: line.Start.Metres(), To: line.End.Metres(), Size: c.loads.beam})
	}
	for _, s := range c.loads.strips {
		c.carryStrip(lines, s)
	}
	for _, patch := range c.in.Patches {
		shares := c.floor.Across(patch.Y.Metres(), (patch.Y + patch.Width).Metres()).Reactions
		for i, share := range shares {
			size := float64(patch.Load) / float64(patch.Length.Times(patch.Width)) * share
			lines[i].patches = append(lines[i].patches, statics.Push{From: patch.X.Metres(), To: (patch.X + patch.Length).Metres(), Size: size})
		}
	}
	return lines
}

func (l *onLine) put(kind loadCase, p statics.Push) {
	if p.Size != 0 {
		l.fixed[kind] = append(l.fixed[kind], p)
	}
}

// carryStrip shares a wall or rim out: along the lines through every joist it
// crosses, across them through the joist under it.
func (c *checker) carryStrip(lines []onLine, s strip) {
	if s.alongX() {
		for i, share := range c.floor.Share(s.y1) {
			lines[i].put(s.kind, statics.Push{From: s.x1, To: s.x2, Size: s.size * share})
		}
		return
	}
	for i, r := range c.floor.Across(s.y1, s.y2).Reactions {
		lines[i].put(s.kind, statics.Push{From: s.x1, To: s.x1, Size: r * s.size})
	}
}

// beamRun returns the run of a line's beam.
func (c *checker) beamRun(line int) statics.Run {
	l := c.frame.Lines[line]
	r := statics.Run{Start: l.Start.Metres(), End: l.End.Metres()}
	for _, p := range c.frame.Piers {
		if p.Line == line {
			r.Supports = append(r.Supports, p.X.Metres())
		}
	}
	r.Hinges = make([]bool, len(r.Supports))
	return r
}
