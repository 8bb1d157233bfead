package diagrams

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

// height returns the made-up floor: the highest ground and what stands over it.
func (j site) floor() measure.Length {
	high := j.ground(0, 0)
	for _, p := range j.grid().Piers {
		high = max(high, j.ground(p.X, p.Y))
	}
	return high + 17*in
}

func sampleSections(j site) []Drawing {
	var list []Drawing
	grid := j.grid()
	for i, line := range grid.Lines {
		if i > 0 && i < len(grid.Lines)-1 {
			continue
		}
		floor := j.floor()
		section := Section{
			Line: line.Name, Length: j.long, Start: line.Start, End: line.End, Floor: &floor, PostTops: floor - 11*in - 3*in/4,
			BeamDepth: 5*in + in/2, JoistDepth: 5*in + in/2, JoistThick: 3 * in / 2, Surface: 3 * in / 4, Joists: j.joists(),
			Block: 5 * in, SeatHeight: 5 * in, Base: 12 * in, Hole: 20 * in, Post: 3*in + in/2,
		}
		for k := range 25 {
			x := j.long.Part(k, 24)
			section.Ground = append(section.Ground, Spot{x, j.ground(x, line.Y)})
		}
		for k, p := range grid.onLine(i) {
			ground := j.ground(p.X, p.Y)
			pier := SectionPier{Name: p.Name, X: p.X, Known: true, Ground: ground, Estimated: k == 1, Dig: 8*in + in.Part(k, 16), Stone: 6 * in, Splice: k == 2}
			pier.Seat = ground - pier.Dig + pier.Stone + 5*in
			pier.PostLong = section.PostTops - pier.Seat
			section.Piers = append(section.Piers, pier)
		}
		if j.planned {
			section.Floor, section.Ground = nil, nil
			for k := range section.Piers {
				section.Piers[k] = SectionPier{Name: section.Piers[k].Name, X: section.Piers[k].X}
			}
		}
		list = append(list, section)
	}
	return list
}

// Where the ground is cut it is drawn dashed as it lay, and only there.
func TestSectionDrawsTheGroundAsItLay(t *testing.T) {
	section := sampleSections(sites[0])[0].(Section)
	dashed := func() int {
		svg, err := Draw(section, imperial)
		require.NoError(t, err)
		return strings.Count(string(svg), "hidden")
	}
	plain := dashed()
	section.Before = slices.Clone(section.Ground)
	assert.Equal(t, plain, dashed(), "nothing is cut yet")
	section.Before[2].Height += 6 * in
	assert.Greater(t, dashed(), plain)
	assert.Contains(t, section.About().Shows, "dashed as it lay")
}
