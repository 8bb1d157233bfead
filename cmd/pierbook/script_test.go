package main

import (
	"flag"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// update rewrites the golden texts: read the change before it is committed.
var update = flag.Bool("update", false, "rewrite the expected texts in testdata")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pierbook": func() {
		stumble = stumbleAt(os.Getenv("PIERBOOK_STUMBLE"))
		if os.Getenv("OTHER") != "" {
			version = "0.9"
		}
		main()
	}})
}

// stumbleAt makes the program fail, as a mistake in it would, at the jobs whose
// path ends with the name.
func stumbleAt(name string) func(string) {
	return func(job string) {
		if name != "" && strings.HasSuffix(job, name) {
			_ = []int{}[len(name)]
		}
	}
}

// TestScripts runs the real program as a person would, one behaviour a script.
func TestScripts(t *testing.T) {
	jobs, err := filepath.Abs(jobsFolder)
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("JOBS", jobs)
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "holds": holds},
		Condition: func(name string) (bool, error) {
			return name == "root" && os.Getuid() == 0, nil
		},
	})
}

// exits runs a program and looks for one exit code: exits 2 pierbook make -x
func exits(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM ...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := err.(*exec.ExitError)
		if !ok {
			ts.Fatalf("running %s: %v", args[1], err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// holds looks for exactly the named files below a folder, without the marks of
// binders: holds DIR FILE...
func holds(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) < 1 {
		ts.Fatalf("usage: holds DIR FILE...")
	}
	root := ts.MkAbs(args[0])
	var found []string
	ts.Check(filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || path == filepath.Join(root, ".tmp") || entry.Name() == markFile {
			return err
		}
		name, err := filepath.Rel(root, path)
		found = append(found, filepath.ToSlash(name))
		return err
	}))
	want := slices.Clone(args[1:])
	slices.Sort(want)
	slices.Sort(found)
	if !slices.Equal(found, want) {
		ts.Fatalf("%s holds %q, want %q", args[0], found, want)
	}
}
