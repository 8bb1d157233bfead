package calc

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// stage is a part of the work whose end shows in the readings.
type stage struct {
	hold string   // the step whose hold point comes next while this is not done
	what string   // what it is in a list of what has been done
	all  string   // what to do while nothing of it is done
	rest string   // what to do while some of it is
	left []string // piers at which it is not done
}

// stages returns what is done at the piers and what is left, in the order of the
// work. A seat that is read needs no hole written down any more, a measured frame
// no seat and no post, and a finished floor none of them.
func (p *Plan) stages() []stage {
	m, past := p.Job.Measured, p.Job.Progress()
	framed := past == job.FrameMeasured || past == job.AsBuilt
	left := func(done func(i int, pier string) bool) []string {
		var names []string
		for i, pier := range p.Frame.Piers {
			if !done(i, pier.Name) {
				names = append(names, pier.Name)
			}
		}
		return names
	}
	read := func(readings map[string]measure.Length, pier string) bool { _, ok := readings[pier]; return ok }
	return []stage{
		{hold: "dig", what: "holes", all: "Dig the holes, and write down how deep each is and what was found.", rest: "Dig the other holes",
			left: left(func(_ int, pier string) bool {
				_, dug := m.Holes[pier]
				return dug || framed || read(m.Seats, pier) || read(m.PostsCut, pier)
			})},
		{hold: "stone", what: "seats", all: "Lay the beds, set the blocks and read every seat.", rest: "Lay the beds, set the blocks and read the seats",
			left: left(func(_ int, pier string) bool { return framed || read(m.Seats, pier) })},
		{hold: "posts", what: "posts", all: "Cut the posts.", rest: "Cut or mend the posts",
			left: left(func(i int, pier string) bool {
				if p.Heights.Posts == nil {
					return framed || read(m.PostsCut, pier)
				}
				state := p.Heights.Posts[i].State
				return framed || state == heights.Serves || state == heights.Shim
			})},
		{hold: "posts", what: "frame", all: "Set posts, caps and beams, square the frame, and measure its sides and diagonals.",
			left: left(func(int, string) bool { return framed })},
		{hold: "ground-cloth", what: "floor", all: "Set the joists, lay the floor, and read it over every pier.", rest: "Read the finished floor",
			left: left(func(_ int, pier string) bool { return read(m.Finished, pier) })},
	}
}

// nextStage returns the first stage that is not done everywhere, nil after the
// last.
func (p *Plan) nextStage() *stage {
	if past := p.Job.Progress(); past == job.Planned && len(p.Job.Measured.Seats) == 0 {
		return &stage{hold: "survey", all: "Read the ground.", left: make([]string, len(p.Frame.Piers))}
	}
	for _, s := range p.stages() {
		if len(s.left) > 0 {
			return &s
		}
	}
	return nil
}

// next says what is to be done next. Nothing goes on while something stops it.
func (p *Plan) next() string {
	s := p.nextStage()
	switch {
	case s == nil:
		return "Nothing: the floor is built and read. Look after it as the sheet on care says."
	case p.Stop() != "":
		return "Nothing is dug, cut or set before what stops this plan is put right."
	case len(s.left) == len(p.Frame.Piers):
		return s.all
	}
	return s.rest + ": " + few(s.left) + "."
}

// namesListed is how many piers are named before the rest are counted.
const namesListed = 12

func few(names []string) string {
	if more := len(names) - namesListed; more > 1 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:namesListed], ", "), more)
	}
	return strings.Join(names, ", ")
}

// done says what the readings show as done, stage by stage.
func (p *Plan) done() string {
	piers := len(p.Frame.Piers)
	var parts []string
	if p.Job.AnySights() {
		parts = append(parts, fmt.Sprintf("ground read at %d of %d piers", piers-len(p.estimated()), piers))
	}
	for _, s := range p.stages() {
		switch {
		case len(s.left) == piers:
		case len(s.left) == 0 && s.rest == "":
			parts = append(parts, s.what)
		default:
			parts = append(parts, fmt.Sprintf("%s %d of %d", s.what, piers-len(s.left), piers))
		}
	}
	if len(parts) == 0 {
		return "nothing was read yet"
	}
	return strings.Join(parts, "; ")
}

// estimated names the piers whose ground was not read and whose seats are not
// either: from the seat on nobody asks for the ground.
func (p *Plan) estimated() []string {
	var names []string
	for _, pier := range p.Heights.Piers {
		if _, seat := p.Job.Measured.Seats[pier.Name]; pier.Level != nil && !pier.Level.Read && !seat {
			names = append(names, pier.Name)
		}
	}
	return names
}

// Estimated says which piers were not read, or "".
func (p *Plan) Estimated() string {
	names := p.estimated()
	if len(names) == 0 || p.Job.Progress() == job.AsBuilt {
		return ""
	}
	return "the ground was not read at " + few(names) + "; it is taken from what lies around"
}

// PostVerdicts says of every post that is cut, or that another one serves for,
// what is to be done about it, in the order of the piers.
func (p *Plan) PostVerdicts() []string {
	var lines []string
	for _, post := range p.Heights.Posts {
		if post.Cut != nil || post.State == heights.Exchange || post.State == heights.Unfit {
			lines = append(lines, post.Name+": "+post.Words(p.Heights.Posts, p.Style)+p.cutFrom(post))
		}
	}
	return lines
}

// cutFrom says how long a new post is, which stick gives it, and where the short
// one goes.
func (p *Plan) cutFrom(post heights.Post) string {
	if post.State != heights.CutAnew {
		return ""
	}
	words := ", " + post.Length().Print(p.Style)
	for _, c := range p.Cuts {
		for _, s := range c.Stick(post.Name) {
			words += ", out of " + c.StickName(s)
		}
	}
	if i := slices.IndexFunc(p.Heights.Posts, func(other heights.Post) bool { return other.From == post.Name }); i >= 0 {
		return words + "; the short one serves at " + p.Heights.Posts[i].Name
	}
	return words + "; the short one is left over"
}

// stageFigures are what is done and what comes next.
func (p *Plan) stageFigures() []figure.Figure {
	said := func(key, means, words, rule string) figure.Figure {
		return figure.Figure{Key: key, Means: means, Value: measure.Word(words), Origin: figure.Computed, Formula: rule, From: []string{"job.progress"}}
	}
	return []figure.Figure{
		said("job.done", "what has been done", p.done(), "what the readings in the job file show, pier by pier"),
		said("job.next", "what is to be done next", p.next(), "the first part of the work that the readings do not show as done everywhere"),
	}
}
