package kit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// readable fails when words lie over one another, over an arrowhead or off the sheet.
func readable(t *rapid.T, r Record) {
	for i, l := range r.Labels {
		if !r.Sheet.Holds(l.Box) {
			t.Fatalf("%q leaves the sheet", l.Words)
		}
		for _, m := range r.Labels[:i] {
			if l.Box.Grown(-0.01).Meets(m.Box.Grown(-0.01)) {
				t.Fatalf("%q over %q", l.Words, m.Words)
			}
		}
		for _, a := range r.Arrows {
			if l.Box.Grown(-0.3).Meets(a) {
				t.Fatalf("%q over an arrowhead", l.Words)
			}
		}
	}
}

func TestDimensionsOfAnySizeCanBeRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long := rapid.Float64Range(0.3, 90).Draw(t, "long")
		words := rapid.SampledFrom([]string{"1/16″", "11′ 10 3/16″", "3740 mm", "post 5 7/16″"}).Draw(t, "words")
		s := New("d", "t", "d", 171, 120)
		s.DimensionAcross(40, 40+long, 20, 30, 30, words)
		readable(t, s.Record())
		s = New("d", "t", "d", 171, 160)
		s.DimensionUpright(20, 20+long, 60, 90, 90, words)
		readable(t, s.Record())
	})
}

func TestRunningDimensionsCanBeRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.IntRange(1, 30).Draw(t, "marks")
		var across, up []Mark
		at := 20.0
		for range count {
			at += rapid.Float64Range(0, 4).Draw(t, "gap")
			across = append(across, Mark{At: at, Edge: 40, Words: "11′ 10 3/16″"})
			up = append(up, Mark{At: at, Edge: 40, Words: "3740 mm"})
		}
		s := New("r", "t", "d", 171, 90)
		s.RunningAcross(20, across, 50, true)
		readable(t, s.Record())
		s = New("r", "t", "d", 90, 171)
		s.RunningUpright(20, up, 30, false)
		readable(t, s.Record())
	})
}

func TestSmallDimensionHasItsArrowsOutside(t *testing.T) {
	s := New("d", "t", "d", 100, 60)
	s.DimensionAcross(40, 43, 20, 32, 32, "1/2″")
	r := s.Record()
	require.Len(t, r.Arrows, 2)
	assert.InDelta(t, 40, r.Arrows[0].Right, 1e-9, "the left head stands left of its mark")
	assert.InDelta(t, 43, r.Arrows[1].Left, 1e-9)
	assert.Greater(t, r.Labels[0].Box.Left, 43.0)
}

func TestNotesKeepTheOrderOfTheirTips(t *testing.T) {
	s := New("n", "t", "d", 100, 60)
	s.Notes(60, false, 0, 60,
		Note{Tip: Point{20, 30}, Lines: []string{"second", "in two lines"}},
		Note{Tip: Point{20, 29}, Lines: []string{"first"}},
		Note{Tip: Point{20, 31}, Lines: []string{"third"}, Dot: true})
	var words []string
	last := -1.0
	for _, l := range s.Record().Labels {
		words = append(words, l.Words)
		assert.GreaterOrEqual(t, l.Box.Top, last)
		last = l.Box.Bottom - 0.01
	}
	assert.Equal(t, []string{"first", "second", "in two lines", "third"}, words)
}
