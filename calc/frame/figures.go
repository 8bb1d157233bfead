package frame

import (
	"fmt"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Figures returns the figures of a frame that [Lay] laid out, in the order in which they are
// worked out. Keys of things that this frame lacks, such as sheets of a floor of
// boards, are there without a value. From names keys of other figures and, for
// what the job says itself, paths of the job file.
func (f *Frame) Figures(j *job.Job) []figure.Figure {
	l := ledger{job: j, frame: f, style: j.Style()}
	l.outline()
	l.buildUp()
	l.lines()
	l.piers()
	l.beams()
	l.joists()
	l.rims()
	l.surface()
	l.openings()
	return l.figures
}

// ledger collects figures.
type ledger struct {
	job     *job.Job
	frame   *Frame
	style   measure.Style
	figures []figure.Figure
}

// given enters a value that stands in the job under a path, with the pedigree
// that the job knows. A value left to pick was computed.
func (l *ledger) given(key, path, means string, value measure.Quantity) {
	from := []string{path}
	if member, sized := strings.CutSuffix(path, ".size"); sized {
		if _, bySize := l.job.Entry(path); !bySize { // width and depth stand in place of a size
			path = member + ".depth"
			from = []string{member + ".width", path}
		}
	}
	f := figure.Figure{Key: key, Means: means, Value: value, Origin: figure.Given, From: from}
	if e, ok := l.job.Entry(path); ok {
		f.Origin, f.At, f.Source, f.Memory = e.Origin, e.At, e.Source, e.Memory
		if e.Text == "pick" {
			f.Origin, f.Formula = figure.Computed, "the cheapest frame that passes every check"
		}
	}
	l.figures = append(l.figures, f)
}

// computed enters a value with the rule, the rule with this job's numbers, and
// what it comes from.
func (l *ledger) computed(key, means string, value measure.Quantity, formula, working string, from ...string) {
	if value != nil && working != "" {
		working += " = " + value.Print(l.style)
	}
	l.figures = append(l.figures, figure.Figure{Key: key, Means: means, Value: value, Origin: figure.Computed,
		Formula: formula, Working: working, From: from})
}

// missing enters a key whose thing this frame lacks.
func (l *ledger) missing(key, means, why string) {
	l.figures = append(l.figures, figure.Figure{Key: key, Means: means, Origin: figure.Computed, Formula: why})
}

// source names the document behind the figure entered last.
func (l *ledger) source(document string) { l.figures[len(l.figures)-1].Source = document }

func (l *ledger) say(v measure.Length) string { return v.Print(l.style) }

// section returns a cross-section in words: its size, or width by depth.
func (l *ledger) section(s job.Section) measure.Word {
	if s.Size != "" {
		return measure.Word(s.Size)
	}
	return measure.Word(l.say(s.Width) + " × " + l.say(s.Depth))
}

func (l *ledger) outline() {
	f := l.frame
	l.given("frame.length", "platform.length", "length of the frame, outside faces, along the beams", f.Length)
	l.given("frame.width", "platform.width", "width of the frame, outside faces, rims included", f.Width)
	l.computed("frame.diagonal", "both diagonals of the frame, outside faces", measure.Hypot(f.Length, f.Width),
		"√(length² + width²)", l.root(f.Length, f.Width), "frame.length", "frame.width")
	l.computed("frame.area", "area of the platform", f.Length.Times(f.Width),
		"length × width", l.say(f.Length)+" × "+l.say(f.Width), "frame.length", "frame.width")
}

func (l *ledger) root(a, b measure.Length) string {
	return fmt.Sprintf("√((%s)² + (%s)²)", l.say(a), l.say(b))
}

func (l *ledger) buildUp() {
	b := l.frame.BuildUp
	l.given("build_up.surface", "platform.surface.thickness", "thickness of the surface", measure.Exact(b.Surface))
	if b.Joist > 0 {
		l.given("build_up.joist", "frame.joists.size", "depth of the joists", b.Joist)
	} else {
		l.computed("build_up.joist", "what the joists add to the build-up", b.Joist, "nothing: their tops are flush with the beams", "", "joist.sit")
	}
	l.given("build_up.beam", "frame.beams.size", "depth of the beams", b.Beam)
	l.given("build_up.cap", "frame.posts.cap", "what the cap adds between post and beam", measure.Exact(b.Cap))
	l.computed("build_up", "from the top of a post to the top of the surface", b.Total(), "t = surface + joist + beam + cap",
		fmt.Sprintf("%s + %s + %s + %s", measure.Exact(b.Surface).Print(l.style), l.say(b.Joist), l.say(b.Beam), measure.Exact(b.Cap).Print(l.style)),
		"build_up.surface", "build_up.joist", "build_up.beam", "build_up.cap")
}
