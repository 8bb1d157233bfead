package job

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Cut is ground that is taken off before the holes are dug: down to a height, or
// by so much, over a rectangle in plan or round some piers.
type Cut struct {
	To                  *measure.Length // height over the datum that is left, nil when By is given
	By                  measure.Length  // depth taken off everywhere
	Piers               []string        // nil for a rectangle
	Reach               measure.Length  // from the centre of each pier to the edge of the cut round it
	X, Y, Length, Width measure.Length  // of the rectangle: its corner next to the origin, and its size along x and y
}

// CutNames returns the names of the cuts in order.
func (g Ground) CutNames() []string { return slices.Sorted(maps.Keys(g.Cuts)) }

// cutReach is room to kneel and tamp beside a hole.
var cutReach = either(`2'`, "600 mm", practice+": room to kneel and tamp beside the hole")

// reaches assumes the reach of the cuts at piers that do not say it.
func (r *reader) reaches() {
	for _, name := range r.job.Ground.CutNames() {
		c, path := r.job.Ground.Cuts[name], join(join("ground.cut", name), "reach")
		if _, given := r.given[path]; given || len(c.Piers) == 0 {
			continue
		}
		text := cutReach.text(r.job.Units)
		c.Reach, _ = measure.ParseLengthIn(text, 0)
		r.job.Ground.Cuts[name] = c
		r.entries["ground.cut.*.reach"] = append(r.entries["ground.cut.*.reach"], Entry{Path: path, Text: text, Value: c.Reach, Means: "from the centre of each pier of this cut to its edge", Origin: figure.Assumed, Source: cutReach.source(r.job.Units)})
	}
}

func cutKeys() []Key {
	put := func(change func(*Cut, value)) func(*Job, value) {
		return func(j *Job, v value) {
			c := j.Ground.Cuts[v.names[0]]
			change(&c, v)
			j.Ground.Cuts = with(j.Ground.Cuts, v.names[0], c)
		}
	}
	key := func(name string, kind Kind, means string, change func(*Cut, value)) Key {
		return Key{Path: "ground.cut.*." + name, Stars: []string{"cut"}, Kind: kind, Means: means, put: put(change)}
	}
	reach := key("reach", Length, "from the centre of each pier of this cut to its edge", func(c *Cut, v value) { c.Reach = v.length })
	reach.Default = cutReach
	return []Key{
		key("to", Height, "height over the bench mark's datum down to which the ground is cut; it is read before the cut, and so is the bar", func(c *Cut, v value) { c.To = &v.length }),
		key("by", Length, "depth by which the ground is cut, instead of a height", func(c *Cut, v value) { c.By = v.length }),
		key("piers", PierList, "piers round which the ground is cut, each in a square", func(c *Cut, v value) { c.Piers = v.piers }),
		reach,
		key("x", Height, "nearer end of a cut over a rectangle, along the beams from the frame end by A1", func(c *Cut, v value) { c.X = v.length }),
		key("y", Height, "nearer side of a cut over a rectangle, across the beams from the side of line A", func(c *Cut, v value) { c.Y = v.length }),
		key("length", Length, "size of the rectangle along the beams", func(c *Cut, v value) { c.Length = v.length }),
		key("width", Length, "size of the rectangle across the beams", func(c *Cut, v value) { c.Width = v.length }),
	}
}

const pierListExample = "[A1, B1]"

// readPiers takes a list of pier names.
func readPiers(r *reader, path string, n *node, v *value) bool {
	all := r.faults.Len()
	if len(n.items) == 0 {
		r.wrong(path, n.at, "the list of piers is empty", "write them like this: "+pierListExample)
	}
	for _, item := range n.items {
		switch {
		case item.shape != scalarShape || !pierName.MatchString(item.text):
			r.wrong(path, item.at, fmt.Sprintf("%q is not a pier", item.text), "write piers by line and number: "+pierListExample)
		case slices.Contains(v.piers, item.text):
			r.wrong(path, item.at, fmt.Sprintf("%q stands twice", item.text), "keep one of the two")
		default:
			v.piers = append(v.piers, item.text)
		}
	}
	return r.faults.Len() == all
}

// checkCuts sees that each cut says how deep and where, each in one way, and
// reaches over the holes.
func (j *Job) checkCuts(r *reader) {
	names := j.Ground.CutNames()
	for path := range r.tables { // one whose values are all missing or wrong as well
		if name, ours := strings.CutPrefix(path, "ground.cut."); ours && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		path := join("ground.cut", name)
		has := func(key string) bool { _, given := r.given[join(path, key)]; return given }
		count := func(keys ...string) int { return len(slices.DeleteFunc(keys, func(k string) bool { return !has(k) })) }
		const deep, where = `write by: 6" for a depth, or to: 1' 8" for the height that is left`, `write piers: [A1, B1], or the rectangle: x, y, length and width`
		switch {
		case has("to") && has("by"):
			r.wrong(path, r.tables[path], "both a height and a depth are given", "keep one: "+deep)
		case !has("to") && !has("by"):
			r.wrong(path, r.tables[path], "the cut has no depth", deep)
		}
		switch rectangle := count("x", "y", "length", "width"); {
		case has("piers") && rectangle > 0:
			r.wrong(path, r.tables[path], "both piers and a rectangle are given", "keep one: "+where+"; a second cut may stand beside it")
		case !has("piers") && rectangle < 4:
			r.wrong(path, r.tables[path], "the cut has no place", where)
		case !has("piers") && has("reach"):
			r.wrong(join(path, "reach"), r.at(join(path, "reach")), "the reach goes with piers; a rectangle has its own size", "leave it out")
		}
		c, half := j.Ground.Cuts[name], j.Block.Base/2+j.Stone.Margin
		if len(c.Piers) > 0 && c.Reach < half && !r.spoilt(join(path, "reach")) {
			r.wrong(join(path, "reach"), r.at(join(path, "reach")), fmt.Sprintf("a cut of %s from the centre does not reach over the hole, %s", c.Reach.Print(j.Style()), half.Print(j.Style())), "write "+half.Print(j.Style())+" or more")
		}
	}
}

// cuts reports cuts at piers that the frame does not have.
func (c *pierCheck) cuts() {
	for _, name := range c.job.Ground.CutNames() {
		path := join(join("ground.cut", name), "piers")
		for _, pier := range c.job.Ground.Cuts[name].Piers {
			if !c.piers[pier] {
				c.faults.Add(fault.Fault{At: c.job.At(path), Path: path, Wrong: fmt.Sprintf("%q is not a pier of this frame", pier), Remedy: c.extent()})
			}
		}
	}
}
