package job

import (
	"fmt"
	"slices"

	"pierbook/calc/measure"
)

// check reports values that are right by themselves and wrong together. What
// hangs on the piers is checked by [Job.CheckPiers].
func (j *Job) check(r *reader) {
	j.checkSections(r)
	j.checkTimber(r)
	j.checkRanges(r)
	j.checkPanels(r)
	j.checkWalls(r)
	j.checkDoor(r)
	j.checkOpenings(r)
	j.checkPlacard(r)
	j.checkSheets(r)
	j.checkPegs(r)
	j.checkCuts(r)
	j.checkSights(r)
	j.checkSeats(r)
	j.checkTogether(r)
}

func (j *Job) checkSections(r *reader) {
	for _, m := range j.members() {
		_, size := r.given[m.path+".size"]
		_, width := r.given[m.path+".width"]
		_, depth := r.given[m.path+".depth"]
		switch {
		case size && (width || depth):
			r.wrong(m.path+".size", r.at(m.path+".size"), "both a size and a width or depth are given", "keep the size, or width and depth")
		case width != depth:
			r.wrong(m.path, r.at(m.path), "width and depth go together, and one of them is missing", "write both, or a size such as 2x6")
		}
	}
}

// checkPegs sees that the second stand is nearer to peg A: from equal distances
// an error of the level does not show.
func (j *Job) checkPegs(r *reader) {
	const path = "ground.instrument.pegs.to_b"
	if pegs := j.Ground.Instrument.Pegs; pegs != nil && !r.spoilt(path) && !r.spoilt("ground.instrument.pegs.to_a") && pegs.ToB <= pegs.ToA {
		r.wrong(path, r.at(path), "the second stand is no nearer to peg A than to peg B, so that an error of the level does not show",
			"stand close to peg A for the second pair of readings; near_a and to_a belong to the nearer peg")
	}
}

// checkTimber sees that each timber has either species and grade or values.
func (j *Job) checkTimber(r *reader) {
	timbers := map[string]*Timber{"timber": &j.Timber}
	for _, m := range j.members() {
		timbers[m.path+".timber"] = m.section.Timber
	}
	for path, t := range timbers {
		if t == nil || r.spoilt(path) {
			continue
		}
		_, species := r.given[path+".species"]
		_, grade := r.given[path+".grade"]
		_, values := r.tables[path+".values"]
		remedy := "write species and grade, such as {species: hem_fir, grade: No.2}, or values with their source"
		switch {
		case values && (species || grade):
			r.wrong(path+".values", r.at(path+".values"), "both a species or grade and design values are given", "keep one of the two")
		case values || t.Values != nil:
		case !species && !grade && path != "timber":
		case !species:
			r.wrong(path+".species", r.at(path), "is missing", remedy)
		case !grade:
			r.wrong(path+".grade", r.at(path), "is missing", remedy)
		}
	}
}

// checkRanges sees that no least is above its most.
func (j *Job) checkRanges(r *reader) {
	lengths := []struct {
		low, high           string
		lowValue, highValue measure.Length
	}{
		{"stone.least", "stone.most", j.Stone.Least, j.Stone.Most},
		{"dig.least", "dig.deepest", j.Dig.Least, j.Dig.Deepest},
		{"frame.posts.shortest", "frame.posts.longest", j.Frame.Posts.Shortest, j.Frame.Posts.Longest},
		{"block.seat_height", "block.height", j.Block.SeatHeight, j.Block.Height},
		{"block.seat_width", "block.base", j.Block.SeatWidth, j.Block.Base},
		{"yard.cloth.lap", "yard.cloth.width", j.Yard.Roll.Lap, j.Yard.Roll.Width},
	}
	for _, pair := range lengths {
		if pair.lowValue > pair.highValue && pair.highValue > 0 {
			r.above(pair.low, pair.high, pair.lowValue.Print(j.Style()), pair.highValue.Print(j.Style()))
		}
	}
	if b := j.Building; b != nil && b.WeightLeast > b.WeightMost && b.WeightMost > 0 {
		r.above("building.weight.least", "building.weight.most", b.WeightLeast.Print(j.Style()), b.WeightMost.Print(j.Style()))
	}
	if need := j.Stone.Least + j.Stone.Embed; need > j.Dig.Deepest && j.Dig.Deepest > 0 {
		r.above("stone.least", "dig.deepest", j.Stone.Least.Print(j.Style())+" with its top "+j.Stone.Embed.Print(j.Style())+" below the ground", j.Dig.Deepest.Print(j.Style()))
	}
	if j.Stone.OnCloth > j.Frame.Clear {
		r.above("stone.on_cloth", "frame.clear", j.Stone.OnCloth.Print(j.Style()), j.Frame.Clear.Print(j.Style()))
	}
	if step := j.Fraction; step > 0 && !slices.Contains([]measure.Length{1, 2, 4, 8, 16, 32, 64}, measure.Inch/step) || step > 0 && measure.Inch%step != 0 {
		r.wrong("fraction", r.at("fraction"), fmt.Sprintf("%q is no mark of an inch tape", step.String()), `write 1/2", 1/4", 1/8", 1/16", 1/32" or 1/64"`)
	}
}

