package main

import (
	"flag"
	"fmt"
	"io"
	"slices"
	"text/tabwriter"

	"pierbook/calc"
	"pierbook/calc/check"
	"pierbook/calc/levelling"
	"pierbook/calc/strength"
)

func runCheck(args []string, stdout, stderr io.Writer) int {
	options := flag.NewFlagSet("check", flag.ContinueOnError)
	folders := addAlso(options)
	jobs, exit, stop := parse(options, args, stdout, stderr)
	if stop {
		return exit
	}
	if len(jobs) == 0 {
		fmt.Fprintln(stderr, "pierbook check: no job given\n  pierbook check JOB...")
		return wrongUsage
	}
	d, err := newDisk(*folders)
	if err != nil {
		fmt.Fprintln(stderr, "pierbook check:", err)
		return faulty
	}
	exit = done
	pages := newLibrary()
	for i, typed := range jobs {
		well := false
		if err := guarded(typed, func() { well = checkOne(d, pages, typed, i > 0, stdout, stderr) }); err != nil {
			blame(stderr, typed, err)
		}
		if !well {
			exit = faulty
		}
	}
	return exit
}

// checkOne checks one job and says whether nothing is wrong or failing. The
// numbers of a later job stand apart from those before.
func checkOne(d *disk, pages *library, typed string, later bool, stdout, stderr io.Writer) bool {
	name, err := d.name(typed)
	if err != nil {
		fmt.Fprintln(stderr, "pierbook check:", err)
		return false
	}
	files := d.files(name)
	plan, faults := work(files, name)
	if faults.Empty() {
		faults = wrongPages(plan, files, pages)
	}
	if !faults.Empty() {
		d.relabelled(faults).Print(stderr)
		return false
	}
	if later {
		fmt.Fprintln(stdout)
	}
	printKeyNumbers(plan, d.shown(name), stdout)
	for _, line := range oddities(plan, d.shown) {
		fmt.Fprintf(stdout, "  odd: %s\n", line)
	}
	lines := failing(plan)
	for _, line := range lines {
		fmt.Fprintf(stdout, "FAILS %s\n", line)
	}
	for _, r := range plan.Strength.Remarks {
		if r.Standing != check.Fails && r.Words != strength.BuildingNotice(plan.Job) { // which stands above the numbers
			fmt.Fprintf(stdout, "%s: %s\n", r.Standing, r.Words)
		}
	}
	for _, r := range plan.Strength.Remedies {
		if r.Mends {
			fmt.Fprintf(stdout, "mends all checks: %s (%s): %s\n", r.Change, r.Words, r.Cost)
		}
	}
	return len(lines) == 0
}

// keyNumbers are the figures that check prints.
var keyNumbers = []string{
	"frame.length", "frame.width", "frame.diagonal", "piers.diagonal", "frame.piers", "joist.count", "joist.length", "beam.length",
	"floor.height", "floor.governed_by", "floor.limit", "post_tops.height", "post.longest_cut", "post.shortest_cut", "hole.deepest",
	"stone.order", "load.worst", "load.worst_pier", "order.weight", "checks.worst", "checks.failing", "checks.wanted",
}

func printKeyNumbers(p *calc.Plan, typed string, stdout io.Writer) {
	fmt.Fprintf(stdout, "%s: %s; %s\n", typed, p.Job.Name, p.Job.Progress())
	if notice := strength.BuildingNotice(p.Job); notice != "" {
		fmt.Fprintf(stdout, "  %s: %s\n", check.NotCounted, notice)
	}
	for _, stand := range []string{"done", "next"} {
		fmt.Fprintf(stdout, "  %s: %s\n", stand, p.Figures.Text("job."+stand, p.Style))
	}
	table := tabwriter.NewWriter(stdout, 0, 0, 2, ' ', 0)
	for _, key := range keyNumbers {
		f, ok := p.Figures.Get(key)
		if !ok || f.Value == nil {
			continue
		}
		fmt.Fprintf(table, "  %s\t%s\t%s\n", key, f.Text(p.Style), f.Means)
	}
	table.Flush()
	if p.Book != nil && !p.Book.Closed() {
		fmt.Fprintln(stdout, "  advice: The level book does not close; read the bench mark again at the end of it.")
	}
	if slices.ContainsFunc(levelling.InstrumentChecks(p.Job), func(c levelling.InstrumentCheck) bool { return !c.InOrder() }) {
		fmt.Fprintln(stdout, "  advice: The instrument did not pass its check; have it put right, or read again with another.")
	}
	if words := p.Ground.SuspectSentence(p.Style); words != "" {
		fmt.Fprintf(stdout, "  odd: %s\n", words)
	}
	for _, m := range p.Mends {
		if !m.Mends() {
			fmt.Fprintf(stdout, "  tried: %s\n", m.Said())
		}
	}
	for _, verdict := range p.PostVerdicts() {
		fmt.Fprintf(stdout, "  post %s\n", verdict)
	}
	if estimated := p.Estimated(); estimated != "" {
		fmt.Fprintf(stdout, "  estimated: %s\n", estimated)
	}
	for _, pinch := range p.Heights.Pinches(p.Job) {
		fmt.Fprintf(stdout, "  advice: %s\n", pinch.Sentence(p.Style))
	}
	for _, d := range p.Heights.DoubtfulSeats(p.Job) {
		fmt.Fprintf(stdout, "  advice: %s\n", d.Sentence(p.Style))
	}
	for _, a := range p.Frame.Advice {
		if a.Standing != "" {
			continue // it stands among the remarks
		}
		fmt.Fprintf(stdout, "  advice: %s\n", a.Saying)
	}
	for _, a := range p.Alternatives() {
		fmt.Fprintf(stdout, "  instead: %s\n", a.Sentence(p.Style))
	}
}

// oddities names the values that were taken although they are out of the usual,
// each with its place.
func oddities(p *calc.Plan, shown func(string) string) []string {
	var lines []string
	for _, d := range p.Job.Doubts() {
		lines = append(lines, fmt.Sprintf("%s:%d: %s", shown(d.At.File), d.At.Line, d.Saying))
	}
	return lines
}

// failing returns what keeps the job from being built, in words.
func failing(p *calc.Plan) []string {
	var lines []string
	if p.Heights.Clash != nil {
		lines = append(lines, "heights: "+p.ClashSentence())
	}
	if far := p.FarOut(); far != "" {
		lines = append(lines, "ground: "+far)
	}
	if trouble := p.CutTrouble(); trouble != "" {
		lines = append(lines, "timber: "+trouble)
	}
	for _, r := range p.Strength.Remarks {
		if r.Standing == check.Fails {
			lines = append(lines, r.Words)
		}
	}
	for _, c := range p.Strength.Checks {
		if c.Fails() {
			lines = append(lines, fmt.Sprintf("%s: %s / %s = %s (%s)", c.What, c.Demand.Print(p.Style), c.Capacity.Print(p.Style), c.Ratio.Print(p.Style), c.Clause))
		}
	}
	return lines
}
