package diagrams

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/measure"
)

// A job that fails its checks still binds, so values that no builder would build
// must be drawn, or said to be missing, but never stop the program.
func TestOddValuesAreDrawnWithoutHarm(t *testing.T) {
	j := sites[0]
	floor := -40 * in
	under := sampleSections(j)[0].(Section)
	under.Floor, under.PostTops, under.Piers[0].PostLong = &floor, floor-12*in, -3*in
	noGround := sampleSections(j)[0].(Section)
	noGround.Ground = nil
	late := sampleWeekend(j)
	late.Steps[2].Day, late.Steps[3].From, late.Steps[4].Least, late.Steps[4].Most = 9, 80, 5, 1
	long := sampleSticks(j)
	long.Sticks[0].Pieces[0].Long = 20 * ft
	beyond := sampleJoistMarks(j)
	beyond.Joists[3].Near = j.long + ft
	ragged := sampleContours(j)
	ragged.Field.Heights[3] = ragged.Field.Heights[3][:2]
	flat := sampleContours(j)
	flat.Interval = 0
	unequal := sampleLoads(j)
	unequal.Loads[2] = PierLoad{Load: -40 * measure.PoundForce}
	close := sampleNailing(j)
	close.Edge = 1
	high := sampleFall(j)
	high.Door.Steps = 40
	deep := samplePierSection(j)
	deep.Dig, deep.Stone, deep.PostLong = 6*in, 12*in, -2*in
	unmoved := sampleMoves(j)
	unmoved.Corners[1] = CornerMove{Name: "A5"}
	drawings := []Drawing{under, noGround, late, long, beyond, ragged, flat, unequal, close, high, deep, unmoved}
	for _, d := range drawings {
		drawing, err := Draw(d, j.style)
		assert.NoError(t, err, d.About().Name)
		strict(t, string(drawing))
	}
}

func TestValuesThatAreNotNumbersAreRefused(t *testing.T) {
	c := sampleCurves(sites[0])
	c.Moment[10].Value = measure.Moment(math.NaN())
	_, err := Draw(c, imperial)
	assert.ErrorContains(t, err, "drawing curves-beam-line-B: a coordinate is not a number")
}
