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
	Up           measure.Force  // on the whole roof, unfactored
	Coefficient  float64        // Cp of the roof
	Source       string
	Memory       bool
}

// Thrust is the wind from one direction.
type Thrust struct {
	Name   string
	Force  measure.Force  // unfactored, on all the building's projection
	Arm    measure.Length // of it over the underside of the beams
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
	w.Up = w.Uplift.On(g.roofPlan(b.Roof))
	first, last := g.frame.Lines[0], g.frame.Lines[len(g.frame.Lines)-1]
	perLine := g.frame.PerLine(0)
	piers := g.frame.Piers
	w.Across = g.pushOn(w.Wall, "across", g.frame.Length, b, b.Roof.Eaves != "along_width", last.Y-first.Y, perLine)
	w.Along = g.pushOn(w.Wall, "along", g.frame.Width, b, b.Roof.Eaves == "along_width", piers[perLine-1].X-piers[0].X, len(g.frame.Lines))
	g.loads.Wind, g.loads.Present[WindCase] = w, true
	if !g.in.Quiet {
		g.windItems(w, site)
	}
}

// pushOn returns the wind on one side: frame depth, wall and roof as they stand
// in its way. A side with eaves shows the whole rise of the roof, a gable half of it.
func (g *gatherer) pushOn(p measure.Stress, name string, side measure.Length, b *job.Building, eaves bool, span measure.Length, perRow int) Thrust {
	deck := g.frame.BuildUp.Surface + g.frame.BuildUp.Joist + g.frame.BuildUp.Beam
	low := side.Times(deck + b.WallHeight)
	roof, arm := side.Times(b.Roof.Rise), b.Roof.Rise/2
	if !eaves {
		roof, arm = roof/2, b.Roof.Rise/3
	}
	if b.Roof.Shape == "flat" {
		roof = 0
	}
	area := low + roof
	mean := (float64(low)*((deck+b.WallHeight)/2).Metres() + float64(roof)*(deck+b.WallHeight+arm).Metres()) / float64(area)
	return Thrust{Name: name, Force: p.On(area), Arm: measure.FromMetres(mean), Span: span, Area: area, PerRow: perRow}
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
		Load{ID: "wind.across", What: "wind across the beams", Amount: w.Across.Force, Source: w.Source, Memory: w.Memory, Formula: "H = p·area",
			Working: fmt.Sprintf("%s × %s = %s", w.Wall.Print(s), w.Across.Area.Print(s), w.Across.Force.Print(s)), From: []string{"load.wind.wall"}},
		Load{ID: "wind.along", What: "wind along the beams", Amount: w.Along.Force, Source: w.Source, Memory: w.Memory, Formula: "H = p·area",
			Working: fmt.Sprintf("%s × %s = %s", w.Wall.Print(s), w.Along.Area.Print(s), w.Along.Force.Print(s)), From: []string{"load.wind.wall"}},
		Load{ID: "wind.uplift", What: "wind lifting the roof", Amount: w.Up, Source: w.Source, Memory: w.Memory, Formula: "U = q·(G·Cp + GCpi)·plan",
			Working: fmt.Sprintf("%s × (0.85 × %.2f + %.2f) = %s on %s: %s", w.Pressure.Print(s), w.Coefficient, internal(g.job.Building.Enclosure), w.Uplift.Print(s),
				g.roofPlan(g.job.Building.Roof).Print(s), w.Up.Print(s)), From: []string{"load.wind.pressure"}})
}

// Greater returns the greater push of the two directions, factored.
func (w *WindLoad) Greater() measure.Force {
	return max(w.Across.Force, w.Along.Force) * measure.Force(w.Factor)
}
