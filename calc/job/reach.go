package job

import (
	"errors"
	"io/fs"
	"path"
	"strings"
)

// What a file system says of a file that is not read.
var (
	ErrOutside  = errors.New("it lies outside the folders that may be read")
	ErrNotPlain = errors.New("it is not a plain file but a pipe, a device or the like")
	ErrTooLarge = errors.New("it is over 1 MB")
)

// MostBytes bounds every file that a job is made from: a real one has a few
// thousand.
const MostBytes = 1 << 20

// Bounded is a file system that holds more than a job may read.
type Bounded interface {
	fs.FS
	Outside(name string) bool // whether name, or what it is a link to, may not be read
}

// reach returns the path of the file or folder that another file names, and
// whether it may be read. Without bounds of its own a file system is the bound.
func reach(fsys fs.FS, from, name string) (string, bool) {
	if name == "" || strings.ContainsAny(name, `\:`) {
		return "", false
	}
	joined := path.Join(path.Dir(from), name)
	if path.IsAbs(name) {
		joined = strings.TrimPrefix(path.Clean(name), "/")
	}
	if joined == "." || !fs.ValidPath(joined) {
		return "", false
	}
	if bounded, ok := fsys.(Bounded); ok {
		return joined, !bounded.Outside(joined)
	}
	return joined, !path.IsAbs(name)
}
