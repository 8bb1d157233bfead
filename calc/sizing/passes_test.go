package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/strength"
)

// A frame on trial passes when the whole work finds no failing check, with the
// same greatest ratio.
func TestATrialAgreesWithTheWholeWork(t *testing.T) {
	passing, failing := 0, 0
	for name, base := range map[string]func() *job.Job{"shed": sample.Shed, "deck": sample.Deck} {
		for _, spacing := range []measure.Length{12 * measure.Inch, 16 * measure.Inch, 24 * measure.Inch} {
			for lines := 2; lines <= 4; lines++ {
				for perLine := 3; perLine <= 5; perLine++ {
					j := base()
					j.Frame.Joists.Spacing, j.Frame.Beams.Lines, j.Frame.Piers.PerLine, j.Frame.Piers.Spacing = spacing, lines, perLine, 0
					in := strength.Input{Job: j, Frame: sample.Frame(j)}
					whole, faults := strength.Work(in)
					require.True(t, faults.Empty(), "%s: %v", name, faults)
					worst, passes := Passes(in)
					assert.Equal(t, whole.Failing() == 0, passes, "%s, %d lines of %d", name, lines, perLine)
					if !passes {
						failing++
						assert.Greater(t, float64(worst), 1.0)
						continue
					}
					passing++
					greatest, _ := whole.Worst()
					assert.InDelta(t, float64(greatest.Ratio), float64(worst), 1e-12, "%s, %d lines of %d", name, lines, perLine)
				}
			}
		}
	}
	assert.Positive(t, passing)
	assert.Positive(t, failing)
}
