package heights

import (
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// PostState is what is to be done about a post.
type PostState string

// The states of a post.
const (
	Estimate PostState = "estimate" // the seat is not read: do not cut yet
	CutNow   PostState = "cut"      // the seat is read
	Serves   PostState = "serves"   // cut, and near enough to what is wanted to be left alone
	Shim     PostState = "shim"     // cut, and short by no more than a shim makes up
	Trim     PostState = "trim"     // cut, and long: cut it again to length
	Exchange PostState = "exchange" // the post cut for another pier serves here
	CutAnew  PostState = "cut anew" // cut short, and no other post serves
	Unfit    PostState = "unfit"    // the seat asks for a post outside its limits
)

// Post is one post with its length at each stage of its life.
type Post struct {
	Name     string
	Planned  *measure.Length // before anything was measured at the piers, nil when no floor was possible then
	Expected *measure.Length // with the holes as dug and the beams as delivered, nil without a survey
	ToCut    *measure.Length // by the seat as read, nil while it is not
	Cut      *measure.Length // as cut for this pier, nil while it is not
	State    PostState
	Shim     measure.Length // what a shim has to make up
	From     string         // pier whose cut post serves here, empty for its own
	Off      measure.Length // to be taken off that post, or off its own
	Plane    bool           // so little is to be taken off its own that a plane does it
	Ways     []WayOut       // of a post that is short or unfit, in the order to think of them
}

// Length returns how long the post is to be, as far as is known: to cut once the
// seat is read, expected until then.
func (p Post) Length() measure.Length {
	if p.ToCut != nil {
		return *p.ToCut
	}
	return *p.Expected
}

// WayOut is one thing that can be done about a post, with what it brings along.
type WayOut struct {
	Kind     string         // "another pier", "lower floor", "new post", "raise the seat", "lower the seat"
	Pier     string         // the other pier, for "another pier"
	By       measure.Length // what is taken off that post there, the step of the floor, or the move of the seat
	Length   measure.Length // of the new post
	Trims    []string       // piers whose cut posts would have to be cut again
	TooShort []string       // piers whose posts would come out under the shortest
	Blocked  string         // why it cannot be done, empty when it can
}

// posts sets what is cut against what is wanted. A cut post is never asked for
// again: it stays where it serves, or goes to the pier where least is taken off.
func (h *Heights) posts(j *job.Job) []Post {
	list := make([]Post, len(h.Piers))
	for i, p := range h.Piers {
		post := Post{Name: p.Name, State: Estimate}
		if p.Planned != nil {
			planned := p.Planned.Post
			post.Planned = &planned
		}
		if p.Hole != nil {
			expected := p.Hole.Post
			post.Expected = &expected
		}
		if seat := h.Seats.height(p.Name); seat != nil {
			toCut := h.Lines[h.frame.Piers[i].Line].Top - *seat
			post.State, post.ToCut = CutNow, &toCut
		}
		if cut, done := j.Measured.PostsCut[p.Name]; done {
			post.Cut = &cut
			post.State, post.Shim = h.terms.compared(cut, post.Length())
			if post.State == Trim {
				post.Off = cut - post.Length().RoundTo(h.terms.Mark)
				post.Plane = post.Off <= h.terms.Plane
			}
		}
		if post.ToCut != nil && post.State != Serves && !h.terms.fits(*post.ToCut) {
			post.State, post.Shim, post.Off, post.Plane = Unfit, 0, 0, false
		}
		list[i] = post
	}
	h.reuse(list)
	for i := range list {
		list[i].Ways = h.waysOut(list, i)
	}
	return list
}

// fits goes by what a post prints as, halves rounded up, since it is cut to what
// is printed: what prints as a limit fits.
func (t terms) fits(post measure.Length) bool {
	return !t.tooShort(post) && post < t.Longest+t.Mark/2
}

// tooShort holds when a post prints as less than the shortest.
func (t terms) tooShort(post measure.Length) bool {
	return post < t.Shortest-t.Mark/2
}

// compared sorts a cut post by what mends it at its own pier.
func (t terms) compared(cut, wanted measure.Length) (PostState, measure.Length) {
	short := wanted - cut
	switch {
	case short.Abs() <= t.Serves:
		return Serves, 0
	case short < 0:
		return Trim, 0
	case short <= t.Shim:
		return Shim, short
	}
	return CutAnew, 0
}

// What a cut post is worth where it goes: fewest new posts come first, then
// fewest posts moved, then the least length of new posts. Lengths are in
// nanometres, and the posts of a job are together under a kilometre.
const (
	worthOfAPost    = 1_000_000_000_000_000
	worthOfItsPlace = 1_000_000_000_000
)

// reuse sends the cut posts that do not serve where they are to the piers that
// want one: those cut short, and those cut long where that saves a new post. The
// pier's seat must be read. See the worths above for which goes where.
func (h *Heights) reuse(list []Post) {
	var posts, piers []int
	for i, p := range list {
		if p.State == CutAnew || p.State == Trim {
			posts = append(posts, i)
		}
		if p.State == CutAnew || p.State == Trim || p.State == CutNow {
			piers = append(piers, i)
		}
	}
	worth := make([][]int64, len(posts))
	for r, from := range posts {
		worth[r] = make([]int64, len(piers))
		for c, to := range piers {
			if list[to].Length() > *list[from].Cut+h.terms.Serves {
				continue
			}
			worth[r][c] = worthOfAPost + int64(list[to].Length())
			if from == to {
				worth[r][c] += worthOfItsPlace
			}
		}
	}
	for r, c := range pairing(worth) {
		from := posts[r]
		if c >= 0 && piers[c] != from {
			to := &list[piers[c]]
			to.State, to.From, to.Off = Exchange, list[from].Name, max(0, *list[from].Cut-to.Length())
		}
	}
}

// StillToCut returns what is still to be cut: nothing for posts that serve or are
// made to serve, a new post for those cut short.
func (h *Heights) StillToCut() []Post {
	var list []Post
	for _, p := range h.Posts {
		if p.State == CutNow || p.State == CutAnew || p.State == Estimate {
			list = append(list, p)
		}
	}
	return list
}
