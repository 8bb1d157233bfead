package main

import (
	"flag"
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"strings"

	"pierbook/calc"
	"pierbook/calc/fault"
	"pierbook/calc/yard"
	"pierbook/content"
	"pierbook/layouts/blocks"
)

func runWhy(args []string, stdout, stderr io.Writer) int {
	options := flag.NewFlagSet("why", flag.ContinueOnError)
	folders := addAlso(options)
	plain, exit, stop := parse(options, args, stdout, stderr)
	if stop {
		return exit
	}
	if len(plain) < 2 {
		fmt.Fprintln(stderr, "pierbook why: a job file and the key of a figure are wanted\n  pierbook why JOB KEY, such as pierbook why my-job.yaml pier.A1.post")
		return wrongUsage
	}
	d, err := newDisk(*folders)
	if err != nil {
		fmt.Fprintln(stderr, "pierbook why:", err)
		return faulty
	}
	name, err := d.name(plain[0])
	if err != nil {
		fmt.Fprintln(stderr, "pierbook why:", err)
		return faulty
	}
	var plan *calc.Plan
	var faults fault.List
	if err := guarded(plain[0], func() { plan, faults = work(d.files(name), name) }); err != nil {
		blame(stderr, plain[0], err)
		return faulty
	}
	if !faults.Empty() {
		d.relabelled(faults).Print(stderr)
		return faulty
	}
	plan.Figures.Relabel(d.shown)
	what := strings.Join(plain[1:], " ") // such as sheet 7, with or without quotes
	if explain(plan, d.files(name), what, stdout) {
		return done
	}
	fmt.Fprintf(stderr, "pierbook why: %s has no figure %q\n", plain[0], what)
	if near := fault.Nearest(what, plan.Figures.Keys()); near != "" {
		fmt.Fprintf(stderr, "  did you mean: pierbook why %s %s\n", plain[0], near)
	} else {
		fmt.Fprintln(stderr, "  figures.json of a binder lists all keys")
	}
	return wrongUsage
}

// explain writes where a figure comes from, or all figures of a thing: a pier, a
// line, a stick or a piece cut from it, a sheet of the binder.
func explain(p *calc.Plan, files fs.FS, what string, stdout io.Writer) bool {
	if p.Figures.Explain(stdout, what, p.Style) {
		return true
	}
	found := p.Figures.ExplainThing(stdout, what, p.Style)
	if stick := yard.StickKey(p.Cuts, what); stick != "" && !found {
		found = p.Figures.ExplainThing(stdout, stick, p.Style)
	}
	if sheet, ok := sheetOf(p, files, what, found); ok {
		if !found {
			fmt.Fprintf(stdout, "sheet %d, %s\n", sheet.Number, sheet.Title)
		} else {
			fmt.Fprintf(stdout, "\nsheet %d, %s\n", sheet.Number, sheet.Title)
		}
		p.Figures.List(stdout, sheet.Figures, p.Style)
		found = true
	}
	return found
}

// sheetOf finds a sheet of the binder by its name, its title or its number; a
// number alone may be that of another thing.
func sheetOf(p *calc.Plan, files fs.FS, what string, thing bool) (content.Sheet, bool) {
	book, faults := newLibrary().bookFor(p, files)
	if !faults.Empty() {
		return content.Sheet{}, false
	}
	made, _ := blocks.Of(p)
	sheets, _ := book.Bind(p.Figures, p.Style, made)
	name := strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(what), "sheet "), "sheet.")
	named := name != strings.ToLower(what)
	for _, s := range sheets {
		if name == s.Name || name == strings.ToLower(s.Title) || name == strconv.Itoa(s.Number) && (named || !thing) {
			return s, true
		}
	}
	return content.Sheet{}, false
}
