package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/job"
)

// disk gives the calculation its files by slash-separated names from the root
// of the disk (of the volume, where there are volumes).
type disk struct {
	root     string // "/" or "C:\"
	folder   string // working folder, for showing names as a person would type them
	typed    map[string]string
	also     []string // further folders that jobs may read from
	standard []byte   // the job on standard input, once it was asked for
}

// alsoOption is the option that names a further folder to read from.
const alsoOption = "also"

// also is the values of that option.
type also []string

func (a *also) String() string { return strings.Join(*a, " ") }

func (a *also) Set(folder string) error {
	if info, err := os.Stat(folder); err != nil || !info.IsDir() {
		return fmt.Errorf("there is no folder %s", folder)
	}
	*a = append(*a, folder)
	return nil
}

func addAlso(options *flag.FlagSet) *also {
	var folders also
	options.Var(&folders, alsoOption, "a further folder that jobs may read from")
	return &folders
}

func newDisk(folders also) (*disk, error) {
	folder, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	d := &disk{root: filepath.VolumeName(folder) + string(filepath.Separator), folder: folder, typed: map[string]string{}}
	for _, name := range folders {
		absolute, err := filepath.Abs(name)
		if err != nil {
			return nil, err
		}
		d.also = append(d.also, absolute)
	}
	return d, nil
}

// files returns what the job may read: itself, wherever it is, and what lies in
// its folder or in one of those that the command names.
func (d *disk) files(name string) fs.FS {
	return reading{disk: d, job: name, folders: append([]string{filepath.Dir(d.path(name))}, d.also...)}
}

// path turns a name into a path of the system.
func (d *disk) path(name string) string { return filepath.Join(d.root, filepath.FromSlash(name)) }

// The job on standard input is typed as a hyphen and counts as a file of the
// working folder.
const (
	hyphen        = "-"
	standardInput = "standard input"
)

// name turns the path of a job file as typed into a name in [disk.files], and
// keeps in mind how it was typed.
func (d *disk) name(typed string) (string, error) {
	path, shown := typed, typed
	if typed == hyphen {
		path, shown = standardInput, standardInput
		if d.standard == nil {
			text, err := io.ReadAll(io.LimitReader(os.Stdin, job.MostBytes+1))
			if err != nil {
				return "", fmt.Errorf("reading %s: %w", standardInput, err)
			}
			d.standard = append([]byte{}, text...)
		}
	}
	absolute, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	relative, err := filepath.Rel(d.root, absolute)
	if err != nil {
		return "", err
	}
	name := filepath.ToSlash(relative)
	if shown != "" {
		d.typed[name] = shown
	}
	return name, nil
}

// onStandardInput returns the job of that name when it did not come from a file.
func (d *disk) onStandardInput(name string) ([]byte, bool) {
	return d.standard, d.standard != nil && d.typed[name] == standardInput
}

// shown turns a name in [disk.files] into the path that was typed for it, or
// else into one as a person in the working folder would type it.
func (d *disk) shown(name string) string {
	if typed, ok := d.typed[name]; ok {
		return typed
	}
	absolute := d.path(name)
	relative, err := filepath.Rel(d.folder, absolute)
	if err != nil || strings.HasPrefix(relative, filepath.Join("..", "..")) {
		return absolute
	}
	return filepath.ToSlash(relative)
}

// relabelled returns the faults with the names of their files as typed.
func (d *disk) relabelled(faults fault.List) fault.List {
	var shown fault.List
	for _, f := range faults.Sorted() {
		if f.At.File != "" {
			f.At.File = d.shown(f.At.File)
		}
		shown.Add(f)
	}
	return shown
}

// memory is a file that was read already.
type memory struct {
	*bytes.Reader
	name string
}

func (m memory) Stat() (fs.FileInfo, error) {
	return nil, &fs.PathError{Op: "stat", Path: m.name, Err: fs.ErrInvalid}
}
func (m memory) Close() error { return nil }
