package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"
)

// parse reads options wherever they stand among the arguments, since the flag
// package stops at the first plain one and would take "job.yaml -o out" for
// three jobs. It returns the plain arguments, and an exit code when the
// command should not go on.
func parse(options *flag.FlagSet, args []string, stdout, stderr io.Writer) (plain []string, exit int, stop bool) {
	options.SetOutput(io.Discard)
	for {
		err := options.Parse(args)
		switch {
		case errors.Is(err, flag.ErrHelp):
			printCommandHelp(stdout, options.Name())
			return nil, done, true
		case err != nil:
			fmt.Fprintf(stderr, "pierbook %s: %s\n  pierbook help %s shows what it takes\n", options.Name(), optionTrouble(err), options.Name())
			return nil, wrongUsage, true
		}
		if options.NArg() == 0 {
			return plain, done, false
		}
		taken := len(args) - options.NArg()
		if taken > 0 && args[taken-1] == "--" {
			return append(plain, options.Args()...), done, false
		}
		plain = append(plain, options.Arg(0))
		args = options.Args()[1:]
	}
}

// optionTrouble says in a builder's words what the flag package found.
func optionTrouble(err error) string {
	text := err.Error()
	if option, ok := strings.CutPrefix(text, "flag provided but not defined: "); ok {
		return "there is no option " + option
	}
	if option, ok := strings.CutPrefix(text, "flag needs an argument: "); ok {
		return "nothing stands after " + option
	}
	if _, trouble, ok := strings.Cut(text, "for flag -"); ok {
		if option, what, ok := strings.Cut(trouble, ": "); ok {
			return "-" + option + ": " + what
		}
	}
	return text
}

// given says whether an option was written.
func given(options *flag.FlagSet, name string) bool {
	found := false
	options.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}
