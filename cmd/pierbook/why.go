package main

import (
	"flag"
	"fmt"
	"io"

	"pierbook/calc"
	"pierbook/calc/fault"
)

func runWhy(args []string, stdout, stderr io.Writer) int {
	options := flag.NewFlagSet("why", flag.ContinueOnError)
	folders := addAlso(options)
	plain, exit, stop := parse(options, args, stdout, stderr)
	if stop {
		return exit
	}
	if len(plain) != 2 {
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
	if plan.Figures.Explain(stdout, plain[1], plan.Style) || plan.Figures.ExplainThing(stdout, plain[1], plan.Style) {
		return done
	}
	fmt.Fprintf(stderr, "pierbook why: %s has no figure %q\n", plain[0], plain[1])
	if near := fault.Nearest(plain[1], plan.Figures.Keys()); near != "" {
		fmt.Fprintf(stderr, "  did you mean: pierbook why %s %s\n", plain[0], near)
	} else {
		fmt.Fprintln(stderr, "  figures.json of a binder lists all keys")
	}
	return wrongUsage
}
