package heights

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// tried returns the most that rows from the given one on can add up to.
func tried(worth [][]int64, row int, taken map[int]bool) int64 {
	if row == len(worth) {
		return 0
	}
	best := tried(worth, row+1, taken)
	for c, w := range worth[row] {
		if w > 0 && !taken[c] {
			taken[c] = true
			best = max(best, w+tried(worth, row+1, taken))
			delete(taken, c)
		}
	}
	return best
}

func TestPairingAgainstTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows, columns := rapid.IntRange(1, 5).Draw(t, "rows"), rapid.IntRange(0, 5).Draw(t, "columns")
		worth := make([][]int64, rows)
		for r := range worth {
			worth[r] = make([]int64, columns)
			for c := range worth[r] {
				worth[r][c] = rapid.Int64Range(-3, 12).Draw(t, "worth")
			}
		}
		chosen := pairing(worth)
		require.Len(t, chosen, rows)
		var sum int64
		taken := map[int]bool{}
		for r, c := range chosen {
			if c >= 0 {
				require.False(t, taken[c])
				require.Positive(t, worth[r][c])
				taken[c] = true
				sum += worth[r][c]
			}
		}
		require.Equal(t, tried(worth, 0, map[int]bool{}), sum)
	})
	require.Empty(t, pairing(nil))
}
