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
)

// A binder folder is written whole or not at all. The new one is built beside
// the old under a hidden name, then the two change places; where the system can
// exchange two folders in one step it does, so that even a run killed at that
// moment leaves either the old binder or the new one. Elsewhere the old folder
// is moved aside first, and the next run puts back what a kill left aside.
const (
	newSuffix = ".new"
	oldSuffix = ".old"
)

// writeFolder makes parent/name hold just the files, and keeps whatever else a
// person has put into the folder. The files are name to content.
func writeFolder(parent, name string, files map[string][]byte) error {
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("making the output folder: %w", err)
	}
	if err := tidyUp(parent, name); err != nil {
		return fmt.Errorf("putting %s back in order: %w", name, err)
	}
	target := filepath.Join(parent, name)
	if info, err := os.Stat(target); err == nil && !info.IsDir() {
		return fmt.Errorf("%s is a file where the binder's folder has to stand; move it away", target)
	}
	fresh := filepath.Join(parent, "."+name+newSuffix)
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
	old := filepath.Join(parent, "."+name+oldSuffix)
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

// tidyUp deals with what an earlier run left: a binder moved aside goes back
// if its place is empty, else the files that people had put into it move over
// to the new binder; half-built folders are removed.
func tidyUp(parent, name string) error {
	target := filepath.Join(parent, name)
	old := filepath.Join(parent, "."+name+oldSuffix)
	fresh := filepath.Join(parent, "."+name+newSuffix)
	if _, err := os.Lstat(old); err == nil {
		if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
			if err := os.Rename(old, target); err != nil {
				return err
			}
		} else if err := moveForeign(old, target); err != nil {
			return err
		}
	}
	if _, err := os.Lstat(target); err == nil {
		// A kill between the exchange and the rename leaves the old binder here.
		if err := moveForeign(fresh, target); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return errors.Join(os.RemoveAll(old), os.RemoveAll(fresh))
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

// The files of a binder.
const (
	binderFile  = "index.html"
	clientFile  = "client.html"
	figuresFile = "figures.json"
	piersFile   = "piers.csv"
	cutsFile    = "cuts.csv"
	orderFile   = "order.csv"
)

func isOwnFile(name string) bool {
	switch name {
	case binderFile, clientFile, figuresFile, piersFile, cutsFile, orderFile:
		return true
	}
	return false
}

// replaceFileWith writes one file whole: beside it first, then renamed over it.
func replaceFileWith(path string, write func(io.Writer) error) error {
	beside := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+newSuffix)
	var content bytes.Buffer
	if err := write(&content); err != nil {
		return err
	}
	if err := os.WriteFile(beside, content.Bytes(), 0o644); err != nil {
		return errors.Join(err, os.Remove(beside))
	}
	return os.Rename(beside, path)
}

// hiddenLeftover says whether a folder name is one of ours on the way in or out.
func hiddenLeftover(name string) bool {
	return strings.HasPrefix(name, ".") && (strings.HasSuffix(name, newSuffix) || strings.HasSuffix(name, oldSuffix))
}
