package frame_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
)

// A hole is the block and the stone beside it: 12 + 2 · 4 = 20 in. By hand, with
// the outer piers half a post of 3 1/2 in from the ends of 16 ft: ten piers stand
// 188.5/9 = 20.9 in apart, eleven 18.9. Beams of 3 1/2 in within 12 ft: eight lines
// stand 140.5/7 = 20.1 in apart, nine 17.6.
func TestHolesKeepClearOfEachOther(t *testing.T) {
	laid := func(change func(*job.Job)) (string, string) {
		j := shed()
		j.Stone.Margin = 4 * in
		change(j)
		_, faults := frame.Skeleton(j)
		if faults.Empty() {
			return "", ""
		}
		require.Equal(t, 1, faults.Len())
		return faults.Sorted()[0].Path, faults.Sorted()[0].Wrong
	}
	for n, fits := range map[int]bool{10: true, 11: false} {
		path, wrong := laid(func(j *job.Job) { j.Frame.Piers.PerLine = n })
		assert.Equal(t, fits, wrong == "", "%d piers: %s", n, wrong)
		if !fits {
			assert.Equal(t, "frame.piers.per_line", path)
			assert.Contains(t, wrong, "the holes under them overlap")
		}
	}
	for n, fits := range map[int]bool{8: true, 9: false} {
		path, wrong := laid(func(j *job.Job) { j.Platform.Width, j.Frame.Beams.Lines = 12*ft, n })
		assert.Equal(t, fits, wrong == "", "%d lines: %s", n, wrong)
		if !fits {
			assert.Equal(t, "frame.beams.lines", path)
			assert.Contains(t, wrong, "the holes under them overlap")
		}
	}
}
