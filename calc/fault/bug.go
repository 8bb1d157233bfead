package fault

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"strings"
)

// Bug is a mistake of the program itself, caught where it would have stopped
// everything else as well. No user can put it right.
type Bug struct {
	What  string // what the program stumbled over, in one line
	Where string // function and line; empty when not known
	Trace string // the calls that led there, for whoever mends it
}

// Error returns what and where in one line.
func (b *Bug) Error() string {
	if b.Where == "" {
		return b.What
	}
	return b.What + ", in " + b.Where
}

// Catch turns a panic into a [Bug]. It is deferred by whatever must not take its
// neighbours down; a Bug that one goroutine caught may be raised again in another.
//
//	defer fault.Catch(&err)
func Catch(err *error) {
	switch caught := recover().(type) {
	case nil:
	case *Bug:
		*err = caught
	default:
		what := strings.Join(strings.Fields(fmt.Sprint(caught)), " ")
		*err = &Bug{What: shortened(what), Where: panicked(), Trace: string(debug.Stack())}
	}
}

// mostWhat keeps what was stumbled over on one line: it may quote the job.
const mostWhat = 160

func shortened(what string) string {
	if letters := []rune(what); len(letters) > mostWhat {
		return string(letters[:mostWhat]) + "…"
	}
	return what
}

// panicked names the function that the program was in when it panicked.
func panicked() string {
	calls := make([]uintptr, 64)
	frames := runtime.CallersFrames(calls[:runtime.Callers(0, calls)])
	for raised := false; ; {
		frame, more := frames.Next()
		ours := !strings.HasPrefix(frame.Function, "runtime.")
		if raised && ours {
			return fmt.Sprintf("%s, line %d", frame.Function, frame.Line)
		}
		raised = raised || frame.Function == "runtime.gopanic"
		if !more {
			return ""
		}
	}
}
