package job

import (
	"fmt"
	"maps"
	"slices"

	"pierbook/calc/measure"
)

// Opening is a place where something passes through the floor: a hatch, a post,
// a pipe or a sleeve.
type Opening struct {
	X, Y, Length, Width measure.Length // its corner next to the origin, and its size along x and y
}

// Meets says whether o and a share more than an edge.
func (o Opening) Meets(a Opening) bool {
	return o.X < a.X+a.Length && a.X < o.X+o.Length && o.Y < a.Y+a.Width && a.Y < o.Y+o.Width
}

// OpeningNames returns the names of the openings in order.
func (p Platform) OpeningNames() []string { return slices.Sorted(maps.Keys(p.Openings)) }

func openingKeys() []Key {
	star := []string{"floor opening"}
	put := func(change func(*Opening, value)) func(*Job, value) {
		return func(j *Job, v value) {
			o := j.Platform.Openings[v.names[0]]
			change(&o, v)
			j.Platform.Openings = with(j.Platform.Openings, v.names[0], o)
		}
	}
	return []Key{
		{Path: "platform.openings.*.x", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far its nearer end is from the frame end by A1", Means: "nearer end of this opening in the floor, along the beams", put: put(func(o *Opening, v value) { o.X = v.length })},
		{Path: "platform.openings.*.y", Stars: star, Kind: Distance, Required: true, AtMost: longestSide, Missing: "write how far its nearer side is from the side of line A", Means: "nearer side of this opening in the floor, across the beams", put: put(func(o *Opening, v value) { o.Y = v.length })},
		{Path: "platform.openings.*.length", Stars: star, Kind: Length, Required: true, AtMost: longestSide, Missing: "write its size along the beams", Means: "size of this opening along the beams", put: put(func(o *Opening, v value) { o.Length = v.length })},
		{Path: "platform.openings.*.width", Stars: star, Kind: Length, Required: true, AtMost: longestSide, Missing: "write its size across the beams", Means: "size of this opening across the beams", put: put(func(o *Opening, v value) { o.Width = v.length })},
	}
}

// checkOpenings keeps every opening inside the frame and clear of the others.
// One with a value that is missing or wrong is left alone: its fault is told.
func (j *Job) checkOpenings(r *reader) {
	var whole []string
	for _, name := range j.Platform.OpeningNames() {
		path := join("platform.openings", name)
		known := true
		for _, key := range []string{"x", "y", "length", "width"} {
			_, given := r.given[join(path, key)]
			known = known && given && !r.bad[join(path, key)]
		}
		if !known {
			continue
		}
		whole = append(whole, name)
		o := j.Platform.Openings[name]
		j.within(r, path, ".x", ".length", "along the beams", o.X, o.Length, j.Platform.Length)
		j.within(r, path, ".y", ".width", "across the beams", o.Y, o.Width, j.Platform.Width)
	}
	for i, name := range whole {
		for _, other := range whole[:i] {
			if path := join("platform.openings", name); j.Platform.Openings[name].Meets(j.Platform.Openings[other]) {
				r.wrong(path, r.tables[path], fmt.Sprintf("the opening %q overlaps the opening %q", name, other), "move one of the two, or make one opening of both")
			}
		}
	}
}

// within reports an opening that does not lie between the two sides of the frame
// in one direction.
func (j *Job) within(r *reader, path, place, size, way string, from, long, side measure.Length) {
	style := j.Style()
	switch {
	case side <= 0:
	case long > side:
		r.wrong(path+size, r.at(path+size), fmt.Sprintf("the opening is %s %s, and the platform only %s", long.Print(style), way, side.Print(style)), "make it smaller than the platform")
	case from+long > side:
		down := style
		down.Rounding = measure.Down
		r.wrong(path+place, r.at(path+place), fmt.Sprintf("the opening ends at %s %s, and the frame at %s", (from+long).Print(style), way, side.Print(style)),
			fmt.Sprintf("begin it at %s or less", (side-long).Print(down)))
	}
}
