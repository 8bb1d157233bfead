package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

const (
	kills    = 80
	patience = 10 * time.Second // with the race detector on, fewer runs have to do
	killed   = "hen-house-on-the-bank"
)

const hut = `name: Hen house on the bank
revision: %s
platform: {length: 12', width: 8', use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
ground:
  sights:
    - [bench_mark: 4' 2", A1: 4' 9", A4: 4' 11", C1: 4' 4", C4: 4' 7", bench_mark: 4' 2"]
`

// TestKilledRunLeavesAWholeBinder kills runs at any moment, most of them while
// files are written and folders change places, and looks each time whether the
// binder is one that a whole run writes: of one of two revisions, issued after
// either, to the byte. What people put into the folder is there at the end.
func TestKilledRunLeavesAWholeBinder(t *testing.T) {
	if testing.Short() {
		t.Skip("starts and kills the program many times")
	}
	folder := t.TempDir()
	for _, revision := range []string{"A", "B"} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, revision+".yaml"), fmt.Appendf(nil, hut, revision), 0o644))
	}
	run := func(revision, out string) *exec.Cmd {
		command := exec.Command("pierbook", "make", revision+".yaml", "-o", out)
		command.Dir = folder
		return command
	}
	whole := wholeBinders(t, folder, run)
	takes := howLong(t, run)
	note := filepath.Join(folder, "out", killed, "note.txt")
	require.NoError(t, run("A", "out").Run())
	require.NoError(t, os.WriteFile(note, []byte("the key hangs in the shed"), 0o644))

	chance := rand.New(rand.NewPCG(1, 2))
	runs, cut, left := 0, 0, 0
	for start := time.Now(); runs < kills && time.Since(start) < patience; runs++ {
		command := run([]string{"A", "B"}[chance.IntN(2)], "out")
		require.NoError(t, command.Start())
		time.Sleep(takes/3 + time.Duration(chance.Int64N(int64(takes))))
		_ = command.Process.Kill() // it may have ended before
		if command.Wait() != nil {
			cut++
		}
		leftovers, err := filepath.Glob(filepath.Join(folder, "out", ".*"))
		require.NoError(t, err)
		left += len(leftovers)
		require.Containsf(t, whole, stateOf(t, filepath.Join(folder, "out", killed)), "after run %d the binder is not whole", runs)
	}
	t.Logf("%d of %d runs were cut off, %d left something behind; a run takes %v", cut, runs, left, takes)
	require.NotZero(t, cut, "no run was cut off")

	require.NoError(t, run("A", "out").Run())
	require.FileExists(t, note)
	leftovers, err := filepath.Glob(filepath.Join(folder, "out", ".*"))
	require.NoError(t, err)
	require.Empty(t, leftovers)
}

// wholeBinders returns the states of a binder that whole runs write: since an
// issue is compared with the last one, each revision after each.
func wholeBinders(t *testing.T, folder string, run func(revision, out string) *exec.Cmd) map[string]string {
	t.Helper()
	states := map[string]string{}
	for _, order := range []string{"AABBA", "BBAAB"} {
		out := "whole-" + order
		for i := range order {
			said, err := run(order[i:i+1], out).CombinedOutput()
			require.NoError(t, err, string(said))
			states[stateOf(t, filepath.Join(folder, out, killed))] = order[:i+1]
		}
	}
	return states
}

func howLong(t *testing.T, run func(revision, out string) *exec.Cmd) time.Duration {
	t.Helper()
	var times []time.Duration
	for range 5 {
		start := time.Now()
		require.NoError(t, run("A", "timed").Run())
		times = append(times, time.Since(start))
	}
	return slices.Sorted(slices.Values(times))[2]
}

// stateOf returns a fingerprint of the files of a binder, and which are there.
func stateOf(t *testing.T, folder string) string {
	t.Helper()
	files := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, entry := range entries {
		if !isOwnFile(entry.Name()) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(folder, entry.Name()))
		require.NoError(t, err)
		files[entry.Name()] = text
	}
	var state bytes.Buffer
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(&state, "%s %x\n", name, sha256.Sum256(files[name]))
	}
	return state.String()
}
