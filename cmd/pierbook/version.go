package main

import (
	"flag"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"
)

// version is raised whenever the same job file may give other figures. Whoever
// builds the program for others may set it when linking.
var version = "1.1"

// madeBy names the program as it was built: its version and, where the build
// recorded it, the revision of its source.
func madeBy() string {
	revision, changed := builtFrom()
	if revision == "" {
		return version
	}
	return version + "+" + revision[:min(len(revision), 12)] + map[bool]string{true: ".changed"}[changed]
}

// builtFrom returns what the build recorded of its source, or nothing.
func builtFrom() (revision string, changed bool) {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "", false
	}
	for _, setting := range info.Settings {
		switch setting.Key {
		case "vcs.revision":
			revision = setting.Value
		case "vcs.modified":
			changed = setting.Value == "true"
		}
	}
	return revision, changed
}

func runVersion(args []string, stdout, stderr io.Writer) int {
	options := flag.NewFlagSet("version", flag.ContinueOnError)
	plain, exit, stop := parse(options, args, stdout, stderr)
	if stop {
		return exit
	}
	if len(plain) > 0 {
		fmt.Fprintln(stderr, "pierbook version: it takes nothing after it\n  pierbook version")
		return wrongUsage
	}
	source := "its build kept no record of its source"
	if revision, changed := builtFrom(); revision != "" {
		source = "source " + revision + map[bool]string{true: ", changed since"}[changed]
	}
	fmt.Fprintf(stdout, "pierbook %s\n%s\nbuilt with %s for %s/%s\n", madeBy(), source, strings.TrimSpace(runtime.Version()), runtime.GOOS, runtime.GOARCH)
	return done
}
