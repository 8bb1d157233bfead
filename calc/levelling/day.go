package levelling

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Closing is the name under which the readings of one day book the bench mark
// read again at the end.
const Closing = "close"

// Day returns the two readings on the bench mark among rod readings that were
// all taken from one set-up of one day: the first, and the one at the end, nil
// when it was not taken. It reports a fault when the first is missing, since
// the heights hang on it, and when the two differ by more than one set-up may.
func Day(j *job.Job, readings map[string]measure.Length, path string) (bench measure.Length, again *measure.Length, faults fault.List) {
	if len(readings) == 0 {
		return 0, nil, faults
	}
	bench, read := readings[BenchMark]
	if !read {
		faults.Add(fault.Fault{At: j.At(path), Path: path, Wrong: "the bench mark was not read that day",
			Remedy: "give its reading with the others, as bench_mark: the heights hang on it"})
	}
	if last, twice := readings[Closing]; twice {
		again = &last
		if allowed := j.Ground.CloseTo; read && (last-bench).Abs() > allowed {
			at := path + "." + Closing
			faults.Add(fault.Fault{At: j.At(at), Path: at,
				Wrong: fmt.Sprintf("the bench mark reads %s at the start and %s at the end; one set-up may differ by %s",
					measure.Reading(bench).Print(j.Style()), measure.Reading(last).Print(j.Style()), allowed.Print(j.Style())),
				Remedy: "the instrument moved: read all of them again"})
		}
	}
	return bench, again, faults
}
