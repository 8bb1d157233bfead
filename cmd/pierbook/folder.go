package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"pierbook/layouts"
)

// A binder folder is written whole or not at all. The new one is built beside
// the old under a hidden name, then the two change places; where the system can
// exchange two folders in one step it does, so that even a run killed at that
// moment leaves either the old binder or the new one. Elsewhere the old folder
// is moved aside first, and the next run puts back what a kill left aside.
const (
	hidden    = ".pierbook-"
	newSuffix = ".new"
	oldSuffix = ".old"
)

func freshOf(parent, name string) string { return filepath.Join(parent, hidden+name+newSuffix) }
func asideOf(parent, name string) string { return filepath.Join(parent, hidden+name+oldSuffix) }

// writeFolder makes parent/name hold just the files, and keeps whatever else a
// person has put into the folder. The files are name to content, the mark among
// them; a folder without one is left alone.
func writeFolder(parent, name string, files map[string][]byte) error {
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("making the output folder: %w", err)
	}
	if err := tidyUp(parent, name); err != nil {
		return fmt.Errorf("putting %s back in order: %w", name, err)
	}
	target := filepath.Join(parent, name)
	if _, _, err := holderOf(target); err != nil {
		return err
	}
	fresh := freshOf(parent, name)
	if err := fill(fresh, files); err != nil {
		return errors.Join(fmt.Errorf("writing %s: %w", name, err), os.RemoveAll(fresh))
	}
	if err := swapIn(parent, name, fresh, target, exchange); err != nil {
		return errors.Join(fmt.Errorf("putting %s in place: %w", name, err), os.RemoveAll(fresh))
	}
	if err := tidyUp(parent, name); err != nil {
		return fmt.Errorf("clearing up after %s: %w", name, err)
	}
	return nil
}

func fill(folder string, files map[string][]byte) error {
	if err := os.Mkdir(folder, 0o755); err != nil {
		return err
	}
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		if err := os.WriteFile(filepath.Join(folder, name), files[name], 0o644); err != nil {
			return err
		}
	}
	return nil
}

// swapIn puts fresh in the place of target; what was there before ends up
// under the hidden old name. Exchange fails where the system cannot do it.
func swapIn(parent, name, fresh, target string, exchange func(a, b string) error) error {
	old := asideOf(parent, name)
	if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		return os.Rename(fresh, target)
	}
	if err := exchange(fresh, target); err == nil {
		return os.Rename(fresh, old)
	}
	if err := os.Rename(target, old); err != nil {
		return err
	}
	if err := os.Rename(fresh, target); err != nil {
		return errors.Join(err, os.Rename(old, target))
	}
	return nil
}

// tidyAll deals with all that killed runs left in the output folder. It is
// called while no other run writes there.
func tidyAll(parent string) error {
	entries, err := os.ReadDir(parent)
	if err != nil {
		return err
	}
	var trouble error
	for _, entry := range entries {
		rest, ours := strings.CutPrefix(entry.Name(), hidden)
		name, fresh := strings.CutSuffix(rest, newSuffix)
		if !fresh {
			name = strings.TrimSuffix(rest, oldSuffix)
		}
		switch {
		case !ours || name == "" || name == rest:
		case !entry.IsDir():
			trouble = errors.Join(trouble, os.Remove(filepath.Join(parent, entry.Name())))
		default:
			trouble = errors.Join(trouble, tidyUp(parent, name))
		}
	}
	return trouble
}

// tidyUp deals with what an earlier run left: a binder moved aside goes back
// if its place is empty, else the files that people had put into it move over
// to the new binder; half-built folders are removed. When somebody else's folder
// has taken the place meanwhile, all stays as it is.
func tidyUp(parent, name string) error {
	target, old, fresh := filepath.Join(parent, name), asideOf(parent, name), freshOf(parent, name)
	if isFolder(old) {
		if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
			if err := os.Rename(old, target); err != nil {
				return err
			}
		}
	}
	_, found, err := holderOf(target)
	if err != nil {
		return nil // the run says so when it comes to that job
	}
	for _, left := range []string{old, fresh} {
		// A kill between the exchange and the rename leaves the old binder under
		// the new one's hidden name.
		if found && isFolder(left) {
			if err := moveForeign(left, target); err != nil {
				return err
			}
		}
		if err := os.RemoveAll(left); err != nil {
			return err
		}
	}
	return nil
}

// isFolder says whether a folder stands at the path, not a link to one.
func isFolder(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.IsDir()
}

// moveForeign moves what the program does not write itself from one folder to
// another, past what stands there under the same name.
func moveForeign(from, to string) error {
	entries, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	for _, entry := range entries {
		if isOwnFile(entry.Name()) {
			continue
		}
		if err := os.Rename(filepath.Join(from, entry.Name()), filepath.Join(to, freeName(to, entry.Name()))); err != nil {
			return err
		}
	}
	return nil
}

// freeName returns a name that nothing in the folder has: the given one if it can.
func freeName(folder, name string) string {
	free := name
	for i := 1; ; i++ {
		if _, err := os.Lstat(filepath.Join(folder, free)); errors.Is(err, fs.ErrNotExist) {
			return free
		}
		free = fmt.Sprintf("earlier-%d-%s", i, name)
	}
}

// replaceFrontPage writes the front page whole: beside it first, then renamed
// over it. One that this program did not write stays.
func replaceFrontPage(path string, write func(io.Writer) error) error {
	const away = "move it away or give it another name"
	if info, err := os.Lstat(path); err == nil {
		if !info.Mode().IsRegular() {
			return notOurs{path, "is a link or a folder where the front page has to stand", away}
		}
		if text, err := readPlain(path, mostFigures); err != nil || !layouts.IsFrontPage(text) {
			return notOurs{path, "was not made by this program", away}
		}
	}
	return replaceFileWith(path, write)
}

// replaceFileWith writes one file whole: beside it first, then renamed over it.
func replaceFileWith(path string, write func(io.Writer) error) error {
	beside := freshOf(filepath.Dir(path), filepath.Base(path))
	var content bytes.Buffer
	if err := write(&content); err != nil {
		return err
	}
	if err := os.WriteFile(beside, content.Bytes(), 0o644); err != nil {
		return errors.Join(err, os.Remove(beside))
	}
	return os.Rename(beside, path)
}
