package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A run that finds another one in its output folder says so, waits, and then
// does its work.
func TestSecondRunWaitsForTheFirst(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "A.yaml"), fmt.Appendf(nil, hut, "A"), 0o644))
	out := filepath.Join(folder, "out")
	leave, err := occupy(out, io.Discard)
	require.NoError(t, err)

	second := exec.Command("pierbook", "make", "A.yaml", "-o", "out")
	second.Dir = folder
	said, err := second.StderrPipe()
	require.NoError(t, err)
	require.NoError(t, second.Start())
	lines := bufio.NewReader(said)
	line, err := lines.ReadString('\n')
	require.NoError(t, err)
	assert.Equal(t, fmt.Sprintf("pierbook make: another run (process %d) is writing into out; this one waits until it is done\n", os.Getpid()), line)
	assert.NoDirExists(t, filepath.Join(out, killed))

	leave()
	rest, err := io.ReadAll(lines)
	require.NoError(t, err)
	require.NoError(t, second.Wait(), string(rest))
	assert.FileExists(t, filepath.Join(out, killed, binderFile))
	assert.NoFileExists(t, filepath.Join(out, lockFile))
}

// A lock file that a killed run left holds nobody up, and an output folder that
// nothing was written into is not left behind.
func TestLockOfAKilledRunHoldsNobodyUp(t *testing.T) {
	out := t.TempDir()
	lay(t, out, map[string]string{lockFile: "99999999\n"})
	var said strings.Builder
	leave, err := occupy(out, &said)
	require.NoError(t, err)
	assert.Empty(t, said.String())
	leave()
	assert.Empty(t, standing(t, out))

	leave, err = occupy(filepath.Join(out, "a", "b"), io.Discard)
	require.NoError(t, err)
	leave()
	assert.NoDirExists(t, filepath.Join(out, "a"))
	assert.DirExists(t, out)
}

// Runs of two revisions at once leave the binder of one of them, whole.
func TestRunsAtOnceDoNotMix(t *testing.T) {
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
	var runs sync.WaitGroup
	for i := range 8 {
		runs.Go(func() {
			said, err := run([]string{"A", "B"}[i%2], "out").CombinedOutput()
			assert.NoError(t, err, string(said))
		})
	}
	runs.Wait()
	assert.Contains(t, whole, stateOf(t, filepath.Join(folder, "out", killed)))
	left, err := filepath.Glob(filepath.Join(folder, "out", ".*"))
	require.NoError(t, err)
	assert.Empty(t, left)
}
