package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNamesCannotRepaintTheTerminal gives jobs names, in the file and of the
// file, that hold escape sequences and turn the direction of writing.
func TestNamesCannotRepaintTheTerminal(t *testing.T) {
	const evil = "e\x1b[2J\u202evil\u0085"
	folder := t.TempDir()
	good := filepath.Join(folder, evil+".yaml")
	if err := os.WriteFile(good, []byte(strings.Replace(steep, "Steep bank", `"\e[31mSt\u202eeep"`, 1)), 0o644); err != nil {
		t.Skip("the disk takes no such name: ", err)
	}
	bad := filepath.Join(folder, evil+"bad.yaml")
	require.NoError(t, os.WriteFile(bad, []byte("name: x\x1b[2J\n"), 0o644))
	for _, args := range [][]string{
		{"check", good, bad}, {"make", good, bad, "-o", filepath.Join(folder, evil)}, {"why", good, "floor.height\x1b"},
		{evil}, {"make", "-" + evil}, {"help", evil}, {"check", filepath.Join(folder, evil+"none")},
	} {
		var stdout, stderr bytes.Buffer
		assert.NotEqual(t, done, run(args, &stdout, &stderr))
		said := stdout.String() + stderr.String()
		assert.NotEmpty(t, said)
		assert.NotContainsf(t, said, "\x1b", "%q", args)
		assert.NotContainsf(t, said, "\u202e", "%q", args)
		assert.NotContainsf(t, said, "\u0085", "%q", args)
	}
}
