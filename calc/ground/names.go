package ground

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
)

// unknownNames reports readings, probes and exceptions at places that do not
// exist.
func unknownNames(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	piers := map[string]bool{}
	for _, p := range f.Piers {
		piers[p.Name] = true
	}
	for _, sights := range j.Ground.SetUps {
		for _, sight := range sights {
			_, spot := j.Ground.Spots[sight.Point]
			if sight.Point != BenchMark && !spot && !piers[sight.Point] {
				faults.Add(fault.Fault{At: sight.At, Path: "ground.sights",
					Wrong:  fmt.Sprintf("%q is neither a pier of the frame nor a spot", sight.Point),
					Remedy: orSpot(f, sight.Point)})
			}
		}
	}
	check := func(path string, names []string) {
		readings := path == "measured.seats" || path == "measured.finished"
		for _, name := range names {
			if bench := name == BenchMark || name == Closing; !piers[name] && !(bench && readings) {
				at := path + "." + name
				faults.Add(fault.Fault{At: j.At(at), Path: at,
					Wrong: fmt.Sprintf("%q is not a pier of the frame", name), Remedy: piersInWords(f)})
			}
		}
	}
	check("ground.probes", sortedKeys(j.Ground.Probes))
	check("piers", sortedKeys(j.Piers))
	check("measured.holes", sortedKeys(j.Measured.Holes))
	check("measured.seats", sortedKeys(j.Measured.Seats))
	check("measured.posts_cut", sortedKeys(j.Measured.PostsCut))
	check("measured.finished", sortedKeys(j.Measured.Finished))
	for _, line := range sortedKeys(j.Measured.Timber.Beams) {
		if !slices.ContainsFunc(f.Lines, func(l frame.Line) bool { return l.Name == line }) {
			at := "measured.timber.beams." + line
			faults.Add(fault.Fault{At: j.At(at), Path: at,
				Wrong: fmt.Sprintf("%q is not a beam line", line), Remedy: "the beam lines are " + linesInWords(f)})
		}
	}
	return faults
}

func linesInWords(f *frame.Frame) string {
	names := make([]string, len(f.Lines))
	for i, line := range f.Lines {
		names[i] = line.Name
	}
	return strings.Join(names, ", ")
}

// orSpot says what names would do, the nearest first.
func orSpot(f *frame.Frame, name string) string {
	for _, p := range f.Piers {
		if strings.EqualFold(p.Name, name) {
			return fmt.Sprintf("did you mean %s?", p.Name)
		}
	}
	return piersInWords(f) + `; or give the place under ground.spots, such as ` + name + `: turning_point`
}

// piersInWords lists the piers line by line: "the piers are A1 to A5, B1 to B5".
func piersInWords(f *frame.Frame) string {
	var lines []string
	for i, line := range f.Lines {
		if n := f.PerLine(i); n > 0 {
			lines = append(lines, fmt.Sprintf("%s1 to %s%d", line.Name, line.Name, n))
		}
	}
	return "the piers are " + strings.Join(lines, ", ")
}

// sortedKeys returns the keys of m in order, so that the same job gives the same bytes.
func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
