package heights

import (
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// used returns the piers as they are to be built now: holes as dug, seats as
// set, build-up by the beams that were delivered.
func (h *Heights) used(j *job.Job, f *frame.Frame) []place {
	list := h.dug(j)
	for i, p := range f.Piers {
		list[i].buildUp = lineBuildUp(j, f, p.Line)
		list[i].seat = h.Seats.height(p.Name)
	}
	return list
}

// dug returns the piers as planned, with the holes that were dug.
func (h *Heights) dug(j *job.Job) []place {
	list := h.planned(j)
	for i, p := range list {
		if hole, dug := j.Measured.Holes[p.name]; dug {
			list[i].dug = &hole
		}
	}
	return list
}

// lineBuildUp returns the build-up on one beam line, to the mark it prints to, with its beam's measured
// depth and the joists' where they are known.
func lineBuildUp(j *job.Job, f *frame.Frame, line int) measure.Length {
	b := f.BuildUp
	if depth, known := j.Measured.Timber.Beams[f.Lines[line].Name]; known {
		b.Beam = depth
	}
	if j.Measured.Timber.Joists != nil && b.Joist != 0 {
		b.Joist = *j.Measured.Timber.Joists
	}
	return b.Total().RoundTo(j.Mark())
}

// LinePosts is what the posts of one beam line have in common.
type LinePosts struct {
	Name    string
	BuildUp measure.Length // with measured depths
	Top     measure.Length // height of the tops of its posts
	Printed measure.Length // the number that post = printed + reading in the seat − the day's bench-mark reading starts from
}

// lines returns the post tops of each beam line. Printed is the top over the
// bench mark, since with instrument = bench mark + its reading
//
//	post = top − (instrument − reading) = (top − bench mark) + reading − bench-mark reading
//
// Tops stand on whole marks over the bench mark, so that the sum on paper is the
// post of the next issue to the last mark.
func (h *Heights) lines(j *job.Job, f *frame.Frame, floor measure.Length) []LinePosts {
	var list []LinePosts
	for i, line := range f.Lines {
		buildUp := lineBuildUp(j, f, i)
		top := h.terms.tops(floor, buildUp)
		list = append(list, LinePosts{Name: line.Name, BuildUp: buildUp, Top: top, Printed: top - j.Ground.BenchMark.Height})
	}
	return list
}

// setSeats puts the seats that were read in the place of the expected ones.
func (h *Heights) setSeats() {
	if h.Seats == nil {
		return
	}
	for i := range h.Seats.Read {
		read := &h.Seats.Read[i]
		k := h.index[read.Name]
		pier := &h.Piers[k]
		read.Expected = pier.Expected.Seat
		pier.Hole.Seat = read.Height
		pier.Hole.Post = h.Lines[h.frame.Piers[k].Line].Top - read.Height
	}
}
