package frame

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

// everyRow lists all ways of cutting a row, joint by joint.
func (p *floor) everyRow() [][]cut {
	last := len(p.near) - 1
	var ways [][]cut
	var cutOn func(cuts []cut, x measure.Length, at int)
	cutOn = func(cuts []cut, x measure.Length, at int) {
		if p.length-x <= p.face {
			ways = append(ways, append(append([]cut(nil), cuts...), cut{from: x, to: p.length}))
		}
		for j := at + p.bays; j <= last-p.bays; j++ {
			to, ok := p.end(x, j)
			if !ok {
				break
			}
			cutOn(append(append([]cut(nil), cuts...), cut{x, to, j}), to+p.gap, j)
		}
	}
	cutOn(nil, 0, 0)
	return ways
}

// Rows whose later panels are as long as they can be lose nothing: no other way
// of cutting two rows keeps their joints farther apart.
func TestNoOtherRowsStaggerBetter(t *testing.T) {
	for _, spacing := range []measure.Length{16 * measure.Inch, measure.Inch * 96 / 5, 24 * measure.Inch} {
		for long := 8 * measure.Foot; long <= 17*measure.Foot; long += 5 * measure.Inch {
			p := &floor{length: long, width: 8 * measure.Foot, face: 96 * measure.Inch, faceWidth: measure.Inch * 95 / 2, gap: measure.Inch / 8, kerf: measure.Inch / 8,
				near: joistMarks(long, measure.Inch*3/2, spacing), thick: measure.Inch * 3 / 2, bays: leastBays, mates: true, hold: measure.Inch / 2}
			found, ok := p.best()
			every := p.everyRow()
			assert.Equal(t, len(every) > 0, ok)
			best := 0
			for _, a := range every {
				for _, b := range every {
					best = max(best, stepBetween(a, b, leastBays))
				}
			}
			if ok {
				assert.Equal(t, best, found.step, "%v long, joists at %v", long, spacing)
			}
		}
	}
}
