package browser

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"testing"
	"time"
)

// pipe speaks the browser's debugging protocol over two pipes: a message is
// JSON text that ends with a zero byte.
//
// Source: Chrome DevTools Protocol 1.3; the option --remote-debugging-pipe.
type pipe struct {
	t       testing.TB
	out     *os.File
	from    *os.File
	in      *bufio.Reader // of from
	session string        // of the page that is spoken to, empty for the browser itself
	last    *int
}

type message struct {
	ID        int             `json:"id,omitempty"`
	SessionID string          `json:"sessionId,omitempty"`
	Method    string          `json:"method,omitempty"`
	Params    any             `json:"params,omitempty"`
	Result    json.RawMessage `json:"result,omitempty"`
	Error     *struct {
		Message string `json:"message"`
	} `json:"error,omitempty"`
}

// patience is how long one page may take before a test gives up on the browser.
const patience = 60 * time.Second

// start starts a browser that ends with the test.
func start(t testing.TB, path string) *pipe {
	t.Helper()
	toBrowser, out := pair(t)
	in, fromBrowser := pair(t)
	command := exec.Command(path, "--remote-debugging-pipe", "--headless", "--no-sandbox", "--disable-gpu",
		"--font-render-hinting=none", "--hide-scrollbars", "--user-data-dir="+t.TempDir(), "about:blank")
	command.ExtraFiles = []*os.File{toBrowser, fromBrowser} // file descriptors 3 and 4
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	toBrowser.Close()
	fromBrowser.Close()
	p := &pipe{t: t, out: out, from: in, in: bufio.NewReaderSize(in, 1<<20), last: new(int)}
	t.Cleanup(func() {
		p.send("", "Browser.close", nil)
		_ = command.Wait()
		in.Close()
		out.Close()
	})
	return p
}

// on speaks of a test to a page.
func (p *pipe) on(t testing.TB, session string) *pipe {
	t.Helper()
	if err := p.from.SetReadDeadline(time.Now().Add(patience)); err != nil {
		t.Fatal(err)
	}
	with := *p
	with.t, with.session = t, session
	return &with
}

// newPage opens a page and speaks to it from then on.
func (p *pipe) newPage() {
	p.t.Helper()
	p.session = ""
	var target struct{ TargetID string }
	p.call("Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct{ SessionID string }
	p.call("Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	p.session = attached.SessionID
	p.call("Page.enable", nil, nil)
}

func pair(t testing.TB) (read, write *os.File) {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	return read, write
}

func (p *pipe) send(session, method string, params any) int {
	*p.last++
	text, err := json.Marshal(message{ID: *p.last, SessionID: session, Method: method, Params: params})
	if err == nil {
		_, err = p.out.Write(append(text, 0))
	}
	if err != nil {
		p.t.Logf("%s: %v", method, err)
	}
	return *p.last
}

// call asks for something and waits for the answer.
func (p *pipe) call(method string, params, result any) {
	p.t.Helper()
	id := p.send(p.session, method, params)
	m := p.until(method, func(m message) bool { return m.ID == id })
	if m.Error != nil {
		p.t.Fatalf("%s: %s", method, m.Error.Message)
	}
	if result == nil {
		return
	}
	if err := json.Unmarshal(m.Result, result); err != nil {
		p.t.Fatalf("%s: %v", method, err)
	}
}

// until reads messages up to the one wanted.
func (p *pipe) until(what string, wanted func(message) bool) message {
	p.t.Helper()
	for {
		text, err := p.in.ReadBytes(0)
		if err != nil {
			p.t.Fatalf("waiting for %s from the browser: %v", what, err)
		}
		var m message
		if err := json.Unmarshal(text[:len(text)-1], &m); err != nil {
			p.t.Fatalf("a message from the browser: %v", err)
		}
		if wanted(m) {
			return m
		}
	}
}

// open loads a file and waits until it is shown.
func (p *pipe) open(file string) {
	p.t.Helper()
	p.send(p.session, "Page.navigate", map[string]any{"url": "file://" + file})
	p.until("the page", func(m message) bool { return m.Method == "Page.loadEventFired" && m.SessionID == p.session })
}

// evaluate runs a script in the page, whatever the page's policy, and reads the
// JSON text that it returns.
func (p *pipe) evaluate(script string, result any) {
	p.t.Helper()
	var answer struct {
		Result           struct{ Value string }
		ExceptionDetails any
	}
	p.call("Runtime.evaluate", map[string]any{"expression": script, "returnByValue": true}, &answer)
	if answer.ExceptionDetails != nil {
		p.t.Fatalf("measuring: %v", fmt.Sprint(answer.ExceptionDetails))
	}
	if err := json.Unmarshal([]byte(answer.Result.Value), result); err != nil {
		p.t.Fatalf("measuring: %v", err)
	}
}
