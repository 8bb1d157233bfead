package loads

import (
	"fmt"
	"math"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// WindLoad is what wind does to the building as a whole, at the level of allowable
// stress: a given speed is an ultimate one and its load enters by 0.6, a given
// pressure is taken as it stands.
type WindLoad struct {
	Pressure     measure.Stress // velocity pressure at the roof
	Factor       measure.Ratio  // 0.6 or 1
	Height       measure.Length // mean roof height over the ground
	Wall, Uplift measure.Stress // net on walls; upward on the roof
	Across       Thrust         // wind across the beams
	Along        Thrust         // wind along the beams
	Up           measure.Force  // on the whole roof with its windward eaves, unfactored
	Eaves        measure.Stress // what lifts windward eaves over what lifts the roof
	Coefficient  float64        // Cp of the roof
	Source       string
	Memory       bool
}

// Thrust is the wind from one direction.
type Thrust struct {
	Name   string
	Force  measure.Force  // unfactored, on all the building's projection, at least the least of the code
	Arm    measure.Length // of it over the underside of the beams, with what the lift of the windward eaves turns besides
	Least  measure.Force  // of the code, unfactored
	Eaves  measure.Force  // lift of the windward eaves over that of the roof, unfactored
	Span   measure.Length // between the outer pier rows it turns about
	Area   measure.Area
	PerRow int // piers in the windward row
}

// windConstants are α and zg of ASCE 7-16 Table 26.11-1. B was read; C and D are
// from memory and give 0.85 and 1.03 at 15 ft.
var windConstants = map[string]struct {
	alpha, zg float64
	memory    bool
}{"B": {7, 1200, false}, "C": {9.5, 900, true}, "D": {11.5, 700, true}}

// VelocityPressure returns qz.
//
//	qz = 0.613·Kz·Kzt·Kd·V²  N/m², V in m/s;  Kz = 2.01·(max(z, 15 ft)/zg)^(2/α);  Kzt = 1, Kd = 0.85
//
// ASCE 7-16 26.10 (0.00256 in psf and mph).
func VelocityPressure(speed measure.Speed, exposure string, z measure.Length) (q measure.Stress, kz float64) {
	k, ok := windConstants[exposure]
	if !ok {
		k = windConstants["C"]
	}
	kz = 2.01 * math.Pow(math.Max(z.Feet(), 15)/k.zg, 2/k.alpha)
	return WindPressure(speed, kz, 0.85), kz
}

// WindPressure returns 0.00256·Kz·Kd·V² in psf, V in mph.
func WindPressure(speed measure.Speed, kz, kd float64) measure.Stress {
	v := float64(speed / measure.MilePerHour)
	return measure.Stress(0.00256*kz*kd*v*v) * measure.PoundPerSquareFt
}

const (
	Gust      = 0.85 // G, ASCE 7-16 26.11
	WallSides = 1.3  // 0.8 windward and 0.5 leeward, ASCE 7-16 Fig. 27.3-1
	under     = 0.8  // Cp upward under a windward overhang, ASCE 7-16 27.3.3, from memory
)

// The least wind on walls and on the roof as it stands in the wind's way, by a
// speed at the level of strength; an open building takes that of walls on both.
// ASCE 7-16 27.1.5.
const (
	LeastOnWalls = 16 * measure.PoundPerSquareFt
	LeastOnRoof  = 8 * measure.PoundPerSquareFt
)

// internal returns GCpi by enclosure; 0.55 is from memory.
func internal(enclosure string) float64 {
	switch enclosure {
	case "open":
		return 0
	case "partly_enclosed":
		return 0.55
	}
	return 0.18
}

// roofSuction returns the mean Cp of a roof that wind blows along, a plan L long
// at mean height h: 0.9 up to h/L 0.5; 1.3 over h/2 and 0.7 beyond from h/L 1 on;
// between by line. ASCE 7-16 Fig. 27.3-1, which governs uplift of flat and low roofs.
func roofSuction(h, l float64) float64 {
	front := math.Min(h/2, l)
	steep := (1.3*front + 0.7*(l-front)) / l
	switch ratio := h / l; {
	case ratio <= 0.5:
		return 0.9
	case ratio >= 1:
		return steep
	default:
		return 0.9 + (steep-0.9)*(ratio-0.5)/0.5
	}
}

// wind finds the wind on the building, none without a building or a wind.
func (g *gatherer) wind() {
	b, site := g.job.Building, g.job.Site.Wind
	switch {
	case b == nil:
		g.loads.Unchecked = append(g.loads.Unchecked, "Wind on an open floor: it has no walls for the wind to push; a floor of panels that could lift needs an engineer's look.")
		return
	case site.Speed <= 0 && site.Pressure <= 0:
		g.loads.Unchecked = append(g.loads.Unchecked, "Sliding, overturning and uplift: no wind was given.")
		return
	}
	w := &WindLoad{Factor: 0.6, Source: "ASCE 7-16 26.10, Fig. 27.3-1; Kd 0.85, G 0.85, flat open ground", Memory: windConstants[site.Exposure].memory || b.Enclosure == "partly_enclosed"}
	w.Height = g.in.Underside + g.frame.BuildUp.Total() + b.WallHeight + b.Roof.Rise/2
	w.Pressure, _ = VelocityPressure(site.Speed, site.Exposure, w.Height)
	if site.Speed <= 0 {
		w.Pressure, w.Factor, w.Source = site.Pressure, 1, "job file, taken as a service pressure at the roof"
	}
	w.Wall = w.Pressure * Gust * WallSides
	w.Coefficient = math.Max(roofSuction(w.Height.Metres(), g.frame.Width.Metres()), roofSuction(w.Height.Metres(), g.frame.Length.Metres()))
	w.Uplift = w.Pressure * measure.Stress(Gust*w.Coefficient+internal(b.Enclosure))
	if b.Enclosure != "open" {
		w.Eaves = max(0, w.Pressure*measure.Stress(Gust*under-internal(b.Enclosure)))
	}
	first, last := g.frame.Lines[0], g.frame.Lines[len(g.frame.Lines)-1]
	perLine := g.frame.PerLine(0)
	piers := g.frame.Piers
	w.Across = g.pushOn(w, side{"across", g.frame.Length, g.frame.Width, b.Roof.Eaves != "along_width"}, last.Y-first.Y, perLine)
	w.Along = g.pushOn(w, side{"along", g.frame.Width, g.frame.Length, b.Roof.Eaves == "along_width"}, piers[perLine-1].X-piers[0].X, len(g.frame.Lines))
	w.Up = w.Uplift.On(g.roofPlan(b.Roof)) + max(w.Across.Eaves, w.Along.Eaves)
	g.loads.Wind, g.loads.Present[WindCase] = w, true
	if !g.in.Quiet {
		g.windItems(w, site)
	}
}

// side is a side of the building in the wind's way: how long it is, how deep the
// building lies behind it, and whether it has eaves.
type side struct {
	name       string
	long, deep measure.Length
	eaves      bool
}

// inTheWay returns the areas of frame and wall, and of the roof, that stand in the
// wind's way, and how high the roof's stands over its foot. A side with eaves shows
// the whole rise of the roof, a gable half of it.
func (g *gatherer) inTheWay(s side) (wall, roof measure.Area, arm measure.Length) {
	r := g.job.Building.Roof
	wall, roof, arm = s.long.Times(g.wallTop()), s.long.Times(r.Rise), r.Rise/2
	if !s.eaves {
		roof, arm = roof/2, r.Rise/3
	}
	if r.Shape == "flat" {
		roof = 0
	}
	return wall, roof, arm
}

// wallTop returns the top of the walls over the underside of the beams.
func (g *gatherer) wallTop() measure.Length {
	b := g.frame.BuildUp
	return b.Surface + b.Joist + b.Beam + g.job.Building.WallHeight
}

// pushOn returns the wind on one side: frame depth, wall and roof as they stand
// in its way, at least what the code wants. The windward eaves lift the more; the
// moment that adds about the middle is taken into the arm.
func (g *gatherer) pushOn(w *WindLoad, s side, span measure.Length, perRow int) Thrust {
	b := g.job.Building
	wall, roof, above := g.inTheWay(s)
	turn := func(onWall, onRoof measure.Stress) (force, moment float64) {
		low, high := float64(onWall.On(wall)), float64(onRoof.On(roof))
		return low + high, low*(g.wallTop()/2).Metres() + high*(g.wallTop()+above).Metres()
	}
	// the least is meant for a strength-level wind: a service pressure is 0.6 of it
	level := measure.Stress(0.6 / w.Factor)
	onRoof := LeastOnRoof
	if b.Enclosure == "open" {
		onRoof = LeastOnWalls
	}
	force, moment := turn(w.Wall, w.Wall)
	least, leastMoment := turn(LeastOnWalls*level, onRoof*level)
	force, moment = math.Max(force, least), math.Max(moment, leastMoment)
	eaves := w.Eaves.On(b.Roof.Overhang.Times(s.long + 2*b.Roof.Overhang))
	moment += float64(eaves) * (s.deep + b.Roof.Overhang).Metres() / 2
	return Thrust{Name: s.name, Force: measure.Force(force), Arm: measure.FromMetres(moment / force), Least: measure.Force(least), Eaves: eaves,
		Span: span, Area: wall + roof, PerRow: perRow}
}

func (g *gatherer) windItems(w *WindLoad, site job.Wind) {
	s := g.words.Style
	working := fmt.Sprintf("q = %s, as given", w.Pressure.Print(s))
	path, formula := "site.wind.pressure", "taken over"
	if site.Speed > 0 {
		constant, units := "0.00256", "in psf and mph"
		if s.System == measure.Metric {
			constant, units = "0.613", "in N/m² and m/s"
		}
		formula = "q = " + constant + "·Kz·Kd·V², " + units
		path = "site.wind.speed"
		_, kz := VelocityPressure(site.Speed, site.Exposure, w.Height)
		working = fmt.Sprintf("%s × %.3f × 0.85 × (%s)² = %s, exposure %s, roof at %s", constant, kz, site.Speed.Print(s), w.Pressure.Print(s), site.Exposure, g.words.Length(w.Height))
	}
	g.loads.list(
		Load{ID: "wind.pressure", What: "velocity pressure of the wind at the roof", Amount: w.Pressure, Source: w.Source, Path: path, Memory: w.Memory, Formula: formula, Working: working},
		Load{ID: "wind.wall", What: "wind on the walls, both sides together", Amount: w.Wall, Source: w.Source, Memory: w.Memory, Formula: "p = q·G·(0.8 + 0.5)",
			Working: fmt.Sprintf("%s × 0.85 × 1.3 = %s", w.Pressure.Print(s), w.Wall.Print(s)), From: []string{"load.wind.pressure"}},
		g.thrustItem(w, w.Across, "wind across the beams"), g.thrustItem(w, w.Along, "wind along the beams"))
	formula = "U = q·(G·Cp + GCpi)·plan"
	working = fmt.Sprintf("%s × (0.85 × %.2f + %.2f) = %s on %s", w.Pressure.Print(s), w.Coefficient, internal(g.job.Building.Enclosure), w.Uplift.Print(s), g.roofPlan(g.job.Building.Roof).Print(s))
	if eaves := max(w.Across.Eaves, w.Along.Eaves); eaves > 0 {
		formula += " + q·(0.8·G − GCpi)·windward eaves"
		working += fmt.Sprintf(", and %s more on the windward eaves, %s", w.Eaves.Print(s), eaves.Print(s))
	}
	g.loads.list(Load{ID: "wind.uplift", What: "wind lifting the roof", Amount: w.Up, Source: w.Source + "; eaves by 27.3.3", Memory: true, Formula: formula,
		Working: working + ": " + w.Up.Print(s), From: []string{"load.wind.pressure"}})
}

// thrustItem lists the wind from one direction, with the least it is held to.
func (g *gatherer) thrustItem(w *WindLoad, t Thrust, what string) Load {
	s := g.words.Style
	arm := g.words.Length(t.Arm) + " over the underside of the beams"
	if t.Eaves > 0 {
		arm += ", with what the " + t.Eaves.Print(s) + " more on the windward eaves turns"
	}
	return Load{ID: "wind." + t.Name, What: what, Amount: t.Force, Source: w.Source + ", least by 27.1.5", Memory: w.Memory,
		Formula: fmt.Sprintf("H = max(p·area; least: %s on walls, %s on the roof, by a speed)", LeastOnWalls.Print(s), LeastOnRoof.Print(s)),
		Working: fmt.Sprintf("max(%s × %s = %s; least %s) = %s, %s", w.Wall.Print(s), t.Area.Print(s), w.Wall.On(t.Area).Print(s), t.Least.Print(s),
			t.Force.Print(s), arm), From: []string{"load.wind.wall"}}
}

// Greater returns the greater push of the two directions, factored.
func (w *WindLoad) Greater() measure.Force {
	return max(w.Across.Force, w.Along.Force) * measure.Force(w.Factor)
}
