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

// ourMark is the mark of a folder that the program made.
const ourMark = `{"made_by":"pierbook","job":"Hut"}`

// A binder is three files and the mark in these tests: the names matter, not the
// content.
func binderOf(text string) map[string][]byte {
	return map[string][]byte{markFile: []byte(ourMark), binderFile: []byte(text), figuresFile: []byte(text), piersFile: []byte(text)}
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
	all := map[string]string{"hut/" + markFile: ourMark, "hut/" + binderFile: text, "hut/" + figuresFile: text, "hut/" + piersFile: text}
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
		{"a whole binder", map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "old", "hut/note.txt": "key"}, map[string]string{"hut/note.txt": "key"}},
		{"killed while the first binder was written", map[string]string{".pierbook-hut.new/index.html": "ha"}, nil},
		{"killed while the second binder was written", map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "old", "hut/note.txt": "key", ".pierbook-hut.new/index.html": "ha"},
			map[string]string{"hut/note.txt": "key"}},
		{"killed between the exchange and the rename", map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "newer", ".pierbook-hut.new/index.html": "old", ".pierbook-hut.new/note.txt": "key"},
			map[string]string{"hut/note.txt": "key"}},
		{"killed before people's files moved over", map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "newer", ".pierbook-hut.old/index.html": "old", ".pierbook-hut.old/photos/1.jpg": "pixels"},
			map[string]string{"hut/photos/1.jpg": "pixels"}},
		{"killed between two renames", map[string]string{".pierbook-hut.old/.pierbook": ourMark, ".pierbook-hut.old/index.html": "old", ".pierbook-hut.old/note.txt": "key", ".pierbook-hut.new/index.html": "newer"},
			map[string]string{"hut/note.txt": "key"}},
		{"people wrote the file again meanwhile", map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "newer", "hut/note.txt": "second key", ".pierbook-hut.old/note.txt": "first key"},
			map[string]string{"hut/note.txt": "second key", "hut/earlier-1-note.txt": "first key"}},
		{"files dropped from an older form of the binder are the people's", map[string]string{"hut/.pierbook": ourMark, "hut/old-form.csv": "a,b"}, map[string]string{"hut/old-form.csv": "a,b"}},
		{"the neighbours", map[string]string{"barn/index.html": "barn", ".pierbook-barn.new/index.html": "ba", "index.html": "front"},
			map[string]string{"barn/index.html": "barn", ".pierbook-barn.new/index.html": "ba", "index.html": "front"}},
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
	lay(t, parent, map[string]string{"hut/index.html": "old", ".pierbook-hut.new/index.html": "new"})
	target, fresh := filepath.Join(parent, "hut"), filepath.Join(parent, ".pierbook-hut.new")
	require.NoError(t, swapIn(parent, "hut", fresh, target, unable))
	assert.Equal(t, map[string]string{"hut/index.html": "new", ".pierbook-hut.old/index.html": "old"}, standing(t, parent))

	// The new one is gone: the old one must be back.
	parent = t.TempDir()
	lay(t, parent, map[string]string{"hut/index.html": "old"})
	target, fresh = filepath.Join(parent, "hut"), filepath.Join(parent, ".pierbook-hut.new")
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

// All that killed runs left is cleared, whichever job comes next; people's own
// files of like names stay.
func TestLeftoversOfAllJobsAreCleared(t *testing.T) {
	parent := t.TempDir()
	lay(t, parent, map[string]string{
		"barn/.pierbook": ourMark, "barn/index.html": "barn", ".pierbook-barn.new/.pierbook": ourMark, ".pierbook-barn.new/index.html": "ba", ".pierbook-barn.old/note.txt": "key",
		".pierbook-mill.old/.pierbook": ourMark, ".pierbook-mill.old/index.html": "mill", ".pierbook-index.html.new": "fro",
		"photos/1.jpg": "pixels", ".pierbook-photos.new/2.jpg": "more pixels", ".photos.new/3.jpg": "pixels", ".hut.old": "mine",
	})
	require.NoError(t, tidyAll(parent))
	assert.Equal(t, map[string]string{
		"barn/.pierbook": ourMark, "barn/index.html": "barn", "barn/note.txt": "key", "mill/.pierbook": ourMark, "mill/index.html": "mill",
		"photos/1.jpg": "pixels", ".pierbook-photos.new/2.jpg": "more pixels", ".photos.new/3.jpg": "pixels", ".hut.old": "mine",
	}, standing(t, parent))
}

