package job

import (
	"fmt"
	"iter"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// LineLetters are the names of the beam lines, without I and O, which look like
// figures.
const LineLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

// pierNames returns the names of all piers when the job says how many lines and
// piers there are, and nil when that is still to be worked out.
func (j *Job) pierNames() []string {
	lines, perLine := j.Frame.Beams.Lines, j.Frame.Piers.PerLine
	if lines < 1 || lines > len(LineLetters) || perLine < 1 || j.Frame.Piers.Spacing != 0 {
		return nil
	}
	var names []string
	for _, letter := range LineLetters[:lines] {
		for n := range perLine {
			names = append(names, string(letter)+strconv.Itoa(n+1))
		}
	}
	return names
}

// CheckPiers reports every reading, probe, exception, seat, post and side at a
// pier or line that is not among names, the piers of the frame, line by line.
// [Read] does it when the file says how many piers there are; otherwise it is
// to be called once the frame is laid out.
func (j *Job) CheckPiers(names []string) fault.List {
	c := pierCheck{job: j, names: names, piers: make(map[string]bool), lines: make(map[string]bool)}
	for _, name := range names {
		c.piers[name] = true
		c.lines[name[:1]] = true
		c.most = max(c.most, number(name))
		c.last = max(c.last, name[:1])
	}
	if len(names) == 0 {
		return c.faults
	}
	c.sights()
	checkAt(&c, "ground.probes", j.Ground.Probes)
	checkAt(&c, "piers", j.Piers)
	checkAt(&c, "measured.holes", j.Measured.Holes)
	checkAt(&c, "measured.seats", j.Measured.Seats)
	checkAt(&c, "measured.posts_cut", j.Measured.PostsCut)
	checkAt(&c, "measured.finished", j.Measured.Finished)
	c.spots()
	c.cuts()
	c.sides("measured.strings", j.Measured.Strings)
	c.sides("measured.frame", j.Measured.FrameSides)
	c.beams()
	c.door()
	return c.faults
}

// NamedPiers returns how many lines, and piers under a line, the names in the
// readings, probes, exceptions and measurements take. A frame that is left open
// has at least these: they were read on piers that a binder laid out.
func (j *Job) NamedPiers() (lines, perLine int) {
	take := func(name string) {
		if pierName.MatchString(name) {
			lines, perLine = max(lines, strings.Index(LineLetters, name[:1])+1), max(perLine, number(name))
		}
	}
	for _, sights := range j.Ground.SetUps {
		for _, s := range sights {
			if _, spot := j.Ground.Spots[s.Point]; !spot {
				take(s.Point)
			}
		}
	}
	for _, cut := range j.Ground.Cuts {
		for _, name := range cut.Piers {
			take(name)
		}
	}
	for _, names := range []iter.Seq[string]{maps.Keys(j.Ground.Probes), maps.Keys(j.Piers), maps.Keys(j.Measured.Holes),
		maps.Keys(j.Measured.Seats), maps.Keys(j.Measured.PostsCut), maps.Keys(j.Measured.Finished)} {
		for name := range names {
			take(name)
		}
	}
	return lines, perLine
}

type pierCheck struct {
	job          *Job
	names        []string
	piers, lines map[string]bool
	last         string // letter of the last line
	most         int    // piers under a line
	faults       fault.List
}

func number(pier string) int {
	n, _ := strconv.Atoi(pier[1:])
	return n
}

func (c *pierCheck) wrong(path string, at fault.Place, wrong, remedy string) {
	c.faults.Add(fault.Fault{At: at, Path: path, Wrong: wrong, Remedy: remedy})
}

func (c *pierCheck) extent() string {
	return fmt.Sprintf("the piers run from %s to %s", c.names[0], c.last+strconv.Itoa(c.most))
}

func (c *pierCheck) sights() {
	for i, sights := range c.job.Ground.SetUps {
		for _, s := range sights {
			_, spot := c.job.Ground.Spots[s.Point]
			if spot || s.Point == benchMark || c.piers[s.Point] {
				continue
			}
			remedy := c.extent() + "; other points are named under ground.spots first"
			if near := fault.Nearest(s.Point, append(slices.Sorted(maps.Keys(c.job.Ground.Spots)), benchMark)); near != "" && !pierName.MatchString(s.Point) {
				remedy = "did you mean " + near + "? " + remedy
			}
			c.wrong(fmt.Sprintf("ground.sights.%d", i+1), s.At, fmt.Sprintf("%q is neither a pier nor a spot", s.Point), remedy)
		}
	}
}

func checkAt[V any](c *pierCheck, path string, values map[string]V) {
	for _, name := range slices.Sorted(maps.Keys(values)) {
		if c.piers[name] || name == benchMark || name == closing {
			continue
		}
		at := join(path, name)
		c.wrong(at, c.job.At(at), fmt.Sprintf("%q is not a pier of this frame", name), c.extent())
	}
}

// spots reports spots with the name of a pier.
func (c *pierCheck) spots() {
	for _, name := range slices.Sorted(maps.Keys(c.job.Ground.Spots)) {
		if c.piers[name] {
			at := join("ground.spots", name)
			c.wrong(at, c.job.At(at), fmt.Sprintf("%q is the name of a pier", name), "give the spot another name")
		}
	}
}

var sideEnds = regexp.MustCompile(`^(.+)-(.+)$`)

// sides reports lengths that do not run between two corners of the frame, and
// the same length given in both directions.
func (c *pierCheck) sides(path string, lengths map[string]measure.Length) {
	last := strconv.Itoa(c.most)
	corners := []string{"A1", "A" + last, c.last + last, c.last + "1"}
	for _, name := range slices.Sorted(maps.Keys(lengths)) {
		at, ends := join(path, name), sideEnds.FindStringSubmatch(name)
		switch {
		case len(ends) != 3 || ends[1] == ends[2] || !slices.Contains(corners, ends[1]) || !slices.Contains(corners, ends[2]):
			c.wrong(at, c.job.At(at), fmt.Sprintf("%q does not run between two corners", name), fmt.Sprintf("the corners are named by their piers: %s, %s, %s, %s", corners[0], corners[1], corners[2], corners[3]))
		case ends[1] > ends[2]:
			if _, twice := lengths[ends[2]+"-"+ends[1]]; twice {
				c.wrong(at, c.job.At(at), fmt.Sprintf("%q stands twice, once from each end", name), "keep one of the two")
			}
		}
	}
}

func (c *pierCheck) beams() {
	for _, name := range slices.Sorted(maps.Keys(c.job.Measured.Timber.Beams)) {
		if !c.lines[name] {
			at := join("measured.timber.beams", name)
			c.wrong(at, c.job.At(at), fmt.Sprintf("%q is not a beam line of this frame", name), "the lines run from A to "+c.last)
		}
	}
}

// door reports a door on a line or row that is not a side of the frame.
func (c *pierCheck) door() {
	door, path := c.job.Platform.Door, "platform.door.side"
	if door == nil || slices.Contains([]string{"A", c.last, "1", strconv.Itoa(c.most)}, door.Side) {
		return
	}
	if lineName.MatchString(door.Side) || plainCount.MatchString(door.Side) {
		c.wrong(path, c.job.At(path), fmt.Sprintf("%q is not a side of this frame", door.Side), fmt.Sprintf("the sides are A, %s, 1 and %d", c.last, c.most))
	}
}
