package calc

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// pageFigures are figures over several parts that pages and the front page ask for.
func (p *Plan) pageFigures() []figure.Figure {
	stop := p.Stop()
	return append(slices.Concat(p.floorFigures(), p.frameFigures(), p.stageFigures()),
		figure.Answer("checks.stop", "something keeps this from being built", stop != "", "a check fails, the heights cannot be met, piers lie far beyond the readings, or timber cannot be cut from what is sold", "checks.failing", "clash.kind", "ground.beyond"),
		figure.Figure{Key: "checks.summary", Means: "state of the checks", Value: measure.Word(p.checksSummary()), Origin: figure.Computed, Formula: "count of failing checks, else the greatest ratio", From: []string{"checks.failing", "checks.wanted", "checks.worst"}},
		figure.Figure{Key: "job.next_hold", Means: "the hold point that comes next", Value: wordOrNone(p.nextHold()), Origin: figure.Computed, Formula: "the hold point after the progress of the job", From: []string{"job.progress"}},
		figure.Figure{Key: "checks.why", Means: "why nothing may be built from this plan", Value: wordOrNone(stop), Origin: figure.Computed, Formula: "heights that cannot be met, then ground to be read, then timber that cannot be cut, then checks that fail", From: []string{"clash.kind", "ground.beyond", "checks.failing"}},
	)
}

// nextHold names the hold point that comes next at each stage of the job.
func (p *Plan) nextHold() string {
	next := p.nextStage()
	if next == nil {
		return ""
	}
	for _, s := range p.Weekend.Steps {
		if s.Name == next.hold {
			return s.Hold
		}
	}
	return ""
}

// checksSummary says how many checks pass, and how many of them only with work by
// others, which this binder does not design.
func (p *Plan) checksSummary() string {
	all, failing, wanted := len(p.Strength.Checks), p.Strength.Failing(), 0
	for _, c := range p.Strength.Checks {
		if !c.Holds() && !c.Fails() {
			wanted++
		}
	}
	byOthers := ""
	if works := len(p.Strength.ByOthers()); works > 0 {
		byOthers = fmt.Sprintf("; %d by others", works)
	}
	switch {
	case p.Heights.Clash != nil:
		return "the heights cannot be met"
	case len(p.Heights.FarOut()) > 0:
		return "the ground must be read at " + strings.Join(p.Heights.FarOut(), ", ")
	case p.CutTrouble() != "":
		return "timber is missing from the order"
	case failing > 0:
		return fmt.Sprintf("%d of %d checks fail%s", failing, all, byOthers)
	}
	passing := fmt.Sprintf("all %d checks pass", all)
	if wanted > 0 {
		passing = fmt.Sprintf("%d of %d checks pass", all-wanted, all)
	}
	if worst, ok := p.Strength.Worst(); ok {
		passing += fmt.Sprintf("; worst %.2f", float64(worst.Ratio))
	}
	return passing + byOthers
}

// floorFigures are heights that pages want over another datum.
func (p *Plan) floorFigures() []figure.Figure {
	over := func(key, means, of, less string, height measure.Length, known bool, datum measure.Length) figure.Figure {
		f := figure.Figure{Key: key, Means: means, Origin: figure.Computed, Formula: of + " − " + less, From: []string{of, less}}
		if known {
			f.Value = height - datum
			f.Working = height.Print(p.Style) + " − " + datum.Print(p.Style)
		}
		return f
	}
	floor, known := measure.Length(0), p.Heights.Floor != nil
	var tops, high measure.Length
	if known {
		floor, tops = p.Heights.Floor.Height, p.Heights.Floor.PostTops
		high = p.highestGround()
	}
	mark := p.Job.Ground.BenchMark.Height
	door := figure.Figure{Key: "floor.at_door", Means: "floor over the ground at the door", Origin: figure.Computed, Formula: "floor − ground at the middle of the door", From: []string{"floor.height"}}
	if d := p.Job.Platform.Door; d != nil && known && p.Ground.Surface != nil {
		x, y := p.DoorPlace()
		ground := p.Ground.Surface.At(x, y)
		door.Value, door.Working = floor-ground, floor.Print(p.Style)+" − "+ground.Print(p.Style)
	}
	overMark := p.postTops(over("post_tops.above_bench_mark", "tops of all posts over the bench mark", "post_tops.height", "bench_mark.height", tops, known, mark))
	onRod := figure.Figure{Key: "floor.on_rod", Means: "expected reading on the finished floor, over the bench mark's", Origin: figure.Computed, Formula: "bench mark − floor", From: []string{"bench_mark.height", "floor.height"}}
	if known {
		onRod.Value, onRod.Working = measure.Offset(mark-floor), mark.Print(p.Style)+" − "+floor.Print(p.Style)
	}
	return []figure.Figure{
		onRod,
		overMark,
		p.topsOnRod(overMark),
		over("floor.above_bench_mark", "floor over the bench mark", "floor.height", "bench_mark.height", floor, known, mark),
		over("floor.above_highest_ground", "floor over the highest ground under it", "floor.height", "ground.high", floor, known, high),
		door,
	}
}

