package main

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// lock takes the lock on a file, or returns errLocked when another run has it
// and this one shall not wait. The byte that is locked lies far behind the text,
// since others could not read what is locked.
func lock(file *os.File, wait bool) error {
	flags := uint32(windows.LOCKFILE_EXCLUSIVE_LOCK)
	if !wait {
		flags |= windows.LOCKFILE_FAIL_IMMEDIATELY
	}
	err := windows.LockFileEx(windows.Handle(file.Fd()), flags, 0, 1, 0, &windows.Overlapped{Offset: 1 << 20})
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return errLocked
	}
	return err
}
