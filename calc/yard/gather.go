package yard

import (
	"cmp"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// posts is the use of pieces that are planned with an allowance.
const posts = "posts"

// wanted holds the pieces of one section: pieces of one length are cut alike,
// whatever they are for.
type wanted struct {
	section  job.Section
	uses     []string
	lengths  []measure.Length
	names    map[measure.Length][]string
	estimate bool
}

func (w *wanted) add(use string, length measure.Length, name string) {
	if !slices.Contains(w.uses, use) {
		w.uses = append(w.uses, use)
	}
	if _, seen := w.names[length]; !seen {
		w.lengths = append(w.lengths, length)
	}
	w.names[length] = append(w.names[length], name)
}

// List returns the pieces of the frame by section, in the order joists, rims,
// beams, posts, and by length, the longest first; none of them has a plan yet.
// Without the ground there are no posts among them.
func List(j *job.Job, f *frame.Frame, g *heights.Heights) []Cut {
	var all []*wanted
	of := func(s job.Section) *wanted {
		for _, w := range all {
			if w.section.Size == s.Size && w.section.Width == s.Width && w.section.Depth == s.Depth {
				return w
			}
		}
		s.Plies = 1
		w := &wanted{section: s, names: map[measure.Length][]string{}}
		all = append(all, w)
		return w
	}
	joists := of(f.Sections.Joist)
	for _, piece := range f.Joists {
		joists.add("joists", piece.Long(), piece.Name)
	}
	for _, b := range f.Blocking {
		joists.add("blocking", b.To-b.From, b.Name)
	}
	for _, r := range f.Rims {
		for _, p := range r.Pieces {
			of(f.Sections.Rim).add("rims", p.Long(), p.Name)
		}
	}
	for _, line := range f.Lines {
		for _, ply := range line.Plies {
			for _, p := range ply.Pieces {
				of(f.Sections.Beam).add("beams", p.Long(), p.Name)
			}
		}
	}
	if g != nil {
		of(f.Sections.Post).addPosts(j, f, g)
	}
	var cuts []Cut
	for _, w := range all {
		if len(w.lengths) > 0 {
			cuts = append(cuts, w.cut(j))
		}
	}
	return cuts
}

// addPosts adds the posts that are still to be cut, rounded as they are
// printed, since that is what the saw is set to. A post that is cut already and
// serves, here or at another pier, is not among them, nor one that its seat does
// not allow. Before the heights are known every post is the longest the job
// allows.
func (w *wanted) addPosts(j *job.Job, f *frame.Frame, g *heights.Heights) {
	if g.Posts == nil {
		w.estimate = true
		for _, p := range f.Piers {
			w.add(posts, j.Frame.Posts.Longest, p.Name)
		}
		return
	}
	for _, p := range g.StillToCut() {
		w.add(posts, p.Length().RoundTo(j.Mark()), p.Name)
	}
}

// cut lists the pieces by length, the longest first.
func (w *wanted) cut(j *job.Job) Cut {
	slices.SortFunc(w.lengths, func(a, b measure.Length) int { return cmp.Compare(b, a) })
	c := Cut{Section: w.section, Uses: w.uses, Estimate: w.estimate, longestPost: j.Frame.Posts.Longest}
	for _, length := range w.lengths {
		c.Pieces = append(c.Pieces, cutting.Piece{Length: length, Count: len(w.names[length]), Names: w.names[length]})
	}
	return c
}
