package calc

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// pierNames returns the names of the piers, line by line, for the check of all
// that the job says of them: where it leaves their number to the program, they
// are known only once the frame is laid out.
func pierNames(f *frame.Frame) []string {
	names := make([]string, len(f.Piers))
	for i, p := range f.Piers {
		names[i] = p.Name
	}
	return names
}

// unknownSteps reports hours for steps that there are not.
func unknownSteps(j *job.Job) fault.List {
	var faults fault.List
	steps := trade.StepNames()
	for path, hours := range map[string]map[string]measure.Hours{"crew.rates": j.Crew.Rates, "measured.hours": j.Measured.Hours} {
		for _, name := range slices.Sorted(maps.Keys(hours)) {
			if !slices.Contains(steps, name) {
				faults.Add(NotAmong(j, path+"."+name, name, "a step of the work", steps))
			}
		}
	}
	return faults
}

// NotAmong is the fault of a name that must be one of several.
func NotAmong(j *job.Job, path, name, what string, known []string) fault.Fault {
	remedy := "write one of " + strings.Join(known, ", ")
	if near := fault.Nearest(name, known); near != "" {
		remedy = "did you mean " + near + "?"
	}
	return fault.Fault{At: j.NameAt(path), Path: path, Wrong: fmt.Sprintf("%q is not %s", name, what), Remedy: remedy}
}
