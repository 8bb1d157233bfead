//go:build !linux && !darwin

package main

import "errors"

// exchange lets two folders change places in one step, where the system can.
//
// Windows cannot, so the old folder is moved aside and the new one into its
// place. Between the two steps, for well under a millisecond, whoever looks sees
// no binder under its name; never half of one. A run killed just there leaves the
// old binder whole under its hidden name, and the next run puts it back. While
// another program has a file of the binder open, Windows refuses the first step,
// and the old binder stays as it was.
func exchange(_, _ string) error { return errors.ErrUnsupported }
