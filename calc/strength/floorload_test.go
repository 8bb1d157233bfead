package strength

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
)

// ASCE 7-16 Table 4.3-1: light storage 125 psf, from memory. A job that gives less
// is not that of the use, and one that gives more is neither.
func TestALessFloorLoadIsNotThatOfTheUse(t *testing.T) {
	for psf, want := range map[measure.Stress][2]string{100: {"no", "Floor load: 100\u00a0psf as given, less than the 125\u00a0psf of the use light_storage."}, 125: {"yes", "none"}, 150: {"no", "none"}} {
		j := sample.Deck()
		j.Platform.Use, j.Platform.FloorLoad = "light_storage", psf*measure.PoundPerSquareFt
		figures := map[string]figure.Figure{}
		s := work(t, j)
		for _, f := range s.Figures() {
			figures[f.Key] = f
		}
		assert.Equal(t, measure.Word(want[0]), figures["floor_load.of_use"].Value, "%v", psf)
		assert.Contains(t, string(figures["floor_load.below_use"].Value.(measure.Word)), want[1])

		// the load of a pier is the governing reaction; the one by area says so
		for _, p := range s.Piers {
			require.Equal(t, measure.Quantity(p.Most), figures["pier."+p.Name+".load"].Value)
		}
		assert.Contains(t, figures["pier.A1.load_by_area"].Means, "by tributary area")
	}
}
