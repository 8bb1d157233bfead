package heights

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// stepsShort is how many steps short of deep enough it is said beforehand what to
// do.
const stepsShort = 3

// Of the piers the tables ask besides the figures that all know.
var pierFields = []figure.Field{
	{Key: "line", Means: "beam line over %", Formula: "letters from A, without I and O"},
	{Key: "ground_doubt", Means: "how well the ground at % is known", Formula: "nothing where it was read, else the standard error", From: []string{".ground_from", ".ground_error"}},
	{Key: "probe", Means: "what the bar met at %, and how deep", Formula: "as probed"},
	{Key: "dig_wanted", Means: "depth wanted at %", Formula: "the dig, as planned where it is done", From: []string{".dig", ".dig_planned"}},
	{Key: "dug", Means: "depth dug at %", Formula: "as measured"},
	{Key: "found", Means: "what was found at %", Formula: "as written down at the hole"},
	{Key: "cover", Means: "top of the bed below the ground at %", Formula: "dig − stone", From: []string{".dig", ".stone"}},
	{Key: "post_number", Means: "printed number of the post at %", Formula: "the number of its line, as readings are added to it"},
	{Key: "bench_reading", Means: "reading on the bench mark on the day the seat of % was read", Formula: "as read"},
	{Key: "post_read", Means: "post % by its seat as read", Formula: "reading in the seat − bench mark, and the printed number added or taken away", From: []string{".post_number", ".seat_reading", ".bench_reading"}},
	{Key: "post_words", Means: "what to do about the post at %, in words", Formula: "by its state", From: []string{".post_state", ".post"}},
	{Key: "post_to_cut", Means: "post to cut at %: seat not read", Formula: "as wanted, once the seat is read", From: []string{".post"}},
	{Key: "post_again", Means: "post % worked again", Formula: "what to do about a post that is cut", From: []string{".post_words"}},
	{Key: "seat_expected", Means: "expected reading in the seat of %, over the bench mark's", Formula: "bench mark − seat as planned", From: []string{"bench_mark.height", ".seat_planned"}},
	{Key: "seat_stop_under", Means: "least reading in the seat of %, over the bench mark's", Formula: "shortest post − printed number", From: []string{"post.shortest", ".post_number"}},
	{Key: "seat_stop_over", Means: "greatest reading in the seat of %, over the bench mark's", Formula: "longest post − printed number", From: []string{"post.longest", ".post_number"}},
	{Key: "seat_window", Means: "how far the seat of % may come out off what is expected", Formula: "as seats are set, or the room there is up to the limits of the post", From: []string{"trade.seat_accept", ".post_planned"}},
	{Key: "floor_reading", Means: "as built over %, from the bench mark", Formula: "bench mark − finished floor", From: []string{"bench_mark.height", ".finished"}},
	{Key: "deep_enough", Means: "depth from which the hole at % serves", Formula: "as the least depth, before the seat is set", From: []string{".dig_least"}},
	{Key: "short_1", Means: "what to do where the digging at % ends one step short", Formula: shortRule, From: []string{"floor.height", ".dig_least"}},
	{Key: "short_2", Means: "what to do where the digging at % ends two steps short", Formula: shortRule, From: []string{"floor.height", ".dig_least"}},
	{Key: "short_3", Means: "what to do where the digging at % ends three steps short", Formula: shortRule, From: []string{"floor.height", ".dig_least"}},
	{Key: "move", Means: "how far % may move, at most", Formula: "along its line, on to the next pier or back", From: []string{".move_on", ".move_back"}},
	{Key: "exception", Means: "what is different at %", Formula: "as the job has it"},
	{Key: "exception_reason", Means: "why % is different", Formula: "as the job has it"},
}

const shortRule = "the bed that keeps the floor, else how much higher the floor must be for the least bed"

