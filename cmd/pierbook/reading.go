package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"pierbook/calc/job"
)

// reading is the part of the disk that one job may read. Links are followed as
// far as they stay in it. Pipes and devices are refused before they are opened,
// since some wait for ever and some act on being opened; a file is opened inside
// its folder, so that nothing exchanged for a link meanwhile leads out.
type reading struct {
	disk    *disk
	job     string
	folders []string // as paths of the system
}

// Outside implements [job.Bounded]. What does not exist is outside when its name
// is, so that nobody learns from the answer what there is elsewhere.
func (r reading) Outside(name string) bool {
	if name == r.job {
		return false
	}
	path := r.disk.path(name)
	if !within(path, r.folders) {
		return true
	}
	real, err := filepath.EvalSymlinks(path)
	return err == nil && !within(real, r.real())
}

// real returns the folders without links on the way to them.
func (r reading) real() []string {
	var list []string
	for _, folder := range r.folders {
		if real, err := filepath.EvalSymlinks(folder); err == nil {
			list = append(list, real)
		}
	}
	return list
}

// within says whether path is one of the folders or lies in one.
func within(path string, folders []string) bool {
	for _, folder := range folders {
		if relative, err := filepath.Rel(folder, path); err == nil && filepath.IsLocal(relative) {
			return true
		}
	}
	return false
}

// Open implements [fs.FS].
func (r reading) Open(name string) (fs.File, error) {
	file, err := r.open(name)
	if err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: plain(err)}
	}
	return file, nil
}

// plain takes the path out of an error: whoever asked puts it in its own way.
func plain(err error) error {
	if wrapped, ok := err.(*fs.PathError); ok {
		return wrapped.Err
	}
	return err
}

func (r reading) open(name string) (fs.File, error) {
	if !fs.ValidPath(name) {
		return nil, fs.ErrInvalid
	}
	if text, ok := r.disk.onStandardInput(name); ok && name == r.job {
		return memory{bytes.NewReader(text), name}, nil
	}
	if r.Outside(name) {
		return nil, job.ErrOutside
	}
	real, err := filepath.EvalSymlinks(r.disk.path(name))
	if err != nil {
		return nil, err
	}
	folder, err := os.OpenRoot(r.around(name, real))
	if err != nil {
		return nil, err
	}
	defer folder.Close()
	relative, err := filepath.Rel(folder.Name(), real)
	if err != nil {
		return nil, err
	}
	if info, err := folder.Stat(relative); err != nil {
		return nil, err
	} else if err := readable(info); err != nil {
		return nil, err
	}
	file, err := folder.OpenFile(relative, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, err
	}
	return checked(file)
}

// around returns the folder, without links, in which a file is opened: one of
// those that may be read, or the job's own wherever a link has led to.
func (r reading) around(name, real string) string {
	if name != r.job {
		for _, folder := range r.real() {
			if within(real, []string{folder}) {
				return folder
			}
		}
	}
	return filepath.Dir(real)
}

// checked looks once more at what was opened.
func checked(file *os.File) (fs.File, error) {
	info, err := file.Stat()
	if err == nil {
		err = readable(info)
	}
	if err != nil {
		file.Close()
		return nil, err
	}
	if info.IsDir() {
		return file, nil
	}
	// Some that look like plain files wait all the same; others know no deadline.
	_ = file.SetReadDeadline(time.Now().Add(longestWait))
	return &limited{File: file, left: job.MostBytes}, nil
}

const longestWait = 5 * time.Second

func readable(info fs.FileInfo) error {
	switch {
	case info.IsDir():
		return nil
	case !info.Mode().IsRegular():
		return job.ErrNotPlain
	case info.Size() > job.MostBytes:
		return job.ErrTooLarge
	}
	return nil
}

// limited is a file of which no more than its limit is read, whatever size it
// was said to have.
type limited struct {
	*os.File
	left int
}

func (l *limited) Read(into []byte) (int, error) {
	if l.left < 0 {
		return 0, job.ErrTooLarge
	}
	n, err := l.File.Read(into[:min(len(into), l.left+1)])
	l.left -= n
	return n, err
}
