package layouts

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
	"pierbook/content"
)

// every returns each kind of file for a job of the name given.
func every(t testing.TB, name string) map[string][]byte {
	binder := fixtureBinder(t, name)
	var client, front bytes.Buffer
	require.NoError(t, WriteClient(&client, binder))
	require.NoError(t, WriteFrontPage(&front, []Entry{
		{Folder: "kiln-field", Name: name, Revision: "A", Progress: "surveyed", Checks: "2 of 24 fail", Stop: true, NextHold: "Dig the holes"},
		{Name: name, Failed: "3 faults in the job file"},
	}))
	return map[string][]byte{"binder": fixtureHTML(t, name), "client": client.Bytes(), "front": front.Bytes()}
}

// attributes of all elements of a file, which must be well-formed XML.
func elements(t *testing.T, file []byte) []xml.StartElement {
	decoder := xml.NewDecoder(bytes.NewReader(file))
	decoder.Strict, decoder.Entity = true, xml.HTMLEntity
	var found []xml.StartElement
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return found
		}
		require.NoError(t, err)
		if start, ok := token.(xml.StartElement); ok {
			found = append(found, start.Copy())
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// TestFilesHoldTogether checks what every file must keep to, with a plain job
// and with one whose texts are hostile.
func TestFilesHoldTogether(t *testing.T) {
	for _, name := range []string{"Kiln field workshop", hostile} {
		for kind, file := range every(t, name) {
			t.Run(kind, func(t *testing.T) {
				ids := map[string]bool{}
				var links []string
				for _, e := range elements(t, file) {
					if id := attribute(e, "id"); id != "" {
						assert.False(t, ids[id], "the id %q twice", id)
						ids[id] = true
					}
					if href := attribute(e, "href"); e.Name.Local == "a" && strings.HasPrefix(href, "#") {
						links = append(links, href[1:])
					}
					assert.NotContains(t, []string{"img", "iframe", "object", "link", "base", "foreignObject", "pattern", "filter", "mask"}, e.Name.Local)
					for _, a := range e.Attr {
						assert.False(t, strings.HasPrefix(a.Name.Local, "on"), "%s=%q", a.Name.Local, a.Value)
					}
				}
				for _, link := range links {
					assert.True(t, ids[link], "a link to %q, which is not there", link)
				}
				for _, never := range []string{"ZgotmplZ", "raw HTML omitted", "<no value>", "http://", "file:", "url("} {
					assert.NotContains(t, strings.ReplaceAll(string(file), `xmlns="http://www.w3.org/2000/svg"`, ""), never)
				}
			})
		}
	}
}

// TestHostileTextStaysText wants a job's text to be shown as it was typed, and
// what looks like a key in it not to be resolved.
func TestHostileTextStaysText(t *testing.T) {
	text := string(every(t, hostile)["binder"])
	assert.Equal(t, 1, strings.Count(text, "<script>"))
	assert.Equal(t, 1, strings.Count(text, "</script>"))
	assert.NotContains(t, text, "<img")
	assert.Contains(t, text, "{floor.height}")
	assert.NotContains(t, text, "<em>x</em>")
	styles := regexp.MustCompile(`(?s)<style>.*?</style>`).FindString(text)
	assert.NotContains(t, styles, "onerror=alert(1)")
}

// TestPolicyAllowsThisFileOnly wants the policy first in the head, and the hash
// of the very script that follows.
func TestPolicyAllowsThisFileOnly(t *testing.T) {
	for kind, file := range every(t, "Kiln") {
		text := string(file)
		policy := regexp.MustCompile(`<meta http-equiv="Content-Security-Policy" content="([^"]*)"/>`).FindStringSubmatch(text)
		require.NotNil(t, policy, kind)
		assert.Less(t, strings.Index(text, "Content-Security-Policy"), strings.Index(text, "<style>"))
		assert.Contains(t, policy[1], "default-src &#39;none&#39;")
		script := regexp.MustCompile(`(?s)<script>(.*?)</script>`).FindStringSubmatch(text)
		if kind == "front" {
			assert.Nil(t, script)
			continue
		}
		require.NotNil(t, script, kind)
		sum := strings.ReplaceAll(digest(script[1]), "+", "&#43;")
		assert.Contains(t, policy[1], "&#39;sha256-"+sum+"&#39;", kind)
	}
}

// TestSameInputSameBytes writes each file twice.
func TestSameInputSameBytes(t *testing.T) {
	first, second := every(t, "Kiln"), every(t, "Kiln")
	assert.Equal(t, first, second)
}

// TestBannersStandWhereTheyBelong counts them.
func TestBannersStandWhereTheyBelong(t *testing.T) {
	binder := fixtureBinder(t, "Kiln")
	leaves, digging := 0, 0
	for _, s := range binder.Sheets {
		leaves += len(s.Leaves)
		if s.Name == "dig" {
			digging = len(s.Leaves)
		}
	}
	text := string(fixtureHTML(t, "Kiln"))
	assert.Equal(t, leaves, strings.Count(text, ">NOT FOR CONSTRUCTION<"))
	assert.Equal(t, digging, strings.Count(text, ">DO NOT DIG<"))
	binder.Banners = nil
	var b bytes.Buffer
	require.NoError(t, WriteBinder(&b, binder))
	assert.NotContains(t, b.String(), `class="banner"`)
}

// TestClientSeesNoAddressUnlessGiven holds that only what is handed over shows.
func TestClientSeesNoAddressUnlessGiven(t *testing.T) {
	binder := fixtureBinder(t, "Kiln")
	binder.Job.Address = ""
	var b bytes.Buffer
	require.NoError(t, WriteClient(&b, binder))
	assert.NotContains(t, b.String(), "<dt>At</dt>")
	assert.NotContains(t, b.String(), "Sheet 1 of")
}

// TestFormWorksOnPaper holds the worked line and what the script gets.
func TestFormWorksOnPaper(t *testing.T) {
	form := Form{Result: "post", Plus: "seat", Minus: `bench "mark"`, Reads: Millimetres, Fraction: measure.Millimetre, Points: []Point{{"A1", 3 * measure.Inch}}}
	got := string(form.For(content.Call{Caption: "Length"}))
	assert.Contains(t, got, `data-points="[[&#34;A1&#34;,76200000]]"`)
	assert.Contains(t, got, `data-minus="bench &#34;mark&#34;"`)
	assert.Contains(t, got, "<b>post</b> = printed number "+ruled+" + seat "+ruled+" − bench &#34;mark&#34; "+ruled+" = "+ruled)
}

func TestStyleString(t *testing.T) {
	assert.Equal(t, `"a\000022 \00005c \00000a \00003c \00002f b c"`, cssString("a\"\\\n</b c"))
	assert.Equal(t, "abc…", shortened("abcdef", 4))
}

// contrast of two colours.
//
// Source: WCAG 2.2, definitions of relative luminance and contrast ratio.
func contrast(t *testing.T, a, b string) float64 {
	first, second := luminance(t, a), luminance(t, b)
	return (max(first, second) + 0.05) / (min(first, second) + 0.05)
}

// TestContrast holds every pair of colours that text or a rule with a meaning
// uses: 7:1 for text outdoors, 3:1 for rules (WCAG 2.2, 1.4.6 and 1.4.11).
func TestContrast(t *testing.T) {
	assert.InDelta(t, 7.00, contrast(t, "#595959", "#ffffff"), 0.01) // published pair
	light, dark := colours(t, read("base.css")), colours(t, read("screen.css"))
	for _, scheme := range []map[string]string{light, dark} {
		for _, text := range []string{"ink", "soft", "link"} {
			assert.GreaterOrEqual(t, contrast(t, scheme[text], scheme["paper"]), 7.0, text)
		}
		for _, rule := range []string{"rule", "danger", "warning", "notice"} {
			assert.GreaterOrEqual(t, contrast(t, scheme[rule], scheme["paper"]), 3.0, rule)
		}
	}
}

// What forbids to build stands at the foot of every side of paper, also where a
// sheet runs over; a banner of some sheets does not.
func TestFootForbidsToBuild(t *testing.T) {
	b := Binder{Job: Job{Name: "Shed", Revision: "B"}, Banners: []Banner{DoNotDig(""), NotForConstruction("")}}
	assert.Equal(t, "NOT FOR CONSTRUCTION · Shed · revision B", b.foot())
	b.Banners = b.Banners[:1]
	assert.Equal(t, "Shed · revision B", b.foot())
}
