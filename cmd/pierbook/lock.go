package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// lockFile stands in the output folder while a run writes there. The system
// gives the lock free when the run ends, however it ends.
const lockFile = hidden + "lock"

var errLocked = errors.New("another run holds the lock")

// occupy makes the output folder if need be and keeps other runs out of it until
// the returned function is called. While another run is there it says so and
// waits.
func occupy(out string, stderr io.Writer) (leave func(), err error) {
	path := filepath.Join(out, lockFile)
	for told := false; ; {
		made, err := makeFolders(out)
		if err != nil {
			return nil, fmt.Errorf("making the output folder: %w", plain(err))
		}
		file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
		if errors.Is(err, fs.ErrNotExist) {
			continue // a run that wrote nothing has just taken its folder away
		}
		if err != nil {
			return nil, fmt.Errorf("writing into %s: %w", filepath.ToSlash(out), plain(err))
		}
		err = lock(file, false)
		if errors.Is(err, errLocked) {
			if !told {
				fmt.Fprintf(stderr, "pierbook make: another run%s is writing into %s; this one waits until it is done\n", runOf(file), filepath.ToSlash(out))
				told = true
			}
			err = lock(file, true)
		}
		if err != nil {
			fmt.Fprintf(stderr, "pierbook make: the disk that holds %s knows no locks (%v): see that no other run writes there\n", filepath.ToSlash(out), err)
		} else if !stillThere(path, file) {
			file.Close() // the run before has taken its lock away
			continue
		}
		// The number is for the message of a run that waits, and no more.
		_, _ = file.WriteAt([]byte(strconv.Itoa(os.Getpid())+"\n"), 0)
		return func() {
			// Taken away while it is held, so that it is never the next run's. Where
			// an open file cannot be removed, nor can that of the next run.
			stuck := os.Remove(path) != nil
			file.Close()
			if stuck {
				os.Remove(path)
			}
			for _, folder := range made {
				os.Remove(folder) // one that stayed empty
			}
		}, nil
	}
}

// stillThere says whether the path leads to the open file.
func stillThere(path string, file *os.File) bool {
	named, err := os.Lstat(path)
	if err != nil {
		return false
	}
	opened, err := file.Stat()
	return err == nil && os.SameFile(named, opened)
}

// runOf names the run that holds the lock, when it has said which it is.
func runOf(file *os.File) string {
	text := make([]byte, 24)
	n, _ := file.ReadAt(text, 0)
	number, _, _ := strings.Cut(string(text[:n]), "\n")
	if _, err := strconv.Atoi(number); err != nil {
		return ""
	}
	return " (process " + number + ")"
}

// makeFolders makes a folder with those above it and returns which it made, the
// innermost first.
func makeFolders(path string) (made []string, err error) {
	for at := filepath.Clean(path); ; at = filepath.Dir(at) {
		if _, err := os.Stat(at); !errors.Is(err, fs.ErrNotExist) || at == filepath.Dir(at) {
			break
		}
		made = append(made, at)
	}
	return made, os.MkdirAll(path, 0o755)
}
