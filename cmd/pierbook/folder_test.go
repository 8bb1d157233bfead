package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A binder is three files in these tests: the names matter, not the content.
func binderOf(text string) map[string][]byte {
	return map[string][]byte{binderFile: []byte(text), figuresFile: []byte(text), piersFile: []byte(text)}
}

// lay writes files below a folder, by path.
func lay(t *testing.T, root string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		path := filepath.Join(root, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
}

// standing returns all files below a folder, by path.
func standing(t *testing.T, root string) map[string]string {
	t.Helper()
	files := map[string]string{}
	require.NoError(t, filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		name, _ := filepath.Rel(root, path)
		files[filepath.ToSlash(name)] = string(text)
		return err
	}))
	return files
}

func withFiles(text string, others map[string]string) map[string]string {
	all := map[string]string{"hut/" + binderFile: text, "hut/" + figuresFile: text, "hut/" + piersFile: text}
	for name, other := range others {
		all[name] = other
	}
	return all
}

// Whatever a killed run left behind, the next one ends with the new binder, all
// that people had put beside it, and nothing else.
func TestNextRunPutsBackWhatAKilledOneLeft(t *testing.T) {
	for _, row := range []struct {
		name         string
		left         map[string]string
		wantByPeople map[string]string
	}{
		{"nothing there yet", nil, nil},
		{"a whole binder", map[string]string{"hut/index.html": "old", "hut/note.txt": "key"}, map[string]string{"hut/note.txt": "key"}},
		{"killed while the first binder was written", map[string]string{".hut.new/index.html": "ha"}, nil},
		{"killed while the second binder was written", map[string]string{"hut/index.html": "old", "hut/note.txt": "key", ".hut.new/index.html": "ha"},
			map[string]string{"hut/note.txt": "key"}},
		{"killed between the exchange and the rename", map[string]string{"hut/index.html": "newer", ".hut.new/index.html": "old", ".hut.new/note.txt": "key"},
			map[string]string{"hut/note.txt": "key"}},
		{"killed before people's files moved over", map[string]string{"hut/index.html": "newer", ".hut.old/index.html": "old", ".hut.old/photos/1.jpg": "pixels"},
			map[string]string{"hut/photos/1.jpg": "pixels"}},
		{"killed between two renames", map[string]string{".hut.old/index.html": "old", ".hut.old/note.txt": "key", ".hut.new/index.html": "newer"},
			map[string]string{"hut/note.txt": "key"}},
		{"people wrote the file again meanwhile", map[string]string{"hut/index.html": "newer", "hut/note.txt": "second key", ".hut.old/note.txt": "first key"},
			map[string]string{"hut/note.txt": "second key", "hut/earlier-1-note.txt": "first key"}},
		{"files dropped from an older form of the binder are the people's", map[string]string{"hut/old-form.csv": "a,b"}, map[string]string{"hut/old-form.csv": "a,b"}},
		{"the neighbours", map[string]string{"barn/index.html": "barn", ".barn.new/index.html": "ba", "index.html": "front"},
			map[string]string{"barn/index.html": "barn", ".barn.new/index.html": "ba", "index.html": "front"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			parent := t.TempDir()
			lay(t, parent, row.left)
			require.NoError(t, writeFolder(parent, "hut", binderOf("new")))
			assert.Equal(t, withFiles("new", row.wantByPeople), standing(t, parent))
		})
	}
}

func TestFailedWriteLeavesTheLastBinder(t *testing.T) {
	parent := t.TempDir()
	require.NoError(t, writeFolder(parent, "hut", binderOf("old")))
	lay(t, parent, map[string]string{"hut/note.txt": "key"})
	files := binderOf("new")
	files[filepath.Join("no-such-folder", "x")] = []byte("cannot be written")
	require.ErrorIs(t, writeFolder(parent, "hut", files), fs.ErrNotExist)
	assert.Equal(t, withFiles("old", map[string]string{"hut/note.txt": "key"}), standing(t, parent))
}

// Where two folders cannot change places in one step, the old one is moved aside.
func TestSwapWithoutExchange(t *testing.T) {
	unable := func(_, _ string) error { return errors.ErrUnsupported }
	parent := t.TempDir()
	lay(t, parent, map[string]string{"hut/index.html": "old", ".hut.new/index.html": "new"})
	target, fresh := filepath.Join(parent, "hut"), filepath.Join(parent, ".hut.new")
	require.NoError(t, swapIn(parent, "hut", fresh, target, unable))
	assert.Equal(t, map[string]string{"hut/index.html": "new", ".hut.old/index.html": "old"}, standing(t, parent))

	// The new one is gone: the old one must be back.
	parent = t.TempDir()
	lay(t, parent, map[string]string{"hut/index.html": "old"})
	target, fresh = filepath.Join(parent, "hut"), filepath.Join(parent, ".hut.new")
	require.Error(t, swapIn(parent, "hut", fresh, target, unable))
	assert.Equal(t, map[string]string{"hut/index.html": "old"}, standing(t, parent))
}

func TestFrontPageIsReplacedWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), binderFile)
	write := func(text string, failing error) error {
		return replaceFileWith(path, func(w io.Writer) error {
			_, err := io.WriteString(w, text)
			return errors.Join(err, failing)
		})
	}
	require.NoError(t, write("old", nil))
	require.ErrorIs(t, write("half of the n", io.ErrShortWrite), io.ErrShortWrite)
	assert.Equal(t, map[string]string{binderFile: "old"}, standing(t, filepath.Dir(path)))
	require.NoError(t, write("new", nil))
	assert.Equal(t, map[string]string{binderFile: "new"}, standing(t, filepath.Dir(path)))
}
