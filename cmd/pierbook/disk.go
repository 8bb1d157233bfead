package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pierbook/calc/fault"
)

// disk lets the calculation read files by slash-separated names from the root
// of the disk (of the volume, where there are volumes), so that a job may name
// a shop's file in the folder above its own.
type disk struct {
	root   string // "/" or "C:\"
	folder string // working folder, for showing names as a person would type them
	typed  map[string]string
}

func newDisk() (disk, error) {
	folder, err := os.Getwd()
	if err != nil {
		return disk{}, err
	}
	return disk{root: filepath.VolumeName(folder) + string(filepath.Separator), folder: folder, typed: map[string]string{}}, nil
}

// files returns the whole disk as a file system.
func (d disk) files() fs.FS { return os.DirFS(d.root) }

// name turns the path of a job file as typed into a name in [disk.files], and
// keeps in mind how it was typed.
func (d disk) name(typed string) (string, error) {
	absolute, err := filepath.Abs(typed)
	if err != nil {
		return "", err
	}
	relative, err := filepath.Rel(d.root, absolute)
	if err != nil {
		return "", err
	}
	name := filepath.ToSlash(relative)
	if typed != "" {
		d.typed[name] = typed
	}
	return name, nil
}

// shown turns a name in [disk.files] into the path that was typed for it, or
// else into one as a person in the working folder would type it.
func (d disk) shown(name string) string {
	if typed, ok := d.typed[name]; ok {
		return typed
	}
	absolute := filepath.Join(d.root, filepath.FromSlash(name))
	relative, err := filepath.Rel(d.folder, absolute)
	if err != nil || strings.HasPrefix(relative, filepath.Join("..", "..")) {
		return absolute
	}
	return filepath.ToSlash(relative)
}

// relabelled returns the faults with the names of their files as typed.
func (d disk) relabelled(faults fault.List) fault.List {
	var shown fault.List
	for _, f := range faults.Sorted() {
		if f.At.File != "" {
			f.At.File = d.shown(f.At.File)
		}
		shown.Add(f)
	}
	return shown
}
