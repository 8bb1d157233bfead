package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"pierbook/calc"
	"pierbook/calc/job"
)

// markFile stands in every folder that this program made. A folder without it
// is somebody else's and is never touched.
const markFile = ".pierbook"

// maker is what the mark says first of all.
const maker = "pierbook"

// mark says whose binder a folder holds.
type mark struct {
	MadeBy string `json:"made_by"`
	Job    string `json:"job"`
	Client string `json:"client"`
	Size   string `json:"size"`
	File   string `json:"file"` // name of the job file, for messages
	From   string `json:"from"` // fingerprint of where it lies, seen from the output folder: no path is published with a binder
}

// markOf returns the mark of a job's binder in the output folder. The path of
// the job file is empty for the built-in sample.
func markOf(j *job.Job, path, out string) mark {
	m := mark{MadeBy: maker, Job: j.Name, Client: j.Client, Size: j.Platform.Length.String() + " x " + j.Platform.Width.String()}
	if path == "" {
		return m
	}
	m.File = filepath.Base(path)
	if absolute, err := filepath.Abs(out); err == nil {
		out = absolute
	}
	if relative, err := filepath.Rel(out, path); err == nil {
		path = relative
	}
	sum := sha256.Sum256([]byte(filepath.ToSlash(path)))
	m.From = hex.EncodeToString(sum[:8])
	return m
}

// text returns the mark as its file holds it.
func (m mark) text() ([]byte, error) {
	text, err := json.Marshal(m)
	return append(text, '\n'), err
}

// same says whether the binder that a folder holds is of the job of m: made from
// the same file, or, since a file may be moved or copied for the next issue, of
// the same name, client and size. Of a binder without a mark only the name is
// known.
func (m mark) same(holder mark) bool {
	if m.From != "" && m.From == holder.From {
		return true
	}
	return m.Job == holder.Job && (holder.Size == "" || m.Client == holder.Client && m.Size == holder.Size)
}

// notOurs is a place that the program does not write to.
type notOurs struct{ path, why, remedy string }

func (n notOurs) Error() string {
	return fmt.Sprintf("%s %s, so nothing was written there; %s", filepath.ToSlash(n.path), n.why, n.remedy)
}

// holderOf returns the mark of the binder that stands in a folder, and whether
// there is a folder. It reports what this program did not make.
func holderOf(folder string) (m mark, found bool, err error) {
	const away = "move it away, or name another folder after -o"
	info, err := os.Lstat(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return mark{}, false, nil
	case err != nil:
		return mark{}, false, err
	case info.Mode()&fs.ModeSymlink != 0:
		return mark{}, false, notOurs{folder, "is a link where the binder's folder has to stand", away}
	case !info.IsDir():
		return mark{}, false, notOurs{folder, "is a file where the binder's folder has to stand", away}
	}
	text, err := readPlain(filepath.Join(folder, markFile), job.MostBytes)
	if err == nil && json.Unmarshal(text, &m) == nil && m.MadeBy == maker {
		return m, true, nil
	}
	if name, ok := markless(folder); ok {
		return mark{MadeBy: maker, Job: name}, true, nil
	}
	return mark{}, false, notOurs{folder, "was not made by this program and has no mark of it", away}
}

// markless recognises a binder made before there were marks: all its files are
// there, and its figures belong to a job that leads to this folder.
func markless(folder string) (name string, ok bool) {
	for _, file := range ownFiles {
		if info, err := os.Lstat(filepath.Join(folder, file)); file != markFile && (err != nil || !info.Mode().IsRegular()) {
			return "", false
		}
	}
	text, err := readPlain(filepath.Join(folder, figuresFile), mostFigures)
	if err != nil {
		return "", false
	}
	if _, err := calc.ReadIssue(text); err != nil {
		return "", false
	}
	var saved struct{ Job struct{ Name string } }
	if json.Unmarshal(text, &saved) != nil || (&job.Job{Name: saved.Job.Name}).Slug() != filepath.Base(folder) {
		return "", false
	}
	return saved.Job.Name, true
}

// mostFigures bounds the figures of an earlier issue; those of a large job take
// about a megabyte.
const mostFigures = 64 << 20

// readPlain reads a plain file up to a size.
func readPlain(path string, most int64) ([]byte, error) {
	info, err := os.Lstat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, job.ErrNotPlain
	}
	if info.Size() > most {
		return nil, job.ErrTooLarge
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, most))
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

var ownFiles = []string{markFile, binderFile, clientFile, figuresFile, piersFile, cutsFile, orderFile}

// setPrefix begins the name of a file that holds one set.
const setPrefix = "set-"

func isOwnFile(name string) bool {
	base := path.Base(name)
	return slices.Contains(ownFiles, base) || strings.HasPrefix(base, setPrefix) && strings.HasSuffix(base, ".html")
}
