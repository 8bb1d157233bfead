package sizing

import (
	"fmt"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/strength"
)

// change is one thing that could be done.
type change struct {
	key, value, words string
	job               *job.Job
	cost              string  // in words, where the list of prices cannot tell
	rank              float64 // what it counts for besides its price when changes are put in order
	moves             bool    // piers stand elsewhere though they keep their names
}

// further is how many steps of each kind of change are tried.
const further = 3

// changes lists deeper sizes, closer joists, more lines, piers and plies.
func changes(in strength.Input) []change {
	j, w := in.Job, in.Job.Frame
	var all []change
	alter := func(key, value, words string, do func(*job.FrameWish)) {
		copied := *j
		do(&copied.Frame)
		all = append(all, change{key: key, value: value, words: words, job: &copied})
	}
	sizes := openSizes(j)
	for _, next := range deeper(sizes, in.Frame.Sections.Joist) {
		alter("frame.joists.size", next.Size, "deeper joists", func(f *job.FrameWish) {
			if f.Rims.Size == w.Joists.Size {
				f.Rims = deepened(f.Rims, next)
			}
			f.Joists.Section = deepened(f.Joists.Section, next)
		})
	}
	for _, next := range closer(j) {
		alter("frame.joists.spacing", next.String(), "joists closer together", func(f *job.FrameWish) { f.Joists.Spacing = next })
	}
	lines, perLine := len(in.Frame.Lines), in.Frame.PerLine(0)
	for n := 1; n <= further; n++ {
		alter("frame.beams.lines", fmt.Sprint(lines+n), "more beam lines", func(f *job.FrameWish) { f.Beams.Lines = lines + n })
		alter("frame.piers.per_line", fmt.Sprint(perLine+n), "more piers under each line", func(f *job.FrameWish) { f.Piers.PerLine, f.Piers.Spacing = perLine+n, 0 })
		if w.Beams.Width < 3*measure.Inch && w.Beams.Plies+n <= mostPlies {
			alter("frame.beams.plies", fmt.Sprint(w.Beams.Plies+n), "more plies", func(f *job.FrameWish) { f.Beams.Plies += n })
		}
	}
	for _, next := range deeper(sizes, in.Frame.Sections.Beam) {
		alter("frame.beams.size", next.Size, "deeper beams", func(f *job.FrameWish) { f.Beams.Section = deepened(f.Beams.Section, next) })
	}
	return append(all, nearerEdges(in)...)
}

// unpriced puts changes whose price is not known behind those that have one.
const unpriced = 1e6

// nearerEdges lists shorter overhangs, wider blocks and thicker beds.
func nearerEdges(in strength.Input) []change {
	j := in.Job
	var all []change
	alter := func(c change, do func(*job.Job)) {
		copied := *j
		do(&copied)
		c.job = &copied
		all = append(all, c)
	}
	step, wider := measure.Inch, 2*measure.Inch
	if j.Units == measure.Metric {
		step, wider = 10*measure.Millimetre, 50*measure.Millimetre
	}
	for n := measure.Length(1); n <= further; n++ {
		if inset := j.Frame.Beams.Inset; inset >= step {
			less := (inset * (further - n) / further).RoundDownTo(step)
			alter(change{key: "frame.beams.inset", value: less.Print(j.Style()), words: "outer beams nearer the sides", rank: float64(n) * 1e-6, moves: true}, func(k *job.Job) { k.Frame.Beams.Inset = less })
		}
		if first := j.Frame.Piers.First; first != nil && *first > in.Frame.Sections.Post.Width/2 {
			least := in.Frame.Sections.Post.Width / 2
			less := max(least, (*first * (further - n) / further).RoundDownTo(step))
			alter(change{key: "frame.piers.first", value: less.Print(j.Style()), words: "first and last piers nearer the beam ends", rank: float64(n) * 1e-6, moves: true}, func(k *job.Job) {
				k.Frame.Piers.First = &less
				if last := k.Frame.Piers.Last; last != nil {
					nearer := min(*last, less)
					k.Frame.Piers.Last = &nearer
				}
			})
		}
		base, bed := j.Block.Base+n*wider, min(j.Stone.Least+n*wider, j.Stone.Most)
		alter(change{key: "block.base", value: base.Print(j.Style()), words: "blocks with a wider base, where they can be had", cost: "by the maker's list",
			rank: unpriced + float64(n)}, func(k *job.Job) { k.Block.Base = base })
		if bed > j.Stone.Least && j.Stone.Margin*2 > j.Stone.Least {
			alter(change{key: "stone.least", value: bed.Print(j.Style()), words: "a thicker bed", cost: "more digging and stone", rank: unpriced + float64(n)}, func(k *job.Job) { k.Stone.Least = bed })
		}
	}
	return all
}

// deeper returns the next deeper sizes of the same width.
func deeper(sizes []job.Section, s job.Section) []job.Section {
	var next []job.Section
	for _, size := range sizes { // rising
		if size.Width == s.Width && size.Depth > s.Depth && len(next) < further {
			next = append(next, size)
		}
	}
	return next
}

func deepened(s, next job.Section) job.Section {
	s.Size, s.Depth = next.Size, next.Depth
	return s
}

// closer returns the next closer usual spacings.
func closer(j *job.Job) []measure.Length {
	spacings := imperialSpacings
	if j.Units == measure.Metric {
		spacings = metricSpacings
	}
	var next []measure.Length
	for i := len(spacings) - 1; i >= 0; i-- {
		if spacings[i] < j.Frame.Joists.Spacing {
			next = append(next, spacings[i])
		}
	}
	return next
}
