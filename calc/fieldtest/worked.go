package fieldtest

import (
	"pierbook/calc/earthwork"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// Worked is a job worked from the readings to the holes.
type Worked struct {
	Progress job.Progress
	Book     *levelling.Book
	*terrain.Ground
	*heights.Heights
	*earthwork.Earthwork

	frame *frame.Frame
}

// Try works a job on a frame, in the order in which the program does.
func Try(j *job.Job, f *frame.Frame) (*Worked, fault.List) {
	names := make([]string, len(f.Piers))
	for i, p := range f.Piers {
		names[i] = p.Name
	}
	faults := j.CheckPiers(names)
	w := &Worked{Progress: j.Progress(), frame: f}
	if faults.Empty() {
		w.Book, faults = levelling.Reduce(j)
	}
	if faults.Empty() {
		w.Ground, faults = terrain.Read(j, f, w.Book)
	}
	if faults.Empty() {
		w.Heights, faults = heights.Work(j, f, w.Ground)
	}
	if faults.Empty() {
		w.Earthwork = earthwork.Work(j, f, w.Ground, w.Piers)
	}
	return w, faults
}

// T is what a test, a benchmark and a property test have in common.
type T interface {
	Errorf(format string, args ...any)
	FailNow()
}

// Work works a job and stops the test at a fault.
func Work(t T, j *job.Job, f *frame.Frame) *Worked {
	w, faults := Try(j, f)
	if err := faults.Err(); err != nil {
		t.Errorf("%v", err)
		t.FailNow()
	}
	return w
}

// Pier returns a pier of the job; a test that asks for another stops.
func Pier(t T, w *Worked, name string) heights.PierHeights {
	p, ok := w.Pier(name)
	if !ok {
		t.Errorf("no pier %s", name)
		t.FailNow()
	}
	return p
}

// Figures returns the figures of all packages.
func (w *Worked) Figures(j *job.Job) []figure.Figure {
	list := w.Book.Figures(j)
	list = append(list, w.Ground.Figures(j, w.frame, w.Book)...)
	list = append(list, w.Heights.Figures(j)...)
	list = append(list, w.Earthwork.Figures(j, w.Ground, w.Piers)...)
	return append(list, levelling.InstrumentFigures(j, w.frame)...)
}

// SeatsRead is the sample with its floor fixed and every seat read a little off
// its plan. The instrument stands 49.5 over the bench mark that day.
func SeatsRead(t T, off map[string]float64) *job.Job {
	j := SampleJob()
	plan := Work(t, j, SampleFrame())
	j.Platform.Floor = job.Floor{Height: plan.Floor.Height}
	j.Measured.Seats = map[string]measure.Length{"bench_mark": In(49.5), "close": In(49.5)}
	for _, p := range plan.Piers {
		j.Measured.Seats[p.Name] = In(49.5) - p.Hole.Seat - In(off[p.Name])
	}
	return j
}
