package loads

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Roofs are taken to weigh at most 10 psf (24 CFR 3285.303, notes to Table 1)
// of their plan, and never more than half of the building; the walls weigh the
// rest, evenly along their length. Roof live load: 20 psf, the least of IRC
// Table R301.6, from memory.
const (
	RoofDead  = 10 * measure.PoundPerSquareFt
	roofLive  = 20 * measure.PoundPerSquareFt
	wallDepth = 7 * measure.Inch / 2 // walls stand flush with the frame; common practice, no source
)

// building carries walls and roof down to the floor as loads along lines.
func (g *gatherer) building() {
	b := g.job.Building
	if b == nil {
		g.openFloor()
		return
	}
	if b.WeightMost > 0 {
		g.loads.LightShare = float64(b.WeightLeast / b.WeightMost)
	}
	walls := g.walls(b)
	plan := g.roofPlan(b.Roof)
	roof := min(RoofDead.On(plan), b.WeightMost/2)
	snow, live := g.snow().On(plan), roofLive.On(plan)
	for _, w := range walls {
		long := w.Long().Metres()
		dead := (float64(b.WeightMost-roof)*float64(w.ShareOfWallsMass) + float64(roof)*float64(w.ShareOfRoof)) / long
		g.line(BuildingCase, w, dead)
		g.line(SnowCase, w, float64(snow)*float64(w.ShareOfRoof)/long)
		g.line(RoofCase, w, float64(live)*float64(w.ShareOfRoof)/long)
	}
	g.loads.Present[BuildingCase] = b.WeightMost > 0
	g.loads.Present[SnowCase], g.loads.Present[RoofCase] = snow > 0, true
	if b.Roof.Shape == "flat" {
		g.loads.Unchecked = append(g.loads.Unchecked, "Rain that stands on the flat roof: it drains freely, or its designer counts it.")
	}
	if !g.in.Quiet {
		g.buildingItems(b, plan, roof, snow, live)
		g.wallItems(walls, roof, snow)
	}
}

// wallItems lists each wall by its length: its own share, and what it carries of
// roof and snow.
func (g *gatherer) wallItems(walls []PlacedWall, roof, snow measure.Force) {
	t, mass := g.words, g.job.Building.WeightMost-roof
	for i, w := range walls {
		long := w.Long()
		per := func(f measure.Force, share measure.Ratio) float64 {
			return float64(f) * float64(share) / long.Metres()
		}
		own, over, snowed := per(mass, w.ShareOfWallsMass), per(roof, w.ShareOfRoof), per(snow, w.ShareOfRoof)
		what := w.Name
		if g.given(w.Name) {
			what = "wall " + w.Name
		}
		what += fmt.Sprintf(", %s long: itself", t.Length(long))
		working := fmt.Sprintf("%s × %.3f / %s = %s", t.Force(float64(mass)), float64(w.ShareOfWallsMass), t.Length(long), t.Line(own))
		from := []string{"load.walls"}
		if w.CarriesRoof {
			what += " and its share of the roof"
			working += fmt.Sprintf("; roof %s × %.3f / %s = %s", t.Force(float64(roof)), float64(w.ShareOfRoof), t.Length(long), t.Line(over))
			from = append(from, "load.roof")
			if snow > 0 {
				working += "; snow besides " + t.Line(snowed)
				from = append(from, "load.snow")
			}
		}
		g.loads.list(Load{ID: fmt.Sprintf("wall.%d", i+1), What: what, Amount: measure.LineLoad(own + over), Source: g.restsOn(w),
			Formula: "walls · its length / all lengths + roof · its share, by its length", Working: working, From: from})
	}
}

// given tells walls of the job from the four outer ones, which have words for names.
func (g *gatherer) given(name string) bool {
	_, ok := g.job.Building.Walls[name]
	return ok
}

