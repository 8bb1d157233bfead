package statics

import (
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Height is how tall one pier stands.
type Height struct {
	Post  measure.Length // between the seat and the cap
	Dig   measure.Length // below the ground
	Stone measure.Length // compacted bed under the block
}

// PostHeights are how tall the piers stand, with what stands in for those that are
// not known: the longest post allowed and the least dig and stone, or a pier's
// own bed.
type PostHeights struct {
	Known map[string]Height // by pier
	Job   *job.Job
}

// At returns the height of a pier.
func (h PostHeights) At(pier string) Height {
	if known, ok := h.Known[pier]; ok {
		return known
	}
	stand := Height{Post: h.Job.Frame.Posts.Longest, Stone: h.Job.Stone.Least, Dig: h.Job.Dig.Least}
	if bed := h.Job.Piers[pier].Bed; bed != nil {
		stand.Stone = *bed
	}
	return stand
}

// TallestPost returns the longest post of a frame.
func (h PostHeights) TallestPost(f *frame.Frame) measure.Length {
	longest := measure.Length(0)
	for _, p := range f.Piers {
		longest = max(longest, h.At(p.Name).Post)
	}
	return longest
}

// meanPost returns the mean of the posts of a frame.
func (h PostHeights) meanPost(f *frame.Frame) measure.Length {
	sum := measure.Length(0)
	for _, p := range f.Piers {
		sum += h.At(p.Name).Post
	}
	return sum / measure.Length(max(1, len(f.Piers)))
}
