package calc

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
)

// mends tries what could be done about heights that clash: a length of the job
// let out, the high ground cut, the platform laid otherwise or made shorter. What
// mends stands first; what does not says why.
func (p *Plan) mends() []Mend {
	if p.Heights.Clash == nil {
		return nil
	}
	mends := p.loosened()
	if m := p.Job.Measured; len(m.Holes)+len(m.Seats)+len(m.PostsCut)+len(m.FrameSides) == 0 {
		mends = append(mends, p.cutHigh()...)
		mends = append(mends, p.laidOtherwise()...)
		mends = append(mends, p.shorter()...)
	}
	mends = append(mends, p.byOthers()...)
	slices.SortStableFunc(mends, func(a, b Mend) int {
		switch {
		case a.Mends() == b.Mends():
			return 0
		case a.Mends():
			return -1
		}
		return 1
	})
	return mends
}

// settled fills in what a trial came to.
func (p *Plan) settled(m Mend, t trial) Mend {
	t = t.checked(p.Strength)
	if m.Lacks = t.lacks; m.Lacks == "" {
		m.Costs = t.costs()
	}
	return m
}

// loosened tries each length that frees the heights, with its least change.
func (p *Plan) loosened() []Mend {
	var mends []Mend
	for _, way := range p.Heights.Clash.Ways {
		m := Mend{Words: fmt.Sprintf("%s %s instead of %s", way.Means, way.To.Print(p.Style), way.From.Print(p.Style)), Write: way.Path + ": " + way.To.Print(p.Style)}
		if m = p.settled(m, laidOut(way.In(p.Job), nil, nil)); m.Mends() {
			m.Lacks, m.Then = limitOf(way)
		}
		if !m.Mends() {
			m.Costs = ""
		}
		mends = append(mends, m)
	}
	return mends
}

// limitOf says of a length let out that passes every check why it is no way out
// nevertheless, or else what goes with it.
func limitOf(way heights.Loosening) (lacks, then string) {
	if why := job.Unusual(way.Path, way.To); why != "" {
		return "out of the usual: " + why, ""
	}
	switch {
	case way.Path == "stone.least" || strings.HasSuffix(way.Path, ".bed"):
		return "less stone than the least spreads no load; on rock an engineer may allow it", ""
	case way.Path == "frame.posts.shortest":
		return "", "drill before you screw: short posts split"
	case way.Path == "stone.above_ground" || way.Path == "stone.embed" || way.Path == "frame.clear":
		return "", "wood and seats come nearer to wet ground: ask the building department (IRC 2021 R317.1)"
	case way.Path == "dig.least":
		return "", "only where firm ground without roots lies so high"
	}
	return "", ""
}

// mostCuts is how often a cut is made deeper for what it uncovers.
const mostCuts = 8

// cutHigh tries to cut the ground where it keeps the floor up: over the rectangle
// round those places and at the piers alone, by a depth and down to a height. The
// least soil of those that mend is offered.
func (p *Plan) cutHigh() []Mend {
	var best *trial
	var bestMend Mend
	lacks := "it would have to be cut deeper than " + terrain.CutDeepest.Print(p.Style)
	if p.Heights.Clash.Kind == heights.OnePier {
		lacks = "a cut leaves the limits of that pier as they are"
	}
	var tried bool
	for _, level := range []bool{false, true} {
		for _, atPiers := range []bool{false, true} {
			cut, t, ok := p.deepened(level, atPiers)
			if !ok {
				continue
			}
			tried = true
			if t = t.checked(p.Strength); t.lacks != "" {
				lacks = t.lacks
				continue
			}
			if best == nil || t.Earthwork.Spoil.Bank < best.Earthwork.Spoil.Bank {
				best, bestMend = &t, p.cutMend(cut, t)
			}
		}
	}
	switch {
	case best != nil:
		bestMend.Costs = best.costs()
		return []Mend{bestMend}
	case tried || len(p.Heights.TooHigh()) > 0:
		return []Mend{{Words: "cut the ground", Lacks: lacks}}
	}
	return nil
}

