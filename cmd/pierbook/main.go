// Command pierbook turns a job file into a printable field manual for building
// a dead-level timber platform on pier blocks: a binder of sheets with every
// number worked out, a page for the client, and tables for other programs.
package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"pierbook/calc/fault"
)

// Exit codes.
const (
	done       = 0 // the work is done and nothing failed
	faulty     = 1 // faults in a job, a failing check, or the disk would not do it
	wrongUsage = 2 // the command line cannot be understood
)

// command is one thing the program can do.
type command struct {
	name    string
	summary string
	run     func(args []string, stdout, stderr io.Writer) int
}

func commands() []command {
	return []command{
		{"make", "write the binder of each job, or of the built-in sample", runMake},
		{"check", "read and calculate each job and print what is wrong and the key numbers; write nothing", runCheck},
		{"why", "say where a figure comes from, down to the line of a file, a default's source or a reading", runWhy},
		{"version", "say which program this is, for a letter about it", runVersion},
	}
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, stdout, stderr io.Writer) int {
	stdout, stderr = terminal{stdout}, terminal{stderr}
	if len(args) == 0 {
		printUsage(stderr)
		return wrongUsage
	}
	name := args[0]
	if name == "help" || isHelp(name) {
		return runHelp(args[1:], stdout, stderr)
	}
	all := commands()
	i := slices.IndexFunc(all, func(c command) bool { return c.name == name })
	if i < 0 {
		return unknownCommand(name, all, stderr)
	}
	exit := faulty
	if err := guarded("", func() { exit = all[i].run(args[1:], stdout, stderr) }); err != nil {
		blame(stderr, "", err)
	}
	return exit
}

func unknownCommand(name string, all []command, stderr io.Writer) int {
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = c.name
	}
	fmt.Fprintf(stderr, "pierbook: there is no command %q\n", name)
	if near := fault.Nearest(name, names); near != "" {
		if slices.ContainsFunc(topics, func(c command) bool { return c.name == near }) && !strings.HasPrefix(near, "help ") {
			near = "help " + near
		}
		fmt.Fprintf(stderr, "  did you mean: pierbook %s\n", near)
	} else {
		fmt.Fprintf(stderr, "  the commands are %s; pierbook help tells more\n", strings.Join(names[:len(commands())], ", "))
	}
	return wrongUsage
}

func isHelp(arg string) bool { return arg == "-h" || arg == "-help" || arg == "--help" }