// above reports that what should be the lesser of two is the greater, at
// whichever of the two a file gives.
func (r *reader) above(low, high, lowText, highText string) {
	path, other := low, high
	if _, given := r.given[low]; !given {
		path, other = high, low
	}
	r.wrong(path, r.at(path), fmt.Sprintf("%s is %s, more than %s, which is %s", low, lowText, high, highText), "change one of the two: this or "+other)
}

// checkPlacard sees that the payload has one origin, and that the people leave
// some of the placard.
func (j *Job) checkPlacard(r *reader) {
	if !hasPlacard(j) {
		return
	}
	if _, given := r.given["yard.payload"]; given {
		r.wrong("yard.payload", r.at("yard.payload"), "both a payload and a placard are given", "keep the payload, which is for goods alone, or the placard, which is for people and goods")
		return
	}
	if people := measure.Mass(j.Yard.Aboard) * j.Yard.Person; people >= j.Yard.Placard && !r.spoilt("yard") {
		r.wrong("yard.placard", r.at("yard.placard"), fmt.Sprintf("%d people of %s leave nothing of %s", j.Yard.Aboard, j.Yard.Person.Print(j.Style()), j.Yard.Placard.Print(j.Style())), "look at the placard again, or let fewer ride")
	}
}

// checkDoor keeps the door inside its side.
func (j *Job) checkDoor(r *reader) {
	door := j.Platform.Door
	if door == nil || door.Side == "" {
		return
	}
	side, path := j.Platform.Width, "platform.door.side"
	switch {
	case lineName.MatchString(door.Side):
		side = j.Platform.Length
	case !plainCount.MatchString(door.Side) || door.Side == "0":
		r.wrong(path, r.at(path), fmt.Sprintf("%q is not a side", door.Side), "write a line's letter, such as A, or the number of a row of piers, such as 1")
		return
	}
	if end := door.From1 + door.Width; end > side && side > 0 {
		path = "platform.door.from_1"
		r.wrong(path, r.at(path), fmt.Sprintf("the door ends at %s, and its side at %s", end.Print(j.Style()), side.Print(j.Style())), "move the door, or make it narrower")
	}
}

// checkSights sees that every set-up begins at a point of known height: the
// bench mark, or a point of an earlier set-up.
func (j *Job) checkSights(r *reader) {
	if r.spoilt("ground.sights") {
		return
	}
	known := map[string]bool{benchMark: true}
	for i, sights := range j.Ground.SetUps {
		if len(sights) > 0 && !known[sights[0].Point] {
			r.wrong(fmt.Sprintf("ground.sights.%d", i+1), sights[0].At, fmt.Sprintf("set-up %d begins at %q, whose height is not known yet", i+1, sights[0].Point),
				"begin with the bench mark, or with a point that an earlier set-up has read")
		}
		for _, s := range sights {
			known[s.Point] = true
		}
	}
}

// checkSeats sees that rod readings have the day's reading on the bench mark.
func (j *Job) checkSeats(r *reader) {
	for path, readings := range map[string]map[string]measure.Length{"measured.seats": j.Measured.Seats, "measured.finished": j.Measured.Finished} {
		if _, found := readings[benchMark]; len(readings) > 0 && !found {
			if _, wrongValue := r.given[path+"."+benchMark]; !wrongValue {
				r.wrong(path, r.at(path), "the reading on the bench mark is missing", "add bench_mark: the first reading of the day")
			}
		}
	}
}
