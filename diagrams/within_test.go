package diagrams

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/measure"
	"pierbook/diagrams/kit"
)

// low draws what can keep to a height at the height that a full page leaves.
func low(j site) []Drawing {
	var list []Drawing
	for _, d := range everyDrawing(j) {
		if b, ok := d.(bounded); ok {
			list = append(list, b.within(68))
		}
	}
	for _, s := range sampleSections(j) {
		s := s.(Section)
		s.AtHand = true
		list = append(list, s.within(68))
	}
	return append(list, CheckBars{})
}

func TestLabelsStandClearOnLowDrawings(t *testing.T) {
	for _, j := range sites {
		for _, d := range low(j) {
			assert.Empty(t, faults(d.sheet(j.style).Record()), j.name+": "+d.About().Name)
		}
	}
}

func TestLabelsStandClearOnLowDrawingsOfAnyPlatform(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anySite(t)
		for _, d := range low(j) {
			for _, fault := range faults(d.sheet(j.style).Record()) {
				t.Errorf("%s: %s", d.About().Name, fault)
			}
		}
	})
}

func TestLowDrawingsAreNoHigherThanTheUsualOnes(t *testing.T) {
	for _, j := range sites {
		for _, d := range everyDrawing(j) {
			if b, ok := d.(bounded); ok {
				assert.LessOrEqual(t, b.within(68).sheet(j.style).Size().Bottom, d.sheet(j.style).Size().Bottom, d.About().Name)
			}
		}
	}
	shed := sites[0]
	for _, d := range low(shed) {
		if _, bars := d.(CheckBars); !bars {
			assert.LessOrEqual(t, d.sheet(shed.style).Size().Bottom, 100.0, d.About().Name)
		}
	}
}

// A drawing made smaller says the scale that it is drawn to.
func TestScaleOfALowDrawingIsTheOneStated(t *testing.T) {
	shed := sites[0]
	drawing, err := DrawWithin(samplePlan(shed), shed.style, 68)
	require.NoError(t, err)
	plan := samplePlan(shed).within(68).(Plan)
	record := plan.sheet(shed.style).Record()
	var stated string
	for _, l := range record.Labels {
		if len(l.Words) > 2 && l.Words[:2] == "1:" {
			stated = l.Words
		}
	}
	require.NotEmpty(t, stated)
	assert.Contains(t, string(drawing), ">"+stated+"<")
	v := plan.lay(room{left: 34, right: 12, near: 22, far: 12}, 165)
	assert.InDelta(t, shed.long.Millimetres()/v.Ratio, v.frame.Right-v.frame.Left, 0.001)
}

// The bars are what they say, both ways.
func TestCheckBarsAreTrue(t *testing.T) {
	at := map[string]kit.Box{}
	for _, l := range (CheckBars{}).sheet(measure.Style{}).Record().Labels {
		at[l.Words] = l.Box
	}
	assert.InDelta(t, 101.6, at["Q"].Left-at["P"].Left, 1e-9)
	assert.InDelta(t, 100, at["S"].Left-at["R"].Left, 1e-9)
	assert.InDelta(t, 101.6, at["U"].Top-at["T"].Top, 1e-9)
	assert.InDelta(t, 100, at["W"].Top-at["V"].Top, 1e-9)
}

// The ground that waits for readings keeps to its height with the note below it,
// as the hold point stands under it on the same side of paper.
func TestGroundToReadKeepsToItsHeight(t *testing.T) {
	for _, j := range sites {
		c := Contours{Grid: j.grid()}
		for _, most := range []float64{80, 105} {
			assert.LessOrEqual(t, c.within(most).sheet(j.style).Size().Bottom, most, j.name)
		}
	}
}