// piers is the set of the piers, line by line.
func (h *Heights) piers(j *job.Job) figure.Set {
	set := figure.Set{Name: "piers", Key: "pier", Fields: pierFields}
	beforehand := map[string]Beforehand{}
	for _, b := range h.Beforehand(WindowStep(j.Units), stepsShort) {
		beforehand[b.Pier] = b
	}
	r := pierRow{all: h, job: j, style: j.Style()}
	for i, p := range h.Piers {
		r.i, r.pier, r.values = i, p, nil
		r.add(measure.Word(h.frame.Lines[h.frame.Piers[i].Line].Name), r.doubt(), probeWords(j.Ground.Probes, p, r.style))
		r.hole()
		r.post()
		r.readings()
		b, open := beforehand[p.Name]
		r.windows(b, open)
		r.exception()
		set.Row(p.Name, p.Name, r.values...)
	}
	return set
}

// pierRow makes the values of one pier in the order of the fields.
type pierRow struct {
	all    *Heights
	job    *job.Job
	style  measure.Style
	i      int
	pier   PierHeights
	values []measure.Quantity
}

func (r *pierRow) add(values ...measure.Quantity) { r.values = append(r.values, values...) }

func (r *pierRow) doubt() measure.Quantity {
	switch level := r.pier.Level; {
	case level == nil:
		return nil
	case level.Read:
		return figure.Nothing
	case level.Beyond:
		return measure.Word("estimated, beyond the readings")
	default:
		up := r.style
		up.Rounding = measure.Up
		return measure.Word("estimated ± " + level.Error.Print(up))
	}
}

// probeWords says what the bar found, counted like the hole from the ground as it
// is cut.
func probeWords(probes map[string]job.Probe, pier PierHeights, style measure.Style) measure.Quantity {
	if probe, probed := probes[pier.Name]; probed {
		if pier.Level != nil {
			probe.Depth = max(0, probe.Depth-pier.Level.Cut)
		}
		return measure.Word(probe.Found + " at " + probe.Depth.Print(style))
	}
	return figure.Nothing
}

// hole adds what is dug and filled in.
func (r *pierRow) hole() {
	var wanted, dug, found, cover measure.Quantity
	if hole := r.pier.Hole; hole != nil {
		wanted, cover = hole.Dig, hole.Cover()
	}
	if hole, done := r.job.Measured.Holes[r.pier.Name]; done {
		dug, found = hole.Depth, measure.Word(hole.Found)
		if r.pier.Planned != nil {
			wanted = r.pier.Planned.Dig
		}
	}
	r.add(wanted, dug, found, cover)
}

// post adds the sum of the post's row and what is to be done about the post. One
// that is only planned or not cut yet is still to be worked again on paper.
func (r *pierRow) post() {
	var number, bench, sum, words, wanted, again measure.Quantity
	if r.pier.Hole != nil {
		number = measure.Offset(r.all.Lines[r.all.frame.Piers[r.i].Line].Printed)
	}
	if r.all.Posts != nil {
		post := r.all.Posts[r.i]
		if _, read := r.job.Measured.Seats[r.pier.Name]; read && r.all.Seats != nil {
			bench, sum = measure.Reading(r.all.Seats.BenchMark), post.Length()
		}
		words = measure.Word(post.Words(r.all.Posts, r.style))
		if post.State != Estimate {
			wanted = post.Length()
		}
		if post.State != Estimate && post.State != CutNow {
			again = words
		}
	}
	r.add(number, bench, sum, words, wanted, again)
}

// readings adds what the rod is expected to read, over the reading of the day on
// the bench mark, since the instrument stands elsewhere every day.
func (r *pierRow) readings() {
	mark := r.job.Ground.BenchMark.Height
	var expected, under, over, window, built measure.Quantity
	if hole := r.pier.Expected; hole != nil {
		top := r.all.Lines[r.all.frame.Piers[r.i].Line].Printed
		window = r.window()
		expected, under, over = measure.Offset(mark-hole.Seat), measure.Offset(r.job.Frame.Posts.Shortest-top), measure.Offset(r.job.Frame.Posts.Longest-top)
	}
	if point, ok := r.all.AsBuilt.point(r.pier.Name); ok {
		built = measure.Offset(mark - point.Height)
	}
	r.add(expected, under, over, window, built)
}

