// Package browser prints HTML files and measures them with a browser and PDF
// tools found on the machine. It serves tests only.
//
// The browser is the one that the environment variable CHROME names, or
// chromium-headless-shell, or chromium. Without one, or without the PDF tools
// (poppler-utils, qpdf), a test is skipped with a message, and fails when
// REQUIRE_BROWSER is 1.
package browser

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// Browser is a browser that runs for one test. It loads each file once, however
// often that is printed or laid out for print.
type Browser struct {
	pipe   *pipe
	loaded map[string]string // sessions of the files that were loaded for print
}

// Require starts the browser, or ends the test when there is none. It ends with
// the test.
func Require(t testing.TB) Browser {
	t.Helper()
	for _, tool := range []string{"pdfinfo", "pdftotext", "pdffonts", "pdftohtml", "qpdf"} {
		if _, err := exec.LookPath(tool); err != nil {
			missing(t, tool)
		}
	}
	for _, name := range []string{os.Getenv("CHROME"), "chromium-headless-shell", "chromium"} {
		if path, err := exec.LookPath(name); name != "" && err == nil {
			return Browser{pipe: start(t, path), loaded: map[string]string{}}
		}
	}
	missing(t, "a browser (set CHROME, or install chromium-headless-shell)")
	return Browser{}
}

func missing(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("REQUIRE_BROWSER") == "1" {
		t.Fatalf("REQUIRE_BROWSER is 1, but this machine lacks %s", what)
	}
	t.Skipf("skipped: this machine lacks %s", what)
}

// Paper is a size of paper.
type Paper string

// The papers that a binder is printed on.
const (
	Letter Paper = "letter"
	A4     Paper = "A4"
)

var sizes = map[Paper][2]float64{Letter: {8.5, 11}, A4: {210 / 25.4, 297 / 25.4}} // inches

// Print prints an HTML file as the print dialog does with that paper chosen,
// without the browser's own heads and feet and without background colours.
func (b Browser) Print(t testing.TB, file []byte, paper Paper) PDF {
	t.Helper()
	p := b.forPrint(t, file)
	var printed struct{ Data []byte }
	p.call("Page.printToPDF", map[string]any{
		"paperWidth": sizes[paper][0], "paperHeight": sizes[paper][1], "preferCSSPageSize": true,
		"generateTaggedPDF": true, "generateDocumentOutline": true,
	}, &printed)
	target := filepath.Join(t.TempDir(), "out.pdf")
	if err := os.WriteFile(target, printed.Data, 0o644); err != nil {
		t.Fatal(err)
	}
	return open(t, target)
}

// forPrint returns the page on which a file is loaded.
func (b Browser) forPrint(t testing.TB, file []byte) *pipe {
	t.Helper()
	session, loaded := b.loaded[string(file)]
	p := b.pipe.on(t, session)
	if !loaded {
		p.newPage()
		p.open(save(t, file))
		b.loaded[string(file)] = p.session
	}
	return p
}

func save(t testing.TB, text []byte) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// Screen is what a page came out as on a screen.
type Screen struct {
	Width       int      // of all that is laid out, in CSS pixels: more than the screen's means sideways scrolling
	StickingOut []string // the first few elements that reach beyond the screen and do not scroll by themselves
	Small       []string // links, boxes and fields that are less than 44 pixels high or wide, those in running text left out
	Twice       []string // ids given twice
	Nowhere     []string // links to an id that is not there
	Ticks       int      // boxes that can be ticked
	Sums        []string // what each form says after the readings 2 and 1 were typed into it
}

// TooWide lays an HTML file out as for print on the narrower of the two papers
// and names the first elements that reach beyond the right margin. One such
// element makes the browser print every page at a smaller scale.
func (b Browser) TooWide(t testing.TB, file []byte) []string {
	t.Helper()
	const printed = 646 // pixels of 1/96 in between the margins of an A4 sheet: 171 mm
	p := b.forPrint(t, file)
	p.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": printed, "height": 900, "deviceScaleFactor": 1, "mobile": false}, nil)
	p.call("Emulation.setEmulatedMedia", map[string]any{"media": "print"}, nil)
	var s Screen
	p.evaluate(measuring+"("+strconv.Itoa(printed)+", true)", &s)
	p.call("Emulation.clearDeviceMetricsOverride", nil, nil)
	p.call("Emulation.setEmulatedMedia", map[string]any{"media": ""}, nil)
	return s.StickingOut
}

// Show opens an HTML file on a screen of the width given, tries its forms, and
// measures it.
func (b Browser) Show(t testing.TB, file []byte, width int) Screen {
	t.Helper()
	p := b.pipe.on(t, "")
	p.newPage()
	p.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": 800, "deviceScaleFactor": 1, "mobile": true}, nil)
	p.open(save(t, file))
	var s Screen
	p.evaluate(measuring+"("+strconv.Itoa(width)+", false)", &s)
	return s
}

const measuring = `
(function (screenWidth, onPaper) {
  var width = screenWidth, all = Array.from(document.querySelectorAll("body *"));
  function name(e) { return e.tagName + "." + (e.className.baseVal === undefined ? e.className : e.className.baseVal) + " " + e.textContent.trim().slice(0, 40); }
  function inScroll(e) { return onPaper ? e.closest(".turned, svg, .skip") !== null : e.closest(".scroll, .skip, .jump nav, .whose, script") !== null; }
  var out = all.filter(function (e) { var r = e.getBoundingClientRect(); return r.width > 0 && r.right > width + 0.5 && !inScroll(e); });
  var targets = Array.from(document.querySelectorAll("a, summary, .tick input, .sum select, .sum input"));
  var small = targets.filter(function (e) {
    var r = e.getBoundingClientRect();
    return r.width > 0 && (r.height < 43.5 || r.width < 43.5) && (e.tagName !== "A" || e.closest("p:not(.turn):not(.files), li:not(.contents li):not(.jump li), td, dd, .skip") === null);
  });
  var seen = {}, twice = [];
  document.querySelectorAll("[id]").forEach(function (e) { if (seen[e.id]) { twice.push(e.id); } seen[e.id] = true; });
  var nowhere = Array.from(document.querySelectorAll("a[href^='#']")).map(function (e) { return e.getAttribute("href").slice(1); }).filter(function (id) { return !document.getElementById(id); });
  var sums = onPaper ? [] : Array.from(document.querySelectorAll(".sum form")).map(function (form) {
    form.querySelectorAll("div").forEach(function (row, i) { row.querySelector("input").value = String(2 - i); });
    form.dispatchEvent(new Event("input", { bubbles: true }));
    return form.querySelector("output").textContent;
  });
  return JSON.stringify({ Width: document.documentElement.scrollWidth, StickingOut: out.slice(0, 5).map(name), Small: small.slice(0, 5).map(name), Twice: twice, Nowhere: nowhere, Ticks: document.querySelectorAll(".tick input").length, Sums: sums });
})
`
