package bidi_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/bidi"
)

const (
	apart  = "\u2068"
	end    = "\u2069"
	hebrew = "\u05d1\u05d9\u05ea" // three letters that run from right to left
)

func TestOnlyWhatRunsFromRightToLeftIsSetApart(t *testing.T) {
	for _, plain := range []string{"", "Garden shed", "Größe 12′", "小屋", "Δοκός"} {
		assert.Equal(t, plain, bidi.Isolated(plain))
	}
	assert.Equal(t, apart+hebrew+" 12"+end, bidi.Isolated(hebrew+" 12"))
	assert.Equal(t, apart+hebrew+end, bidi.Isolated(bidi.Isolated(hebrew)), "once")
	assert.Equal(t, hebrew, bidi.Bare(bidi.Isolated(hebrew)))
	assert.Equal(t, "a "+apart+hebrew+"…"+end, bidi.Closed("a "+apart+hebrew+"…"))
	assert.Equal(t, apart+hebrew+end, bidi.Closed(apart+hebrew+end))
}

func TestWhatATerminalIsShown(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"plain", "a\tb\n", "a\tb\n"},
		{"escape", "a\x1b[2Jb\u009b", "a\uFFFD[2Jb\uFFFD"},
		{"a line drawn over", "FAILS\rpasses", "FAILS\uFFFDpasses"},
		{"override", "a\u202eb", "a\uFFFDb"},
		{"a file's name", hebrew + ".yaml:3:7: name: x", apart + hebrew + end + ".yaml:3:7: name: x"},
		{"two words", hebrew + " " + hebrew + " 12 x", apart + hebrew + " " + hebrew + end + " 12 x"},
		{"set apart already", "a " + apart + hebrew + " 1" + end + " b", "a " + apart + hebrew + " 1" + end + " b"},
		{"never ended", "a " + apart + "b", "a \uFFFDb"},
		{"ended twice", apart + "a" + end + end + "b", apart + "a" + end + "\uFFFDb"},
		{"turned within", apart + "a\u202eb" + end, "\uFFFDa\uFFFDb\uFFFD"},
	} {
		assert.Equal(t, row.want, bidi.Shown(row.text), row.name)
	}
}

// Whatever comes in, what goes out sets apart and ends in turn, holds no other
// sign that turns, and is shown unchanged when it is shown once more.
func TestShownTextIsBalanced(t *testing.T) {
	signs := []string{"a", " ", "1", ":", hebrew[:2], "\u200f", apart, end, "\u202e", "\u2066", "\n", "\r", "\x1b", "é"}
	rapid.Check(t, func(t *rapid.T) {
		got := bidi.Shown(strings.Join(rapid.SliceOf(rapid.SampledFrom(signs)).Draw(t, "signs"), ""))
		open := false
		for _, r := range got {
			switch {
			case string(r) == apart, string(r) == end:
				require.NotEqual(t, string(r) == apart, open, got)
				open = !open
			case r == '\n':
				require.False(t, open, got)
			default:
				require.False(t, bidi.Forbidden(r), "%q", got)
			}
		}
		require.False(t, open, got)
		require.Equal(t, got, bidi.Shown(got))
	})
}
