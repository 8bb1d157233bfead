package heights

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// withoutSurvey makes of a job without readings of the ground what can be made
// of it. With every seat read under a floor whose height is given, the posts
// follow from the seats alone:
//
//	post = floor − build-up of the line − seat
//
// The holes, the stone and the clearance over the ground stay unknown. Anything
// less is a fault, since readings would be lost without a word.
func (h *Heights) withoutSurvey(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	if h.terms.Given == nil || !allSeats(j, f) {
		faults.Join(lost(j))
		return faults
	}
	h.Seats, faults = readSeats(j, f)
	if !faults.Empty() {
		return faults
	}
	h.Lines = h.lines(j, f, *h.terms.Given)
	if faults = h.nothingLeft(j); !faults.Empty() {
		return faults
	}
	h.Posts = h.posts(j)
	built, bad := readFinished(j, f, *h.terms.Given)
	h.AsBuilt = built
	faults.Join(bad)
	return faults
}

// allSeats holds when the seat of every pier was read, so that no post hangs on
// ground nobody knows.
func allSeats(j *job.Job, f *frame.Frame) bool {
	for _, p := range f.Piers {
		if _, read := j.Measured.Seats[p.Name]; !read {
			return false
		}
	}
	return true
}

// lost reports readings of which nothing can be made.
func lost(j *job.Job) fault.List {
	var faults fault.List
	for _, day := range []struct {
		path string
		read bool
	}{{"measured.seats", len(j.Measured.Seats) > 0}, {"measured.finished", len(j.Measured.Finished) > 0}} {
		if day.read {
			faults.Add(fault.Fault{At: j.At(day.path), Path: day.path, Wrong: "read, but the file holds no reading of the ground before the work",
				Remedy: "put the level survey under ground.sights; or, for the posts alone, read the seat of every pier and give platform.floor.height"})
		}
	}
	return faults
}

// PostOf returns the length of the post at a pier and whether it is known: from
// the hole of the plan, or from the seat alone where there was no survey.
func (h *Heights) PostOf(pier string) (measure.Length, bool) {
	if p, ok := h.Pier(pier); ok && p.Hole != nil {
		return p.Hole.Post, true
	}
	for _, post := range h.Posts {
		if post.Name == pier {
			return post.Length(), true
		}
	}
	return 0, false
}