// window is how far the seat may come out higher and lower: as much as seats are
// set to, or what the limits of the post leave.
func (r *pierRow) window() measure.Quantity {
	accepted := trade.SeatAccept.In(r.job.Units)
	up, down, _ := r.all.seatRoom(r.job, r.i)
	up, down = max(0, min(up, accepted)), max(0, min(down, accepted))
	if up == down {
		return measure.Word("±\u00a0" + up.Print(r.style))
	}
	return measure.Word(up.Print(r.style) + " higher, " + down.Print(r.style) + " lower")
}

// windows adds what to do where the digging ends before the hole is deep enough;
// nothing for a pier whose seat is set.
func (r *pierRow) windows(b Beforehand, open bool) {
	if !open {
		for range stepsShort + 2 {
			r.add(figure.Nothing)
		}
		return
	}
	r.add(b.Shallowest)
	for n := range stepsShort {
		words := "–" // no depth is left
		if n < len(b.Rows) {
			words = b.Rows[n].words(r.style)
		}
		r.add(measure.Word(words))
	}
	r.add(measure.Word(b.Move.words(r.style)))
}

// words names the ordinary way first. A bed thinner than the least is an
// exception, on rock alone and for an engineer to allow.
func (m MetAt) words(style measure.Style) string {
	var ways []string
	if m.Bed != nil && !m.Thin {
		ways = append(ways, "bed "+m.Bed.Print(style))
	}
	if m.LiftFloor != nil && len(ways) == 0 {
		up := style
		up.Rounding = measure.Up
		ways = append(ways, "floor +"+m.LiftFloor.Print(up))
	}
	if m.Thin {
		ways = append(ways, "on rock "+m.Bed.Print(style))
	}
	if m.UnderRule || len(ways) == 0 {
		return "stop"
	}
	return strings.Join(ways, " or ")
}

// words tells both ways along the line apart: on to higher numbers, and back.
func (m Shift) words(style measure.Style) string {
	down := style
	down.Rounding = measure.Down
	var ways []string
	if m.On > 0 {
		ways = append(ways, m.On.Print(down)+" on")
	}
	if m.Back > 0 {
		ways = append(ways, m.Back.Print(down)+" back")
	}
	switch {
	case m.Joint:
		return "no: a joint is over it"
	case len(ways) == 0:
		return "no"
	}
	return strings.Join(ways, ", ")
}

// exception adds the rule that a pier has of its own.
func (r *pierRow) exception() {
	e, given := r.job.Piers[r.pier.Name]
	if !given {
		r.add(figure.Nothing, figure.Nothing)
		return
	}
	var rules []string
	if e.Bed != nil {
		rules = append(rules, "bed of at least "+e.Bed.Print(r.style))
	}
	if e.Deepest != nil {
		rules = append(rules, "dug no deeper than "+e.Deepest.Print(r.style))
	}
	r.add(measure.Word(strings.Join(rules, "; ")), measure.Word(e.Reason))
}

// Words puts into a few words what is to be done about a post; all are the posts
// of the job, among which the one that takes its place is found.
func (p Post) Words(all []Post, style measure.Style) string {
	switch p.State {
	case Estimate:
		return "read the seat first"
	case CutNow:
		return "to be cut now"
	case Serves:
		return "cut, stays"
	case Shim:
		return "cut, shim " + p.Shim.Print(style)
	case Trim:
		if p.Plane {
			return "cut, plane off " + p.Off.Print(style) + ", to " + p.Length().Print(style)
		}
		return "cut, trim " + p.Off.Print(style) + ", to " + p.Length().Print(style)
	case Exchange:
		return p.exchange(all, style)
	case CutAnew:
		return "cut a new one"
	default:
		return "does not fit: see the ways out"
	}
}

// exchange names the post that serves here, and what becomes of this pier's own.
func (p Post) exchange(all []Post, style measure.Style) string {
	words := "take the one cut for " + p.From
	if p.Off > trade.PostServes.In(style.System) {
		words += fmt.Sprintf(", cut down to %s", p.Length().Print(style))
	}
	if p.Cut != nil && !slices.ContainsFunc(all, func(other Post) bool { return other.From == p.Name }) {
		words += "; its own is left over"
	}
	return words
}