// cutMend words a cut that mends.
func (p *Plan) cutMend(cut job.Cut, t trial) Mend {
	place := "piers: [" + strings.Join(cut.Piers, ", ") + "]"
	where := "at " + strings.Join(cut.Piers, ", ")
	if len(cut.Piers) == 0 {
		place = fmt.Sprintf("x: %s, y: %s, length: %s, width: %s", cut.X.Print(p.Style), cut.Y.Print(p.Style), cut.Length.Print(p.Style), cut.Width.Print(p.Style))
		where = fmt.Sprintf("from x %s to %s and y %s to %s", cut.X.Print(p.Style), (cut.X + cut.Length).Print(p.Style), cut.Y.Print(p.Style), (cut.Y + cut.Width).Print(p.Style))
	}
	how, words := "by: "+cut.By.Print(p.Style), "cut the ground by "+cut.By.Print(p.Style)
	if cut.To != nil {
		how, words = "to: "+cut.To.Print(p.Style), "cut the ground down to "+cut.To.Print(p.Style)
	}
	m := Mend{Words: words + " " + where + ", " + t.Earthwork.Spoil.Cut.Print(p.Style) + " as it lies", Write: "ground.cut." + p.cutName() + ": {" + how + ", " + place + "}",
		Then: "look for utilities, roots and water first; read the ground again when it is down"}
	if n := len(t.Heights.Humps); n > 0 {
		m.Then += fmt.Sprintf("; %s between the piers still to take off", measure.Counted(n, "hump"))
	}
	return m
}

// cutName returns a name for one more cut.
func (p *Plan) cutName() string {
	for n := 1; ; n++ {
		name := "high_ground"
		if n > 1 {
			name = fmt.Sprintf("high_ground_%d", n)
		}
		if _, taken := p.Job.Ground.Cuts[name]; !taken {
			return name
		}
	}
}

// deepened cuts as deep as it takes, over all places that are found too high on
// the way. It reports false when nothing that may be cut frees the heights.
func (p *Plan) deepened(level, atPiers bool) (job.Cut, trial, bool) {
	t, mark := trial{Plan: p}, p.Job.Mark()
	var places []heights.High
	cut := job.Cut{Reach: 2 * measure.Foot}
	if p.Job.Units == measure.Metric {
		cut.Reach = 600 * measure.Millimetre
	}
	var off measure.Length
	for range mostCuts {
		var more measure.Length
		for _, high := range t.Heights.TooHigh() {
			if !high.Pier && atPiers {
				return cut, t, false
			}
			more = max(more, high.Over)
			if !slices.ContainsFunc(places, func(h heights.High) bool { return h.Name == high.Name }) {
				places = append(places, high)
			}
		}
		if more == 0 {
			return cut, t, false
		}
		off = (off + more).RoundUpTo(mark)
		cut = p.over(cut, places, off, level, atPiers)
		changed := *p.Job
		changed.Ground.Cuts = map[string]job.Cut{p.cutName(): cut}
		for name, other := range p.Job.Ground.Cuts {
			changed.Ground.Cuts[name] = other
		}
		if t = laidOut(&changed, nil, nil); t.lacks == "" {
			return cut, t, true
		}
		if t.Heights == nil || t.Heights.Clash == nil {
			return cut, t, false
		}
	}
	return cut, t, false
}

// over puts a cut over places: by a depth, or level at so much under the lowest
// that they would need each for itself.
func (p *Plan) over(cut job.Cut, places []heights.High, off measure.Length, level, atPiers bool) job.Cut {
	mark := p.Job.Mark()
	cut.By, cut.To, cut.Piers = off, nil, nil
	x0, y0, x1, y1 := places[0].X, places[0].Y, places[0].X, places[0].Y
	var top measure.Length
	for i, high := range places {
		x0, y0, x1, y1 = min(x0, high.X), min(y0, high.Y), max(x1, high.X), max(y1, high.Y)
		if ground := p.Ground.Surface.At(high.X, high.Y); i == 0 || ground > top {
			top = ground
		}
		cut.Piers = append(cut.Piers, high.Name)
	}
	slices.Sort(cut.Piers)
	if !atPiers {
		cut.Piers = nil
		cut.X, cut.Y = (x0 - cut.Reach).RoundDownTo(mark), (y0 - cut.Reach).RoundDownTo(mark)
		cut.Length, cut.Width = (x1 + cut.Reach - cut.X).RoundUpTo(mark), (y1 + cut.Reach - cut.Y).RoundUpTo(mark)
	}
	if level {
		to := (top - off).RoundDownTo(mark)
		cut.To, cut.By = &to, 0
	}
	return cut
}

