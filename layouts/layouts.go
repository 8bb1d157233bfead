// Package layouts sets filled sheets as files that hold everything they need:
// the binder, the client's file and the front page over several jobs. Style,
// script and drawings stand inside the file, and its Content-Security-Policy
// lets nothing else load, so that it can be sent, kept and printed anywhere.
//
// The paper works without the script. On a phone the script keeps ticks and
// does the arithmetic of a form.
//
// Pages are written as well-formed XML that is HTML as well.
package layouts

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"html/template"
	"io"
	"strings"
)

//go:embed *.html *.css script.js
var files embed.FS

var (
	style  = read("base.css") + read("screen.css") + read("print.css")
	script = read("script.js")
	policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-" + digest(script) + "'; base-uri 'none'; form-action 'none'"
	pages  = template.Must(template.New("").ParseFS(files, "*.html"))
)

func read(name string) string {
	text, err := files.ReadFile(name)
	if err != nil {
		panic("layouts: " + err.Error())
	}
	return string(text)
}

// digest returns the SHA-256 of a script as a Content-Security-Policy wants it.
//
// Source: W3C Content Security Policy Level 3, 2.3.1 (hash-source).
func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return base64.StdEncoding.EncodeToString(sum[:])
}

// head is what stands in the head of every file.
type head struct {
	Title  string
	Policy string
	Style  template.CSS
	Script template.JS
}

func newHead(title string, more ...string) head {
	return head{Title: title, Policy: policy, Style: template.CSS(style + strings.Join(more, "")), Script: template.JS(script)}
}

// write runs a template into memory first, so that no half file is written.
func write(w io.Writer, name string, data any) error {
	var b bytes.Buffer
	if err := pages.ExecuteTemplate(&b, name, data); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}
