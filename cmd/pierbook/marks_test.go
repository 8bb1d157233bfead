package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const steep = `name: Steep bank
platform: {length: 12', width: 8', use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
ground:
  sights:
    - [bench_mark: 4' 2", A1: 4' 9", A4: 7' 11", C1: 4' 4", C4: 7' 7", bench_mark: 4' 2"]
`

const overloaded = `name: Overloaded store
platform: {length: 16', width: 12', floor_load: 300 psf}
timber: {species: spruce_pine_fir, grade: No.3}
site: {soil: {class: clay}}
frame: {joists: {size: 2x4, spacing: 24"}, beams: {lines: 2}, piers: {per_line: 2}}
`

func filesOf(t testing.TB, text string) map[string][]byte {
	t.Helper()
	files := fstest.MapFS{"job.yaml": {Data: []byte(text)}}
	plan, faults := work(files, "job.yaml")
	require.NoError(t, faults.Err())
	made, faults, err := bind(plan, files, newLibrary())
	require.NoError(t, faults.Err())
	require.NoError(t, err)
	return made
}

// TestStopStandsOnEverySheet counts pages, back and front, and the marks on them.
func TestStopStandsOnEverySheet(t *testing.T) {
	for _, row := range []struct{ name, job, why string }{
		{"heights that cannot be met", steep, "The heights cannot be met"},
		{"failing checks", overloaded, "checks fail"},
	} {
		t.Run(row.name, func(t *testing.T) {
			made := filesOf(t, row.job)
			for _, file := range []string{binderFile, clientFile} {
				pages := strings.Split(string(made[file]), `<section class="leaf`)[1:]
				require.NotEmpty(t, pages)
				for i, page := range pages {
					assert.Containsf(t, page, `<p class="shout">NOT FOR CONSTRUCTION`, "page %d of %s", i+1, file)
				}
				assert.Contains(t, pages[0], row.why)
			}
		})
	}
	for file, text := range boundFiles(t, "") {
		for i, page := range strings.Split(string(text), `<section class="leaf`)[1:] {
			assert.NotContainsf(t, page, `<p class="shout">NOT FOR CONSTRUCTION`, "page %d of %s of a job without a failing check", i+1, file)
		}
	}
}

// plain and hostile texts, by where they stand in the job file.
var texts = []struct{ path, plain, hostile string }{
	{"name", "Shed", `"<b>Sh</b>ed"`},
	{"client", "Jo", `"<script>alert(1)</script>"`},
	{"address", "the lane", `"\"><img src=x onerror=alert(2)>"`},
	{"revision", "A", `"<i>"`},
	{"corner", "the gate", `"**gate** _*thin*_ [x](javascript:alert(3)) {floor.height} {when no.such.key}"`},
	{"where", "a nail", "\"``` \\n# heading\\n| a | b |\\n|---|---|\\n</section><!--\""},
	{"reason", "rock", `"</td></table></article></body><![CDATA["`},
	{"answer", "yes", `"&lt;b&gt; {name} <b>12</b>"`},
	{"source", "the mill", `"<svg onload=alert(4)>"`},
}

const textsJob = `name: $name
client: $client
address: $address
revision: $revision
platform: {length: 12', width: 8', use: shed, origin: {corner: $corner}}
timber: {values: {bending: 900 psi, shear: 150 psi, bearing_across: 400 psi, compression: 1300 psi, elastic: 1300000 psi, elastic_min: 470000 psi, source: $source}, incised: no, density: 29 pcf}
site: {soil: {class: silty_sand}}
ground:
  bench_mark: {where: $where}
  sights:
    - [bench_mark: 4' 2", A1: 4' 9", A4: 4' 11", C1: 4' 4", C4: 4' 7", bench_mark: 4' 2"]
piers: {A1: {bed: 6", reason: $reason}}
asked: {utilities: {answer: $answer, number: $answer, by: $client}}
client_page: {address: yes, money: yes}
`

// TestTextsOfAJobAreNeverMarkup makes one job twice, once with texts that try to
// be markup, and finds the same elements in the same order.
func TestTextsOfAJobAreNeverMarkup(t *testing.T) {
	with := func(hostile bool) map[string][]byte {
		text := textsJob
		for _, row := range texts {
			value := row.plain
			if hostile {
				value = row.hostile
			}
			text = strings.ReplaceAll(text, "$"+row.path, value)
		}
		return filesOf(t, text)
	}
	plain, hostile := with(false), with(true)
	for _, file := range []string{binderFile, clientFile} {
		line, want, got, same := firstDifference(elementsOf(t, plain[file]), elementsOf(t, hostile[file]))
		assert.Truef(t, same, "element %d of %s: want %s, got %s", line, file, want, got)
	}
	assert.Contains(t, string(hostile[clientFile]), "&lt;script&gt;alert(1)&lt;/script&gt;")
	assert.NotContains(t, string(hostile[figuresFile]), "<script")
}

// elementsOf returns the elements of a page with the names of their attributes,
// a line each in order; those of drawings, whose lettering is set by its length,
// and breaks within words once at the end.
func elementsOf(t *testing.T, page []byte) string {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(page))
	decoder.Entity = xml.HTMLEntity
	var list strings.Builder
	drawn, drawing := map[string]bool{}, 0
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return list.String() + strings.Join(slices.Sorted(maps.Keys(drawn)), "\n")
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			element := token.Name.Local
			for _, attribute := range token.Attr {
				element += " " + attribute.Name.Local
			}
			if token.Name.Local == "svg" || drawing > 0 {
				drawing++
			}
			switch {
			case drawing > 0:
				drawn[token.Name.Local] = true
			case token.Name.Local != "wbr":
				list.WriteString(element + "\n")
			}
		case xml.EndElement:
			if drawing > 0 {
				drawing--
			}
		}
	}
}