// restsOn says which lines take a wall, and by what share.
func (g *gatherer) restsOn(w PlacedWall) string {
	if w.X1 == w.X2 {
		return "stands along a joist, which takes it to the lines it crosses"
	}
	var parts []string
	for i, share := range g.in.Shares(w.Y1) {
		if math.Abs(share) >= 0.005 {
			parts = append(parts, fmt.Sprintf("%.0f%% on line %s", share*100, g.frame.Lines[i].Name))
		}
	}
	return "through the joists: " + strings.Join(parts, ", ")
}

func (g *gatherer) line(kind Case, w PlacedWall, size float64) {
	if size == 0 {
		return
	}
	g.loads.Strips = append(g.loads.Strips, Strip{kind, min(w.X1, w.X2).Metres(), min(w.Y1, w.Y2).Metres(), max(w.X1, w.X2).Metres(), max(w.Y1, w.Y2).Metres(), size, w.Name})
}

// openFloor lets snow lie on a floor without a building, by itself and not with
// the live load at full size.
func (g *gatherer) openFloor() {
	snow := g.snow()
	g.loads.Area[SnowCase] = float64(snow)
	g.loads.Present[SnowCase] = snow > 0
	if !g.in.Quiet && snow > 0 {
		g.loads.list(g.snowItem("snow on the open floor, the ground snow load in full", snow.On(g.frame.Length.Times(g.frame.Width))))
	}
}

// importance returns the snow importance factor of a risk category, never below
// one. ASCE 7-16 Table 1.5-2, from memory.
func importance(category string) measure.Stress {
	switch category {
	case "III":
		return 1.1
	case "IV":
		return 1.2
	}
	return 1
}

// snow returns the snow load: that of the ground in full, without any reduction
// for slope, wind or warmth, times the importance factor.
func (g *gatherer) snow() measure.Stress {
	return g.job.Site.GroundSnow * importance(g.in.RiskCategory)
}

func (g *gatherer) snowItem(what string, total measure.Force) Load {
	t := g.words
	return Load{ID: "snow", What: what, Amount: g.snow(), Total: total, Source: g.job.Basis("site.ground_snow") + "; importance by ASCE 7-16 Table 1.5-2",
		Path: "site.ground_snow", Memory: g.in.RiskCategory != "II",
		Formula: "S = ground snow · importance", Working: fmt.Sprintf("%s × %.1f = %s", t.Pressure(g.job.Site.GroundSnow), float64(importance(g.in.RiskCategory)),
			t.Pressure(g.snow())), From: []string{"design.risk_category"}}
}

// roofPlan returns the area of the roof in plan with its overhang on all sides.
func (g *gatherer) roofPlan(r job.Roof) measure.Area {
	return (g.frame.Length + 2*r.Overhang).Times(g.frame.Width + 2*r.Overhang)
}

// walls returns the walls of the building: those given, or the four outer ones.
// The eaves walls share the roof; a hip roof stands on all four by their length.
func (g *gatherer) walls(b *job.Building) []PlacedWall {
	given := g.in.Walls
	if given == nil {
		half := wallDepth / 2
		l, w := g.frame.Length, g.frame.Width
		along := b.Roof.Eaves != "along_width"
		given = []PlacedWall{
			{Name: "wall over the side of line A", Y1: half, X2: l, Y2: half, CarriesRoof: along},
			{Name: "wall over the far side", Y1: w - half, X2: l, Y2: w - half, CarriesRoof: along},
			{Name: "wall over the end by A1", X1: half, X2: half, Y2: w, CarriesRoof: !along},
			{Name: "wall over the far end", X1: l - half, X2: l - half, Y2: w, CarriesRoof: !along},
		}
	}
	return shareOut(slices.Clone(given), b.Roof.Shape == "hip")
}

