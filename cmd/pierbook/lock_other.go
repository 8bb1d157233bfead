//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package main

import (
	"errors"
	"os"
)

// lock reports that this system has no lock that ends with the run.
func lock(*os.File, bool) error { return errors.ErrUnsupported }
