package kit

import (
	"encoding/xml"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wellFormed reads the drawing as strict XML.
func wellFormed(t *testing.T, drawing []byte) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(drawing)))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else {
			require.NoError(t, err)
		}
	}
}

func TestSheetStartsWithoutPrologAndNamesItself(t *testing.T) {
	s := New("plan of <A>", `The "plan" & more`, "A < B", 100, 40)
	s.Line(Outline, Point{1, 1}, Point{99, 39})
	drawing, err := s.SVG()
	require.NoError(t, err)
	wellFormed(t, drawing)
	text := string(drawing)
	assert.True(t, strings.HasPrefix(text, "<svg "))
	assert.Contains(t, text, `viewBox="0 0 100 40"`)
	assert.Contains(t, text, `width="100mm" height="40mm"`)
	assert.Contains(t, text, `role="img" aria-labelledby="plan-of--A--title plan-of--A--desc"`)
	assert.Contains(t, text, `<title id="plan-of--A--title">The &#34;plan&#34; &amp; more</title>`)
}

func TestHostileWordsStayWords(t *testing.T) {
	for _, words := range []string{`</text><script>alert(1)</script>`, `" onload="x`, "a\x00b\x1b", "\xff\xfe", "]]>", "&amp;", "line\nfeed"} {
		s := New("x", words, words, 100, 40)
		s.Write(Text{Words: words, At: Point{50, 20}})
		drawing, err := s.SVG()
		require.NoError(t, err)
		wellFormed(t, drawing)
		assert.NotContains(t, string(drawing), "<script")
		assert.NotContains(t, string(drawing), `" onload`)
	}
}

func TestWhatIsNotANumberSpoilsTheSheet(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e9} {
		s := New("bad", "t", "d", 100, 40)
		s.Line(Thin, Point{0, 0}, Point{v, 1})
		_, err := s.SVG()
		assert.ErrorContains(t, err, "drawing bad: a coordinate is not a number")
		s = New("bad", "t", "d", v, 40)
		_, err = s.SVG()
		assert.Error(t, err)
	}
}

func TestNumbersAreShortAndNeverNegativeZero(t *testing.T) {
	s := New("n", "t", "d", 1, 1)
	for v, want := range map[float64]string{-0.001: "0", 0: "0", 2.675: "2.68", 1.5: "1.5", -3: "-3", 1.0 / 3: "0.33"} {
		assert.Equal(t, want, s.number(v))
	}
	assert.False(t, math.Signbit(s.rounded(-0.001)))
}

func TestDrawingShownTwiceTakesAnotherID(t *testing.T) {
	s := New("plan", "plan-title", "the plan-desc", 10, 10)
	drawing, err := s.SVG()
	require.NoError(t, err)
	second := string(WithID(drawing, "plan", "cover plan"))
	assert.Contains(t, second, `aria-labelledby="cover-plan-title cover-plan-desc"`)
	assert.Contains(t, second, `<title id="cover-plan-title">plan-title</title>`)
	assert.Contains(t, second, `<desc id="cover-plan-desc">the plan-desc</desc>`)
	assert.NotContains(t, second, `"plan-`)
}

func TestRecordHoldsInkAndWords(t *testing.T) {
	s := New("r", "t", "d", 100, 40)
	s.Line(Bold, Point{10, 10}, Point{20, 10})
	s.Write(Text{Words: "pier", At: Point{50, 20}})
	r := s.Record()
	assert.Equal(t, Box{9.5, 9.5, 20.5, 10.5}, r.Ink)
	require.Len(t, r.Labels, 1)
	assert.False(t, s.Free(r.Labels[0].Box))
	assert.False(t, s.Free(Box{95, 0, 101, 2}), "off the sheet")
	assert.True(t, s.Free(Box{0, 0, 5, 5}))
	s.Reserve(Box{0, 0, 2, 2})
	assert.False(t, s.Free(Box{0, 0, 5, 5}))
}
