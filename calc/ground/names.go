package ground

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
)

// unknownNames reports readings, probes, exceptions and measurements at places
// that the frame does not have. The reader of the job has done so already where
// the file counts its piers; where it leaves them to the program, they are known
// only now.
func unknownNames(j *job.Job, f *frame.Frame) fault.List {
	names := make([]string, len(f.Piers))
	for i, p := range f.Piers {
		names[i] = p.Name
	}
	return j.CheckPiers(names)
}
