package browser

import (
	"encoding/xml"
	"fmt"
	"math"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// PDF is a printed file. Lengths are in points of 1/72 in, from the top left.
type PDF struct {
	File  string
	Pages []Page
}

// Page is one side of paper with the words on it.
type Page struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []Word  `xml:"word"`
}

// Word is one word and where it stands.
type Word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

func tool(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return string(out)
}

func open(t testing.TB, file string) PDF {
	t.Helper()
	var document struct {
		Pages []Page `xml:"body>doc>page"`
	}
	decoder := xml.NewDecoder(strings.NewReader(tool(t, "pdftotext", "-bbox", file, "-")))
	decoder.Strict, decoder.Entity = false, xml.HTMLEntity
	if err := decoder.Decode(&document); err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return PDF{File: file, Pages: document.Pages}
}

// Find returns the words that are the text given, and the pages they stand on.
func (p PDF) Find(text string) (words []Word, pages []int) {
	for i, page := range p.Pages {
		for _, w := range page.Words {
			if w.Text == text {
				words, pages = append(words, w), append(pages, i)
			}
		}
	}
	return words, pages
}

// Text returns the words of a page with blanks between them.
func (p Page) Text() string {
	var texts []string
	for _, w := range p.Words {
		texts = append(texts, w.Text)
	}
	return strings.Join(texts, " ")
}

const millimetre = 72 / 25.4

// CheckPaper reports everything that would spoil a printed binder: bitmaps,
// fonts that a printer cannot set sharply, letters under 9 pt, and words in the
// margin for binding or where printers cannot print.
func (p PDF) CheckPaper(t testing.TB) {
	t.Helper()
	p.checkBitmaps(t)
	p.checkFonts(t)
	p.checkSizes(t)
	p.checkMargins(t)
}

func (p PDF) checkBitmaps(t testing.TB) {
	t.Helper()
	plain := p.File + ".plain"
	tool(t, "qpdf", "--qdf", "--object-streams=disable", p.File, plain)
	if n := strings.Count(tool(t, "cat", plain), "/Subtype /Image"); n > 0 {
		t.Errorf("%d bitmaps in the print", n)
	}
}

func (p PDF) checkFonts(t testing.TB) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(tool(t, "pdffonts", p.File)), "\n")
	if len(lines) < 3 {
		t.Fatalf("no fonts in the print:\n%s", strings.Join(lines, "\n"))
	}
	for _, line := range lines[2:] {
		if strings.Contains(line, "Type 3") {
			t.Errorf("a font of Type 3, drawn and not set: %s", line)
		}
		if fields := strings.Fields(line); len(fields) > 5 && fields[len(fields)-5] != "yes" {
			t.Errorf("a font that is not embedded: %s", line)
		}
	}
}

var fontSize = regexp.MustCompile(`<fontspec[^>]* size="(\d+)"`)

// checkSizes takes the sizes three times magnified, since they come in whole points.
func (p PDF) checkSizes(t testing.TB) {
	t.Helper()
	for _, match := range fontSize.FindAllStringSubmatch(tool(t, "pdftohtml", "-xml", "-zoom", "3", "-i", "-stdout", p.File), -1) {
		if size, err := strconv.Atoi(match[1]); err != nil || size < 27 {
			t.Errorf("letters of %.1f pt, less than 9 pt", float64(size)/3)
		}
	}
}

// checkMargins wants the left 25.4 mm free for the holes and 7 mm free around,
// where printers cannot mark.
func (p PDF) checkMargins(t testing.TB) {
	t.Helper()
	for i, page := range p.Pages {
		for _, w := range page.Words {
			left, right := w.XMin/millimetre, (page.Width-w.XMax)/millimetre
			top, bottom := w.YMin/millimetre, (page.Height-w.YMax)/millimetre
			if left < 25.4-1 || math.Min(right, math.Min(top, bottom)) < 7-0.5 {
				t.Errorf("page %d: %q stands in a margin: %s", i+1, w.Text, fmt.Sprintf("left %.1f, right %.1f, top %.1f, bottom %.1f mm", left, right, top, bottom))
			}
		}
	}
}

// CheckRuler wants the words left and right, which stand at the ends of a bar,
// exactly so many points apart: the print is not shrunk.
func (p PDF) CheckRuler(t testing.TB, left, right string, points float64) {
	t.Helper()
	from, pages := p.Find(left)
	to, _ := p.Find(right)
	if len(from) == 0 || len(from) != len(to) {
		t.Fatalf("the bar's ends %q and %q were not found in pairs", left, right)
	}
	for i := range from {
		if got := to[i].XMin - from[i].XMin; math.Abs(got-points) > 0.1 {
			t.Errorf("page %d: the bar is %.2f pt long, not %.2f: the print is shrunk", pages[i]+1, got, points)
		}
	}
}

// CheckUpright wants the words top and bottom, which stand at the ends of a bar
// along the paper, exactly so many points apart.
func (p PDF) CheckUpright(t testing.TB, top, bottom string, points float64) {
	t.Helper()
	from, pages := p.Find(top)
	to, _ := p.Find(bottom)
	if len(from) == 0 || len(from) != len(to) {
		t.Fatalf("the bar's ends %q and %q were not found in pairs", top, bottom)
	}
	for i := range from {
		if got := to[i].YMin - from[i].YMin; math.Abs(got-points) > 0.1 {
			t.Errorf("page %d: the upright bar is %.2f pt long, not %.2f: the print is shrunk", pages[i]+1, got, points)
		}
	}
}
