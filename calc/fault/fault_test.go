package fault_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/fault"
)

func printed(faults ...fault.Fault) string {
	var list fault.List
	for _, f := range faults {
		list.Add(f)
	}
	var b strings.Builder
	list.Print(&b)
	return b.String()
}

func TestFaultShowsTheLineWithACaretUnderTheText(t *testing.T) {
	got := printed(fault.Fault{
		At:     fault.Place{File: "henhouse.yaml", Line: 14, Column: 12, Text: "  spacing: 15 o.c", Length: 6},
		Path:   "frame.joists.spacing",
		Wrong:  `"15 o.c" is not a length`,
		Remedy: `write a length with its unit, such as 16" or 400 mm`,
	})
	assert.Equal(t, `henhouse.yaml:14:12: frame.joists.spacing: "15 o.c" is not a length
  14 |   spacing: 15 o.c
     |            ^^^^^^
  write a length with its unit, such as 16" or 400 mm
`, got)
}

func TestCaretStandsUnderItsCharacterAfterTabsAndWideLetters(t *testing.T) {
	got := printed(fault.Fault{At: fault.Place{File: "f", Line: 3, Column: 4, Text: "\tgröße", Length: 2}, Wrong: "w"})
	assert.Equal(t, "f:3:4: w\n   3 | \tgröße\n     | \t  ^^\n", got)
}

func TestOfALongLineOnlyTheNeighbourhoodIsShown(t *testing.T) {
	long := strings.Repeat("a", 300) + "WRONG" + strings.Repeat("b", 300)
	got := printed(fault.Fault{At: fault.Place{File: "f", Line: 1, Column: 301, Text: long, Length: 5}, Wrong: "w"})
	lines := strings.Split(got, "\n")
	assert.Equal(t, "   1 | …"+strings.Repeat("a", 80)+"WRONG"+strings.Repeat("b", 75)+"…", lines[1])
	assert.Equal(t, "     | "+strings.Repeat(" ", 81)+"^^^^^", lines[2])
	first := printed(fault.Fault{At: fault.Place{File: "f", Line: 1, Column: 1, Text: long, Length: 600}, Wrong: "w"})
	assert.Contains(t, first, "   1 | aaa")
	assert.Contains(t, first, "     | "+strings.Repeat("^", 160)+"\n")
	last := printed(fault.Fault{At: fault.Place{File: "f", Line: 1, Column: 606, Text: long, Length: 1}, Wrong: "w"})
	assert.Contains(t, last, "bbb\n     | "+strings.Repeat(" ", 161)+"^\n")
}

func TestFaultWithoutAPlaceNamesTheFile(t *testing.T) {
	assert.Equal(t, "f.yaml: the file is empty\n  write a job\n", printed(fault.Fault{At: fault.Place{File: "f.yaml"}, Wrong: "the file is empty", Remedy: "write a job"}))
	assert.Equal(t, "wrong\n", printed(fault.Fault{Wrong: "wrong"}))
}

func TestControlCharactersDoNotReachTheTerminal(t *testing.T) {
	got := printed(fault.Fault{At: fault.Place{File: "f", Line: 1, Column: 1, Text: "a\x1b[31m\u009bb", Length: 1}, Wrong: "w"})
	assert.NotContains(t, got, "\x1b")
	assert.NotContains(t, got, "\u009b")
	assert.Contains(t, got, "a\uFFFD[31m\uFFFDb")
	assert.NotContains(t, printed(fault.Fault{Wrong: "\u202edaeh"}), "\u202e", "nothing turns the writing round")
}

func TestFaultsComeSortedAndOnce(t *testing.T) {
	at := func(file string, line, column int) fault.Place {
		return fault.Place{File: file, Line: line, Column: column}
	}
	var list, other fault.List
	list.Add(fault.Fault{At: at("b", 1, 1), Wrong: "5"})
	list.Add(fault.Fault{At: at("a", 2, 9), Wrong: "3"})
	other.Add(fault.Fault{At: at("a", 10, 1), Wrong: "4"})
	other.Add(fault.Fault{At: at("a", 2, 9), Wrong: "3"})
	other.Add(fault.Fault{At: at("a", 2, 1), Wrong: "1"})
	other.Add(fault.Fault{At: at("a", 2, 9), Wrong: "2"})
	list.Join(other)
	var order []string
	for _, f := range list.Sorted() {
		order = append(order, f.Wrong)
	}
	assert.Equal(t, []string{"1", "2", "3", "4", "5"}, order)
}

func TestEmptyListIsNoError(t *testing.T) {
	var list fault.List
	assert.True(t, list.Empty())
	require.NoError(t, list.Err())
	list.Add(fault.Fault{Wrong: "w", Remedy: "r"})
	assert.False(t, list.Empty())
	require.EqualError(t, list.Err(), "w\n  r")
}

func TestNearestName(t *testing.T) {
	keys := []string{"spacing", "size", "sit", "plies", "hem_fir", "southern_pine", "No.1", "No.2", "No.3"}
	for name, want := range map[string]string{
		"spaceing": "spacing", "sapcing": "spacing", "spcing": "spacing", "siez": "size", "hem-fir": "hem_fir", "hemfir": "hem_fir",
		"No. 2": "No.2", "no.2": "No.2", "kerf": "", "": "", "x": "", strings.Repeat("s", 70): "",
	} {
		assert.Equal(t, want, fault.Nearest(name, keys), name)
	}
}

// The distance obeys the laws of a distance as far as one can see it through
// Nearest: a name is nearest to itself, and one slip in a word of three letters
// or more is always found.
func TestOneSlipIsAlwaysFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-z]{3,12}`).Draw(t, "word")
		require.Equal(t, word, fault.Nearest(word, []string{"0000000000", word}))
		at := rapid.IntRange(0, len(word)-1).Draw(t, "at")
		require.Equal(t, word, fault.Nearest(word[:at]+word[at+1:], []string{word}), "left out")
		require.Equal(t, word, fault.Nearest(word[:at]+"#"+word[at:], []string{word}), "put in")
		require.Equal(t, word, fault.Nearest(word[:at]+"#"+word[at+1:], []string{word}), "changed")
	})
}

func ExampleList_Print() {
	var list fault.List
	list.Add(fault.Fault{
		At:   fault.Place{File: "shed.yaml", Line: 3, Column: 11, Text: "  length: 16", Length: 2},
		Path: "platform.length", Wrong: `"16" has no unit`, Remedy: `write the unit, such as 16" or 16 mm`,
	})
	list.Print(os.Stdout)
	// Output:
	// shed.yaml:3:11: platform.length: "16" has no unit
	//    3 |   length: 16
	//      |           ^^
	//   write the unit, such as 16" or 16 mm
}
