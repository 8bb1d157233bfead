package fault_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/fault"
)

func caught(stumble func()) (err error) {
	defer fault.Catch(&err)
	stumble()
	return nil
}

func beyondTheEnd() { _ = []int{1}[len(strings.Repeat("x", 3))] }

func TestPanicBecomesABugWithItsPlace(t *testing.T) {
	err := caught(beyondTheEnd)
	var bug *fault.Bug
	require.ErrorAs(t, err, &bug)
	assert.Equal(t, "runtime error: index out of range [3] with length 1", bug.What)
	assert.Regexp(t, `^pierbook/calc/fault_test\.beyondTheEnd, line [0-9]+$`, bug.Where)
	assert.Contains(t, bug.Trace, "beyondTheEnd")
	assert.NotContains(t, err.Error(), "\n")

	assert.Same(t, bug, caught(func() { panic(bug) }), "raised again it keeps its place")
	require.NoError(t, caught(func() {}))
}

func TestWhatABugQuotesStaysOnOneLine(t *testing.T) {
	err := caught(func() { panic("a\nb\r\n" + strings.Repeat("c", 1000)) })
	assert.NotContains(t, err.Error(), "\n")
	assert.Less(t, len(err.Error()), 400)
	assert.Contains(t, err.Error(), "a b ccc")
}