// What the program did not make it does not touch: nothing is lost and nothing
// new stands beside it.
func TestFolderWithoutAMarkIsLeftAlone(t *testing.T) {
	for _, row := range []struct {
		name  string
		there map[string]string
	}{
		{"photos", map[string]string{"hut/1.jpg": "pixels"}},
		{"a page", map[string]string{"hut/index.html": "my hut"}},
		{"figures of another program", map[string]string{"hut/figures.json": `{"schema": 1, "job": {"name": "Hut"}, "figures": {}}`}},
		{"the files of a binder with other content", map[string]string{"hut/index.html": "a", "hut/client.html": "b", "hut/figures.json": "{}", "hut/piers.csv": "c", "hut/cuts.csv": "d", "hut/order.csv": "e"}},
		{"a mark of something else", map[string]string{"hut/.pierbook": `{"made_by":"me"}`, "hut/1.jpg": "pixels"}},
		{"an empty mark", map[string]string{"hut/.pierbook": "", "hut/1.jpg": "pixels"}},
		{"a file", map[string]string{"hut": "mine"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			parent := t.TempDir()
			lay(t, parent, row.there)
			var foreign notOurs
			require.ErrorAs(t, writeFolder(parent, "hut", binderOf("new")), &foreign)
			assert.Equal(t, row.there, standing(t, parent))
		})
	}
	t.Run("an empty folder", func(t *testing.T) {
		parent := t.TempDir()
		require.NoError(t, os.Mkdir(filepath.Join(parent, "hut"), 0o755))
		require.Error(t, writeFolder(parent, "hut", binderOf("new")))
		assert.Empty(t, standing(t, parent))
	})
	t.Run("a link to a binder", func(t *testing.T) {
		parent, elsewhere := t.TempDir(), t.TempDir()
		there := map[string]string{"hut/.pierbook": ourMark, "hut/index.html": "old", "hut/note.txt": "key"}
		lay(t, elsewhere, there)
		require.NoError(t, os.Symlink(filepath.Join(elsewhere, "hut"), filepath.Join(parent, "hut")))
		var foreign notOurs
		require.ErrorAs(t, writeFolder(parent, "hut", binderOf("new")), &foreign)
		assert.Equal(t, there, standing(t, elsewhere))
	})
}

// A binder made before there were marks is known by all its files and by the
// job that its figures name.
func TestBinderFromBeforeTheMarkIsReplaced(t *testing.T) {
	older := map[string]string{"hut/index.html": "a", "hut/client.html": "b", "hut/figures.json": `{"schema": 1, "job": {"name": "Hut"}, "figures": {}}`,
		"hut/piers.csv": "c", "hut/cuts.csv": "d", "hut/order.csv": "e", "hut/note.txt": "key"}
	parent := t.TempDir()
	lay(t, parent, older)
	holder, found, err := holderOf(filepath.Join(parent, "hut"))
	require.NoError(t, err)
	assert.True(t, found)
	assert.True(t, mark{Job: "Hut", Size: "12' x 8'", From: "ab"}.same(holder))
	assert.False(t, mark{Job: "HUT", Size: "12' x 8'", From: "ab"}.same(holder))
	require.NoError(t, writeFolder(parent, "hut", binderOf("new")))
	assert.Equal(t, withFiles("new", map[string]string{"hut/note.txt": "key"}), standing(t, parent))
}

func TestWhichBinderIsOfOneJob(t *testing.T) {
	standing := mark{Job: "Garden shed", Client: "A. Reed", Size: "12' x 8'", From: "aa", File: "job.yaml"}
	for _, row := range []struct {
		name string
		job  mark
		want bool
	}{
		{"the same file", mark{Job: "Garden shed!", Size: "16' x 8'", From: "aa"}, true},
		{"a copy for the next issue", mark{Job: "Garden shed", Client: "A. Reed", Size: "12' x 8'", From: "bb"}, true},
		{"a name spelt otherwise", mark{Job: "GARDEN SHED", Client: "A. Reed", Size: "12' x 8'", From: "bb"}, false},
		{"another client", mark{Job: "Garden shed", Client: "B. Marsh", Size: "12' x 8'", From: "bb"}, false},
		{"another size", mark{Job: "Garden shed", Client: "A. Reed", Size: "16' x 8'", From: "bb"}, false},
		{"the built-in sample", mark{Job: "Kiln", Size: "12' x 8'"}, false},
	} {
		assert.Equal(t, row.want, row.job.same(standing), row.name)
	}
}
