package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"pierbook/calc/fault"
)

// traceSwitch is the variable of the environment that has the calls printed
// that led to a mistake of the program.
const traceSwitch = "PIERBOOK_TRACE"

// stumble is set by tests, to make the program fail at one job.
var stumble func(job string)

// guarded does the work on one job and catches whatever the program gets wrong
// on the way, so that the other jobs go on.
func guarded(job string, work func()) (err error) {
	defer fault.Catch(&err)
	if stumble != nil {
		stumble(job)
	}
	work()
	return nil
}

// blame says in one line that the program is at fault with a job, and what
// whoever mends it needs. Without a job it is the command that went wrong.
func blame(w io.Writer, job string, err error) {
	send := "the job file with the files it names"
	if job == "" {
		job, send = "pierbook", "the command as it was typed"
	}
	fmt.Fprintf(w, "%s: the program is at fault here, not you (%v); please send %s, this line and what pierbook version prints to whoever gave you the program\n", job, err, send)
	var bug *fault.Bug
	if os.Getenv(traceSwitch) != "" && errors.As(err, &bug) {
		fmt.Fprintln(w, bug.Trace)
	}
}
