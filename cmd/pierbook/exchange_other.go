//go:build !linux

package main

import "errors"

// exchange lets two folders change places in one step, where the system can.
func exchange(_, _ string) error { return errors.ErrUnsupported }