func shareOut(walls []PlacedWall, allCarry bool) []PlacedWall {
	var all, eaves measure.Length
	for i := range walls {
		walls[i].CarriesRoof = walls[i].CarriesRoof || allCarry
		all += walls[i].Long()
		if walls[i].CarriesRoof {
			eaves += walls[i].Long()
		}
	}
	for i := range walls {
		walls[i].ShareOfWallsMass = measure.Ratio(walls[i].Long().Metres() / all.Metres())
		if walls[i].CarriesRoof {
			walls[i].ShareOfRoof = measure.Ratio(walls[i].Long().Metres() / eaves.Metres())
		}
	}
	return walls
}

func (g *gatherer) buildingItems(b *job.Building, plan measure.Area, roof, snow, live measure.Force) {
	w := g.words.Style
	shape := b.Roof.Shape + " roof"
	g.loads.list(
		Load{ID: "building.most", What: "building at its heaviest", Amount: b.WeightMost, Total: b.WeightMost, Source: g.job.Basis("building.weight.most"),
			Path: "building.weight.most", Memory: g.job.Recalled("building.weight.most")},
		Load{ID: "building.least", What: "building at its lightest, which holds it down", Amount: b.WeightLeast, Source: g.job.Basis("building.weight.least"),
			Path: "building.weight.least", Memory: g.job.Recalled("building.weight.least")},
		Load{ID: "roof", What: "of which the " + shape, Amount: roof, Source: "24 CFR 3285.303 (2015), notes to Table 1: 10 psf of roof; at most half of the building",
			Formula: "roof = min(10 psf · plan, weight / 2)", Working: fmt.Sprintf("min(%s × %s, %s / 2) = %s", RoofDead.Print(w), plan.Print(w), b.WeightMost.Print(w),
				roof.Print(w)), From: []string{"load.building.most"}},
		Load{ID: "walls", What: "of which the walls, evenly along their length", Amount: b.WeightMost - roof, Formula: "walls = building − roof",
			Working: fmt.Sprintf("%s − %s = %s", b.WeightMost.Print(w), roof.Print(w), (b.WeightMost - roof).Print(w)), From: []string{"load.building.most", "load.roof"}},
		Load{ID: "roof_live", What: "people on the roof", Amount: roofLive, Total: live, Source: "IRC 2021 Table R301.6, the greatest row", Memory: true})
	if snow > 0 {
		g.loads.list(g.snowItem("snow on the roof, the ground snow load in full on its plan", snow))
	}
}

// offPlatform faults walls and patches that do not stand on the floor.
func (g *gatherer) offPlatform() {
	l, w := g.frame.Length, g.frame.Width
	off := func(x1, y1, x2, y2 measure.Length) bool {
		return min(x1, x2) < 0 || min(y1, y2) < 0 || max(x1, x2) > l || max(y1, y2) > w
	}
	within := fmt.Sprintf("keep it within %s along the beams and %s across them", g.words.Length(l), g.words.Length(w))
	for _, wall := range g.in.Walls {
		switch {
		case off(wall.X1, wall.Y1, wall.X2, wall.Y2):
			g.wrong("building.walls."+wall.Name, fmt.Sprintf("the wall %q stands off the platform", wall.Name), within)
		case wall.Long() == 0:
			g.wrong("building.walls."+wall.Name, fmt.Sprintf("the wall %q has no length", wall.Name), "give it a from and a to that differ")
		case wall.X1 != wall.X2 && wall.Y1 != wall.Y2:
			g.wrong("building.walls."+wall.Name, fmt.Sprintf("the wall %q runs neither along nor across the beams", wall.Name), "give it two ends with one x or one y")
		}
	}
	for _, p := range g.in.Patches {
		switch {
		case off(p.X, p.Y, p.X+p.Length, p.Y+p.Width):
			g.wrong("platform.loads."+p.Name, fmt.Sprintf("the load %q stands off the platform", p.Name), within)
		case p.Load < 0 || p.Length <= 0 || p.Width <= 0:
			g.wrong("platform.loads."+p.Name, fmt.Sprintf("the load %q of %s on %s by %s is none", p.Name, p.Load.Print(g.words.Style), g.words.Length(p.Length),
				g.words.Length(p.Width)), "give a load and a size above 0")
		}
	}
}
