package terrain

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Cut is what one cut of the job takes.
type Cut struct {
	Name    string
	Deepest measure.Length
	Volume  measure.Volume // in the bank, sides and all; what an earlier cut takes is not counted again
	Beyond  bool           // some of it lies more than half a bay outside the readings
}

// Cuts returns what each cut of the job takes, in the order of their names; nil
// without cuts or readings.
//
// The volume is that between the ground as read and as cut, over squares of a
// grid that the edges of each plot divide, by the height in the middle of each:
// exact for ground in a plane but for the leaning sides, and within a hundredth
// there.
func (g *Ground) Cuts() []Cut {
	if g.Surface == nil {
		return nil
	}
	s := g.Surface
	var cuts []Cut
	before := &Spline{Nodes: s.Nodes, Hull: s.Hull, Plane: s.Plane, frame: s.frame, places: s.places}
	for _, c := range s.cuts {
		deepest, _ := s.depths(c)
		one := Cut{Name: c.name, Deepest: deepest}
		before.cuts = append(before.cuts, cutting{name: c.name, to: c.to, by: c.by})
		done := &before.cuts[len(before.cuts)-1]
		for _, p := range c.plots {
			one.Volume += before.taken(c, p, deepest)
			done.plots = append(done.plots, p)
			one.Beyond = one.Beyond || g.Beyond(p.x0, p.y0) || g.Beyond(p.x1, p.y0) || g.Beyond(p.x0, p.y1) || g.Beyond(p.x1, p.y1)
		}
		cuts = append(cuts, one)
	}
	return cuts
}

// taken returns the volume that a plot takes of the ground as it is left by the
// cuts before it.
func (s *Spline) taken(c cutting, p plot, deepest measure.Length) measure.Volume {
	const floor, side = 24, 24
	beside := min(3*CutRun*deepest, sideReach)
	xs := [][3]measure.Length{{p.x0 - beside, p.x0, side}, {p.x0, p.x1, floor}, {p.x1, p.x1 + beside, side}}
	ys := [][3]measure.Length{{p.y0 - beside, p.y0, side}, {p.y0, p.y1, floor}, {p.y1, p.y1 + beside, side}}
	var sum measure.Volume
	for _, alongX := range xs {
		for _, alongY := range ys {
			nx, ny := int(alongX[2]), int(alongY[2])
			cell := (alongX[1] - alongX[0]).Part(1, nx).Times((alongY[1] - alongY[0]).Part(1, ny))
			for i := range nx {
				for k := range ny {
					x, y := alongX[0]+(alongX[1]-alongX[0]).Part(2*i+1, 2*nx), alongY[0]+(alongY[1]-alongY[0]).Part(2*k+1, 2*ny)
					if left, near := s.left(c, p, x, y); near {
						sum += cell.Deep(max(0, s.At(x, y)-left))
					}
				}
			}
		}
	}
	return sum
}

// CutSets are the cuts, and the piers and spots whose ground they lower.
func (g *Ground) CutSets(j *job.Job) []figure.Set {
	cuts := figure.Set{Name: "cuts", Key: "cut", Fields: []figure.Field{
		{Key: "where", Means: "where the ground is cut: %", Formula: "by the job"},
		{Key: "down", Means: "how far the ground is cut: %", Formula: "by the job"},
		{Key: "deepest", Means: "greatest depth of the cut %", Formula: "ground as read − ground as cut", From: g.Keys()},
		{Key: "volume", Means: "volume of the cut % as it lay, its sides leaning back with it", Formula: "Σ (ground as read − as cut) × square of a grid", From: g.Keys()},
		{Key: "say", Means: "what to see to at the cut %", Formula: "by the readings"},
	}}
	style := j.Style()
	taken := g.Cuts()
	for i, name := range j.Ground.CutNames() {
		say := ""
		var deepest, volume measure.Quantity // blank until the ground is read
		if taken != nil {
			deepest, volume = taken[i].Deepest, taken[i].Volume
		}
		if taken != nil && taken[i].Beyond {
			say = "Beyond the readings: read the ground there first."
		}
		wish := j.Ground.Cuts[name]
		down := wish.By.Print(style) + " off everywhere"
		if wish.To != nil {
			down = "down to " + wish.To.Print(style) + " over the datum; on the rod: the bench mark's reading, " + measure.Offset(j.Ground.BenchMark.Height-*wish.To).Print(style)
		}
		cuts.Row(name, name, measure.Word(where(wish, style)), measure.Word(down), deepest, volume, measure.Word(say))
	}
	places := figure.Set{Name: "cut-places", Key: "cut_at", Fields: []figure.Field{
		{Key: "read", Means: "ground as read at %", Formula: "by the level book, or estimated"},
		{Key: "off", Means: "what is cut off at %", Formula: "ground as read − ground as cut", From: []string{".read"}},
		{Key: "ground", Means: "ground as cut at %", Formula: "to the height of the cut, or by its depth; beside it 1 up in 2 out", From: []string{".read", ".off"}},
		{Key: "rod", Means: "on the rod at % when it is cut, from the bench mark's reading", Formula: "bench mark − ground as cut", From: []string{".ground", "bench_mark.height"}},
	}}
	row := func(name string, height, off measure.Length) {
		if off > 0 {
			places.Row(name, name, height+off, off, height, measure.Offset(j.Ground.BenchMark.Height-height))
		}
	}
	for _, l := range g.Levels {
		row(l.Pier, l.Height, l.Cut)
	}
	for _, s := range g.Spots {
		row(s.Name, s.Height, s.Cut)
	}
	return []figure.Set{cuts, places}
}

func where(c job.Cut, style measure.Style) string {
	if len(c.Piers) > 0 {
		return fmt.Sprintf("%s, to %s from the centre each way", strings.Join(c.Piers, ", "), c.Reach.Print(style))
	}
	return fmt.Sprintf("x %s to %s, y %s to %s", c.X.Print(style), (c.X + c.Length).Print(style), c.Y.Print(style), (c.Y + c.Width).Print(style))
}
