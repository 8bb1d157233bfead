package kit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestWidthOfWords(t *testing.T) {
	// Digits are 0.556 of the size and capital A 0.667 in the common sans faces.
	assert.InDelta(t, (0.667+0.556)*10*slack, Width("A1", 10, false), 1e-9)
	assert.Greater(t, Width("floor", 4, true), Width("floor", 4, false))
	assert.InDelta(t, 10*slack, Width("🙂", 10, false), 1e-9, "unknown characters take a full square")
	assert.Zero(t, Width("", 4, false))
}

func TestShortenedAndWrappedWordsFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringN(0, 60, -1).Draw(t, "words")
		room := rapid.Float64Range(5, 60).Draw(t, "room")
		if short := Shorten(words, Small, room, false); Width(short, Small, false) > room {
			t.Fatalf("%q is wider than %v", short, room)
		}
		for _, line := range append(Wrap(words, Small, room, false), WrapTo(words, Small, room, 2)...) {
			if Width(line, Small, false) > room {
				t.Fatalf("%q is wider than %v", line, room)
			}
		}
		if n := len(WrapTo(words, Small, room, 2)); n > 2 {
			t.Fatalf("%d lines", n)
		}
	})
}

func TestWrapKeepsEveryWordThatFits(t *testing.T) {
	const words = "the corner nearest to the old garden gate"
	assert.Equal(t, words, strings.Join(Wrap(words, Small, 30, false), " "))
	assert.Equal(t, []string{"16′\u00a06″ long"}, Wrap("16′\u00a06″ long", Small, 40, false), "a no-break space holds")
	last := WrapTo(words, Small, 30, 2)
	assert.True(t, strings.HasSuffix(last[1], "…"))
}