// topsOnRod is what makes of the day's reading on the bench mark the one on every
// post top: one number, or that of each line where they differ.
func (p *Plan) topsOnRod(tops figure.Figure) figure.Figure {
	f := figure.Figure{Key: "post_tops.on_rod", Means: "what makes of the bench-mark reading that on every post top", Origin: figure.Computed,
		Formula: "tops over the bench mark, taken away", Working: tops.Working, From: []string{tops.Key}}
	switch height := tops.Value.(type) {
	case measure.Length:
		f.Value = measure.Offset(-height)
	case measure.Word:
		lines := make([]string, len(p.Heights.Lines))
		for i, line := range p.Heights.Lines {
			lines[i] = "line " + line.Name + " " + measure.Offset(-line.Printed).Print(p.Style)
		}
		f.Value = measure.Word(strings.Join(lines, ", "))
	}
	return f
}

// postTops puts what the measured beams and joists make of the post tops in the
// place of what was planned: one number again, or the least and the greatest
// where the lines differ.
func (p *Plan) postTops(planned figure.Figure) figure.Figure {
	lines := p.Heights.Lines
	if len(lines) == 0 {
		return planned
	}
	least, most := lines[0].Printed, lines[0].Printed
	var from []string
	for _, line := range lines {
		least, most = min(least, line.Printed), max(most, line.Printed)
		from = append(from, "line."+line.Name+".post_number")
	}
	f := planned
	f.Value, f.Formula, f.From = most, "the number of each line", from
	f.Working = most.Print(p.Style) + " on every line"
	if least != most {
		f.Value = measure.Word(least.Print(p.Style) + " to " + most.Print(p.Style))
		f.Working = "the least and the greatest of the lines"
	}
	return f
}

func (p *Plan) highestGround() measure.Length {
	high := p.Heights.Piers[0].Level.Height
	for _, pier := range p.Heights.Piers {
		high = max(high, pier.Level.Height)
	}
	return high
}

// DoorPlace returns the middle of the door on its side of the frame.
func (p *Plan) DoorPlace() (x, y measure.Length) {
	d, f := p.Job.Platform.Door, p.Frame
	middle := d.From1 + d.Width/2
	switch d.Side {
	case f.Lines[0].Name:
		return middle, 0
	case f.Lines[len(f.Lines)-1].Name:
		return middle, f.Width
	case "1":
		return 0, middle
	default:
		return f.Length, middle
	}
}

// frameFigures are lengths over the beams, laps and marks that steps ask for.
func (p *Plan) frameFigures() []figure.Figure {
	f := p.Frame
	across := f.Width - 2*p.Job.Frame.Beams.Inset
	long := f.Lines[0].End - f.Lines[0].Start
	first := figure.Figure{Key: "panel.first_line", Means: "chalk line for the first row of panels, from the frame side", Origin: figure.Computed,
		Formula: "width of the first row", From: []string{"panel.face_width"}}
	if rows := f.Surface.Rows; len(rows) > 0 {
		first.Value = rows[0].Width
	}
	last := f.Joists[len(f.Joists)-1]
	figures := []figure.Figure{
		{Key: "beams.across", Means: "outer face to outer face of the outer beam lines", Value: across, Origin: figure.Computed, Formula: "width − 2 × inset",
			Working: f.Width.Print(p.Style) + " − 2 × " + p.Job.Frame.Beams.Inset.Print(p.Style), From: []string{"frame.width", "frame.inset"}},
		{Key: "beams.diagonal", Means: "diagonal over the outer corners of the outer beam lines", Value: measure.Hypot(long, across), Origin: figure.Computed, Formula: "√(length² + across²)",
			Working: "√(" + long.Print(p.Style) + "² + " + across.Print(p.Style) + "²)", From: []string{"beam.length", "beams.across"}},
		{Key: "joist.last_mark", Means: "running mark of the last joist", Value: last.Near, Origin: figure.Computed, Formula: "near face of the last joist", From: []string{"frame.length"}},
		first,
		figure.Answer("has.tongue", "panels have tongue and groove", len(f.Surface.Panels) > 0 && p.Job.Platform.Surface.Edge == "tongue_and_groove", "panels whose edge is tongue and groove", "platform.surface.kind", "platform.surface.edge"),
	}
	return append(figures, p.Order.PageFigures(p.Job)...)
}
