package calc

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/frame"
	"pierbook/calc/ground"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Cut is the cutting plan of one section.
type Cut struct {
	Section  job.Section
	Uses     []string // "joists", "rims": what its pieces are for
	Pieces   []cutting.Piece
	Result   *cutting.Result // nil when Trouble says why
	Trouble  string          // why no plan can be made, ready to print
	Estimate bool            // posts are not known yet: every one is taken at its longest

	// Allowance is how much more post the sticks bought must yield in all, so that
	// they are enough nine times in ten where ground is estimated.
	Allowance   measure.Length
	longestPost measure.Length
	proofPieces []cutting.Piece                   // that the proof speaks of, with the allowance in them; nil when Pieces
	prices      map[measure.Length]*measure.Money // of the stock lengths
}

// wanted gathers the pieces of one section.
type wanted struct {
	section  job.Section
	uses     []string
	lengths  []measure.Length
	names    map[measure.Length][]string
	estimate bool
	more     map[string]measure.Length // by post: share of the allowance
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

// gather lists the pieces of the frame by section, the sections in the order
// joists, rims, beams, posts. Without the ground there are no posts among them.
func gather(j *job.Job, f *frame.Frame, g *ground.Ground) []*wanted {
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
	if g == nil {
		return all
	}
	posts := of(f.Sections.Post)
	gatherPosts(posts, j, f, g)
	posts.more = postAllowance(j, g)
	return all
}

// gatherPosts adds the posts that are still to be cut, rounded as they are
// printed, since that is what the saw is set to. A post that is cut already and
// serves, here or at another pier, is not among them, nor one that its seat does
// not allow. Before the heights are known every post is the longest the job
// allows.
func gatherPosts(posts *wanted, j *job.Job, f *frame.Frame, g *ground.Ground) {
	if g.Posts == nil {
		posts.estimate = true
		for _, p := range f.Piers {
			posts.add("posts", j.Frame.Posts.Longest, p.Name)
		}
		return
	}
	for _, p := range g.ToCut() {
		posts.add("posts", p.Wanted.RoundTo(j.Mark()), p.Name)
	}
}

// cut makes the cutting plan of every section.
func cut(j *job.Job, f *frame.Frame, g *ground.Ground) []Cut {
	var cuts []Cut
	for _, w := range gather(j, f, g) {
		if len(w.lengths) == 0 {
			continue
		}
		c := w.cut()
		c.longestPost = j.Frame.Posts.Longest
		c.solve(j)
		c.reserve(j, w)
		cuts = append(cuts, c)
	}
	return cuts
}

// cut lists the pieces by length, the longest first.
func (w *wanted) cut() Cut {
	slices.SortFunc(w.lengths, func(a, b measure.Length) int { return cmp.Compare(b, a) })
	c := Cut{Section: w.section, Uses: w.uses, Estimate: w.estimate}
	for _, length := range w.lengths {
		c.Pieces = append(c.Pieces, cutting.Piece{Length: length, Count: len(w.names[length]), Names: w.names[length]})
	}
	return c
}

func (c *Cut) solve(j *job.Job) {
	result, err := cutting.Plan(c.problem(j))
	if err != nil {
		c.Trouble = fmt.Sprintf("no cutting plan for %s: %s", c.Section.Size, troubleWords(err, j.Style()))
		return
	}
	c.Result = &result
}

// troubleWords says why no plan can be made.
func troubleWords(err error, style measure.Style) string {
	var long *cutting.TooLongError
	switch {
	case errors.As(err, &long):
		return fmt.Sprintf("a piece of %s is longer than every stick that is sold or in hand", long.Piece.Print(style))
	case errors.Is(err, cutting.ErrTooLittle):
		return "the sticks in hand do not yield all the pieces, and none are sold"
	default:
		return err.Error()
	}
}

// manyLengths is from how many different lengths on a plan is taken as it is
// first found, with its bound and gap printed: to prove one for the posts of some
// two hundred piers takes from seconds to a minute.
const manyLengths = 100

// problem is the cutting of this section from what the yard sells and what is
// on hand.
func (c *Cut) problem(j *job.Job) cutting.Problem {
	c.prices = map[measure.Length]*measure.Money{}
	problem := cutting.Problem{Pieces: c.Pieces, Kerf: j.Yard.Kerf, Trim: j.Yard.EndTrim}
	if len(c.Pieces) > manyLengths {
		problem.Nodes, problem.Aims = 1, cutting.LeastCost
	}
	for _, s := range j.Yard.Stock[c.Section.Size] {
		stock := cutting.Stock{Length: s.Length}
		c.prices[s.Length] = s.Price
		if s.Price != nil {
			stock.Price, stock.Priced = int64(*s.Price*100+0.5), true
		}
		problem.Stock = append(problem.Stock, stock)
	}
	for i, length := range inHand(j, c.Section.Size) {
		problem.OnHand = append(problem.OnHand, cutting.Stick{Length: length, Count: 1, Name: fmt.Sprintf("%s in hand, %d", c.Section.Size, i+1)})
	}
	return problem
}

// inHand returns the sticks and offcuts of a size that need not be bought, in
// the order given. Those counted on site are what there is now, and stand in the
// place of those that the yard's file names.
func inHand(j *job.Job, size string) []measure.Length {
	if counted, ok := j.Measured.Stock[size]; ok {
		return counted
	}
	return j.Yard.OnHand[size]
}
