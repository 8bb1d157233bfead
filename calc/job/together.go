package job

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// checkTogether looks at values that are usual by themselves and make no sense
// beside one another. What cannot be is a fault; what is only odd is asked.
func (j *Job) checkTogether(r *reader) {
	j.checkMemberSizes(r)
	j.checkBlock(r)
	j.checkStone(r)
	j.checkStock(r)
	j.checkDelivered(r)
	j.checkDates(r)
	j.checkReadings(r)
}

// ask notes a doubt at a key.
func (r *reader) ask(path, format string, arguments ...any) {
	r.doubts = append(r.doubts, Doubt{Path: path, At: r.at(path), Saying: path + ": " + fmt.Sprintf(format, arguments...)})
}

// Limits of one ply: 1x to 8x wide, 2x4 to 2x12 deep are usual; common practice,
// no source.
const (
	thinPly, thickPly       = measure.Inch / 2, 16 * measure.Inch
	shallowMember           = 5 * measure.Inch / 4
	deepMember              = 24 * measure.Inch
	usualShallow, usualDeep = 13 * measure.Inch / 4, 12 * measure.Inch
)

func (j *Job) checkMemberSizes(r *reader) {
	for _, m := range j.members() {
		s := m.section
		if s.Width <= 0 || s.Depth <= 0 || r.spoilt(m.path) {
			continue
		}
		width, depth := s.Width.Print(j.Style()), s.Depth.Print(j.Style())
		switch {
		case s.Width < thinPly || s.Width > thickPly || s.Depth < shallowMember || s.Depth > deepMember:
			r.wrong(m.path, r.at(m.path), fmt.Sprintf("a piece %s wide and %s deep is no timber of such a frame", width, depth),
				fmt.Sprintf("write a width from %s to %s and a depth from %s to %s; is the unit right?", thinPly.Print(j.Style()), thickPly.Print(j.Style()), shallowMember.Print(j.Style()), deepMember.Print(j.Style())))
		case s.Depth < usualShallow || s.Depth > usualDeep:
			r.ask(m.path, "the depth of %s is out of the usual %s to %s (2x4 to 2x12).", depth, usualShallow.Print(j.Style()), usualDeep.Print(j.Style()))
		}
	}
}

// checkBlock holds weight against volume, rated load against the ground under the
// base, and the seat against block and post. Masonry weighs 60 to 150 lb a cubic
// foot with its hollows (ACI 530-11, section 1.8, from memory), plastic less.
func (j *Job) checkBlock(r *reader) {
	b := j.Block
	if r.spoilt("block") || b.Base <= 0 || b.Height <= 0 {
		return
	}
	style := j.Style()
	if b.SeatHeight > b.Height {
		r.wrong("block.seat_height", r.at("block.seat_height"), fmt.Sprintf("the seat at %s lies higher than the block, %s", b.SeatHeight.Print(style), b.Height.Print(style)), "write how high over the block's underside the post stands")
	}
	const lightest, heaviest = 2 * measure.PoundPerCubicFoot, 170 * measure.PoundPerCubicFoot
	if density := float64(b.Weight) / float64(b.Base.Times(b.Base).Deep(b.Height)); b.Weight > 0 && (density < float64(lightest) || density > float64(heaviest)) {
		r.ask("block.weight", "%s on %s square by %s is %s: masonry has 60 to 150 lb in a cubic foot, hollow plastic a few.", b.Weight.Print(style), b.Base.Print(style), b.Height.Print(style), measure.Density(density).Print(style))
	}
	const mostUnderBase = 15000 * measure.PoundPerSquareFt
	if under := measure.Stress(float64(b.RatedLoad) / float64(b.Base.Times(b.Base))); under > mostUnderBase {
		r.ask("block.rated_load", "%s on a base of %s is %s, more than soil or stone carries; is it the block's crushing load?", b.RatedLoad.Print(style), b.Base.Print(style), under.Print(style))
	}
	if post := j.Frame.Posts.Width; post > 0 && b.SeatWidth > 0 && post > b.SeatWidth+measure.Inch/4 {
		r.ask("block.seat_width", "a post %s wide does not go into a seat of %s.", post.Print(style), b.SeatWidth.Print(style))
	}
}

// checkStone sees that loose stone is lighter than compacted, in the proportion
// of their volumes.
func (j *Job) checkStone(r *reader) {
	s := j.Stone
	if r.spoilt("stone") || s.Density <= 0 || s.LooseDensity <= 0 {
		return
	}
	style := j.Style()
	if s.LooseDensity >= s.Density {
		r.wrong("stone.loose_density", r.at("stone.loose_density"), fmt.Sprintf("loose stone of %s is no lighter than compacted, %s", s.LooseDensity.Print(style), s.Density.Print(style)), "write the density as delivered; compacting makes it denser")
		return
	}
	if s.Loose <= 0 {
		return
	}
	if by := float64(s.Density) / float64(s.LooseDensity); math.Abs(by/float64(s.Loose)-1) > 0.15 {
		r.ask("stone.loose", "%s loose to compacted, but the two densities say %.2f; one of the three is off.", s.Loose.Print(style), by)
	}
}