// laidOtherwise tries the platform turned and shifted as far as the place allows,
// and with length and width exchanged; the least of each that mends is offered.
func (p *Plan) laidOtherwise() []Mend {
	free := p.Job.Platform.Freedom
	type move struct {
		words string
		lie   terrain.Lie
	}
	moves := map[string][]move{}
	for part := 1; part <= 3; part++ {
		for _, way := range []int{1, -1} {
			if turn := float64(free.Turn*part*way) / 3; turn != 0 {
				moves["turn the platform"] = append(moves["turn the platform"], move{heights.TurnWords(turn), terrain.Lie{Turn: turn}})
			}
			if by := free.Along.Part(part*way, 3); by != 0 {
				moves["shift it along the lines"] = append(moves["shift it along the lines"], move{heights.ShiftWords(by, "along", p.Style), terrain.Lie{Along: by}})
			}
			if by := free.Across.Part(part*way, 3); by != 0 {
				moves["shift it across the lines"] = append(moves["shift it across the lines"], move{heights.ShiftWords(by, "across", p.Style), terrain.Lie{Across: by}})
			}
		}
	}
	if free.Exchange {
		moves["exchange length and width"] = []move{{"exchange length and width about the middle", terrain.Lie{Turn: 90}}}
	}
	var mends []Mend
	for _, kind := range []string{"turn the platform", "shift it along the lines", "shift it across the lines", "exchange length and width"} {
		none := Mend{Words: kind}
		for _, m := range moves[kind] {
			one := p.settled(Mend{Words: m.words, Then: "set out anew, and read and probe the ground at the new places first"}, laidOut(p.unread(), &m.lie, p.Ground))
			if one.Mends() {
				none = one
				break
			}
			none = Mend{Words: kind + ", as far as platform.freedom allows", Lacks: one.Lacks}
		}
		if len(moves[kind]) > 0 {
			mends = append(mends, none)
		}
	}
	return mends
}

// unread returns the job without what was found at its piers, which holds only
// where they stand.
func (p *Plan) unread() *job.Job {
	changed := *p.Job
	changed.Ground.Probes, changed.Piers = nil, nil
	return &changed
}

// shorter tries the platform shorter at either end and narrower at either side, by
// whole feet or 300 mm, to two thirds at the least; the least of each that mends
// is offered.
func (p *Plan) shorter() []Mend {
	step := measure.Foot
	if p.Job.Units == measure.Metric {
		step = 300 * measure.Millimetre
	}
	if len(p.Job.Platform.Loads)+len(p.Job.Platform.Openings) > 0 {
		return []Mend{{Words: "a shorter or narrower platform", Lacks: "not tried: the loads at a place and the openings would have to be laid out anew"}}
	}
	var mends []Mend
	lacks := "no part of it lies level enough"
	for _, side := range []struct {
		path, words string
		of          func(*job.Job) *measure.Length
		lie         func(measure.Length) terrain.Lie
	}{
		{"platform.length", "taken off at the far end of line A", func(j *job.Job) *measure.Length { return &j.Platform.Length }, func(measure.Length) terrain.Lie { return terrain.Lie{} }},
		{"platform.length", "taken off at the end by A1", func(j *job.Job) *measure.Length { return &j.Platform.Length }, func(by measure.Length) terrain.Lie { return terrain.Lie{Along: by} }},
		{"platform.width", "taken off at the side of the last line", func(j *job.Job) *measure.Length { return &j.Platform.Width }, func(measure.Length) terrain.Lie { return terrain.Lie{} }},
		{"platform.width", "taken off at the side of line A", func(j *job.Job) *measure.Length { return &j.Platform.Width }, func(by measure.Length) terrain.Lie { return terrain.Lie{Across: by} }},
	} {
		whole := *side.of(p.Job)
		for by := step; by <= whole.Part(1, 3); by += step {
			changed := p.unread()
			*side.of(changed) = whole - by
			changed.Platform.Door = nil // it may lie beyond the end; no check hangs on it
			lie := side.lie(by)
			one := p.settled(Mend{Words: fmt.Sprintf("%s less, %s", by.Print(p.Style), side.words), Write: side.path + ": " + (whole - by).Print(p.Style),
				Then: "the piers move: set out anew, read and probe there first"}, laidOut(changed, &lie, p.Ground))
			if one.Mends() {
				mends = append(mends, one)
				break
			}
			lacks = one.Lacks
		}
	}
	if len(mends) == 0 {
		return []Mend{{Words: "a shorter or narrower platform, down to two thirds", Lacks: lacks}}
	}
	return mends
}

// byOthers are the ways that nothing here can check.
func (p *Plan) byOthers() []Mend {
	c := p.Heights.Clash
	var mends []Mend
	if c.Kind != heights.OnePier {
		mends = append(mends, Mend{Words: "a second block on the first at the low piers", Lacks: fmt.Sprintf("it would give %s of the %s that are missing, only where the block's maker allows one on another in writing; stacked blocks are not worked out here",
			min(p.Job.Block.Height, c.Amount).Print(p.Style), c.Amount.Print(p.Style))})
		if c.Kind == heights.TwoPiers {
			mends = append(mends, Mend{Words: "fill the low ground", Lacks: fmt.Sprintf("only tamped stone in the holes counts, %s at the most, and that is used up; soil or a raised bed is for an engineer (IRC 2021 R401.2, R401.4)", p.Job.Stone.Most.Print(p.Style))})
		}
	}
	return append(mends, Mend{Words: "an engineer", Lacks: "taller piers with footings and bracing, a retained terrace, or filled ground are for a licensed engineer to design"})
}
