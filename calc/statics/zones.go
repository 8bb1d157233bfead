package statics

import "pierbook/calc/loads"

// zone is a length of the floor whose joists stand alike: on all lines, or, past the
// ends of beams that are set back, on the rims, which stand on the outer lines.
type zone struct {
	from, to float64
	across   float64 // width of the floor
	last     bool    // it ends with the floor
	share    func(from, to float64) []float64
}

// zones returns the zones of the floor, that of the joists on the lines first.
func (x *Floor) zones() ([]zone, error) {
	length, across := x.Frame.Length.Metres(), x.Frame.Width.Metres()
	all := []zone{{0, length, across, true, func(from, to float64) []float64 { return x.Across(from, to).Reactions }}}
	near, far := x.Hung()
	if near+far == 0 {
		return all, nil
	}
	rims, err := x.rimToRim(NewGauges())
	if err != nil {
		return nil, err
	}
	n := len(x.Frame.Lines)
	share := func(from, to float64) []float64 {
		lines, r := make([]float64, n), rims.Across(from, to).Reactions
		lines[0], lines[n-1] = r[0], r[1]
		return lines
	}
	places := x.joistPlaces()
	if near > 0 {
		all[0].from = places[near-1].to
		all = append(all, zone{0, all[0].from, across, false, share})
	}
	if far > 0 {
		all[0].to, all[0].last = places[len(places)-far].from, false
		all = append(all, zone{all[0].to, length, across, true, share})
	}
	return all, nil
}

// Hung returns how many joists at each end of the floor the beams, set back, do not
// reach.
func (x *Floor) Hung() (near, far int) {
	if x.Between || len(x.Frame.Rims) == 0 {
		return 0, 0
	}
	line, half := x.Frame.Lines[0], x.Frame.Sections.Joist.Width.Metres()/2
	for _, p := range x.joistPlaces() {
		if p.at+half <= line.Start.Metres() {
			near++
		}
		if p.at-half >= line.End.Metres() {
			far++
		}
	}
	return near, far
}

// carryStrip shares a wall or rim out: along the lines through every joist it
// crosses, across them through the joist under it.
func (z *zone) carryStrip(lines []OnLine, s loads.Strip) {
	from, to := max(z.from, s.X1), min(z.to, s.X2)
	switch {
	case s.AlongX() && from < to:
		for i, share := range z.share(s.Y1, s.Y1) {
			lines[i].put(s.Kind, Push{From: from, To: to, Size: s.Size * share})
		}
	case !s.AlongX() && s.X1 >= z.from && (s.X1 < z.to || z.last):
		for i, r := range z.share(s.Y1, s.Y2) {
			lines[i].put(s.Kind, Push{From: s.X1, To: s.X1, Size: r * s.Size})
		}
	}
}

// carryPatch shares a load at a place out.
func (z *zone) carryPatch(lines []OnLine, p loads.Patch) {
	from, to := max(z.from, p.X.Metres()), min(z.to, (p.X+p.Length).Metres())
	if from >= to {
		return
	}
	for i, share := range z.share(p.Y.Metres(), (p.Y + p.Width).Metres()) {
		lines[i].Patches = append(lines[i].Patches, Push{From: from, To: to, Size: float64(p.Load) / float64(p.Length.Times(p.Width)) * share})
	}
}

// moveToRims takes the load on the area of the floor past the beams from where joists
// on all lines would bring it to where those on the rims do. A floor load that is no
// longer on an inner line stays there: it may always be absent.
func (z *zone) moveToRims(lines []OnLine, area [loads.CaseCount]float64, most, whole []float64) {
	wide := z.share(0, z.across)
	for i := range lines {
		for kind, p := range area {
			push := Push{From: z.from, To: z.to, Size: p * (wide[i] - whole[i])}
			switch {
			case p == 0:
			case loads.Case(kind) != loads.LiveCase:
				lines[i].put(loads.Case(kind), push)
			default:
				lines[i].Moved = append(lines[i].Moved, push)
				if push.Size = p * (wide[i] - most[i]); push.Size > 0 {
					lines[i].ByRims = append(lines[i].ByRims, push)
				}
			}
		}
	}
}