// Sticks as yards sell them: 6 to 20 ft; common practice, no source.
const (
	shortestStick, longestStick = measure.Foot, 60 * measure.Foot
	usualShort, usualLong       = 4 * measure.Foot, 24 * measure.Foot
	dearest                     = measure.Money(1e6)
)

func (j *Job) checkStock(r *reader) {
	for _, size := range slices.Sorted(maps.Keys(j.Yard.Stock)) {
		path := "yard.stock." + size
		if _, given := r.given[path]; !given {
			continue
		}
		for _, stick := range j.Yard.Stock[size] {
			length := stick.Length.Print(j.Style())
			switch {
			case stick.Length < shortestStick || stick.Length > longestStick:
				r.wrong(path, r.at(path), "no yard sells sticks of "+length, fmt.Sprintf("write lengths from %s to %s; is the unit right?", shortestStick.Print(j.Style()), longestStick.Print(j.Style())))
			case stick.Length < usualShort || stick.Length > usualLong:
				r.ask(path, "sticks of %s are out of the usual 6 to 20 ft.", length)
			}
			if stick.Price != nil && *stick.Price > dearest {
				r.wrong(path, r.at(path), "a stick costs no "+stick.Price.Print(j.Style()), "write the price of one stick")
			}
		}
	}
}

// checkDates holds the first day of work against the day of the issue.
func (j *Job) checkDates(r *reader) {
	issued, errIssued := time.Parse(time.DateOnly, j.Issued)
	starts, errStarts := time.Parse(time.DateOnly, j.Crew.Starts)
	for path, date := range map[string]time.Time{"issued": issued, "crew.starts": starts} {
		if year := date.Year(); !date.IsZero() && (year < 1990 || year > 2200) {
			r.wrong(path, r.at(path), fmt.Sprintf("the year %d is not one to build in", year), "write year, month and day, such as 2027-05-01")
			return
		}
	}
	if errIssued != nil || errStarts != nil {
		return
	}
	switch years := starts.Sub(issued).Hours() / 24 / 365.25; {
	case years < -5 || years > 20:
		r.wrong("crew.starts", r.at("crew.starts"), fmt.Sprintf("the work would start on %s, the issue is of %s", j.Crew.Starts, j.Issued), "look at both years again")
	case years < 0:
		r.ask("crew.starts", "the work starts on %s, before the day of the issue, %s.", j.Crew.Starts, j.Issued)
	case years > 3:
		r.ask("crew.starts", "the work starts on %s, more than three years after the issue, %s.", j.Crew.Starts, j.Issued)
	}
}

// Rods are 8 to 16 ft long, telescoping ones up to 30; common practice, no source.
const (
	usualRod = 16 * measure.Foot
	tallRod  = 30 * measure.Foot
)

// checkReadings sees that no reading is longer than a rod, and asks about firm
// ground at the very surface.
func (j *Job) checkReadings(r *reader) {
	tallest := func(path string, at fault.Place, l measure.Length) {
		switch {
		case l > tallRod:
			r.wrong(path, at, fmt.Sprintf("a reading of %s is longer than any rod", measure.Reading(l).Print(j.Style())), "is the unit right?")
		case l > usualRod:
			r.doubts = append(r.doubts, Doubt{Path: path, At: at, Saying: fmt.Sprintf("%s: a reading of %s is longer than most rods, 16 ft.", path, measure.Reading(l).Print(j.Style()))})
		}
	}
	for i, setUp := range j.Ground.SetUps {
		for _, sight := range setUp {
			tallest(fmt.Sprintf("ground.sights.%d.%s", i+1, sight.Point), sight.At, sight.Reading)
		}
	}
	for block, readings := range map[string]map[string]measure.Length{"measured.seats": j.Measured.Seats, "measured.finished": j.Measured.Finished} {
		for _, name := range slices.Sorted(maps.Keys(readings)) {
			tallest(block+"."+name, r.at(block+"."+name), readings[name])
		}
	}
	for _, name := range slices.Sorted(maps.Keys(j.Ground.Probes)) {
		if p := j.Ground.Probes[name]; p.Depth == 0 && p.Found == "firm" {
			r.ask("ground.probes."+name+".depth", "firm ground at the very surface is under no turf; was the bar pushed in?")
		}
	}
}
