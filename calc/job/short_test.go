package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

// A hole is written as on paper: its depth, and what was found.
func TestHolesInShort(t *testing.T) {
	j, faults := readJob(t, sound+"ground: {probes: {A1: 10 1/2\" firm, A2: 9\" Rock, A3: {depth: 8\", found: water}}}\nmeasured: {holes: {B1: 12\"}}\n")
	require.Empty(t, faults)
	assert.Equal(t, map[string]Probe{"A1": {Depth: 21 * measure.Inch / 2, Found: "firm"}, "A2": {Depth: 9 * measure.Inch, Found: "rock"}, "A3": {Depth: 8 * measure.Inch, Found: "water"}}, j.Ground.Probes)
	assert.Equal(t, Probe{Depth: 12 * measure.Inch, Found: "firm"}, j.Measured.Holes["B1"])
	require.Len(t, j.Doubts(), 1)
	assert.Contains(t, j.Doubts()[0].Saying, "taken as firm")
	_, faults = readJob(t, sound+"ground: {probes: {A1: 10 1/2 firm}}\n")
	assert.Contains(t, faults, "ground.probes.A1.depth")
}

// Readings at piers that only the turned platform has: length and width are asked.
func TestExchangedSidesAreAsked(t *testing.T) {
	text := "name: Shed\nplatform: {length: 8', width: 16', use: shed}\ntimber: {species: hem_fir, grade: No.2}\nsite: {soil: {class: silty_sand}}\n"
	_, faults := readJob(t, text+"ground: {probes: {A5: 9\" firm, C1: 8\" firm}}\n")
	assert.Contains(t, faults, "length and width look exchanged")
	assert.Contains(t, faults, "from A1 to C5")
	_, faults = readJob(t, text+"ground: {probes: {A5: 9\" firm, D1: 8\" firm}}\n")
	assert.NotContains(t, faults, "exchanged")
}

// The shortest post has wood for the screws of its cap: AWC, NDS Commentary (2018),
// Table C12.1.6.6, from memory: in bored holes 10 diameters towards the end that is
// pulled at, 5 towards the other. A mark more or less would be another figure.
func TestShortestPostTakesTheScrewsOfItsCap(t *testing.T) {
	j, faults := readJob(t, "name: Shed\nplatform: {length: 16', width: 8', use: shed}\ntimber: {species: hem_fir, grade: No.2}\nsite: {soil: {class: silty_sand}}\n")
	require.Empty(t, faults)
	screws := measure.FromMetres((10 + 5) * 0.164 * 0.0254)
	shortest := j.Frame.Posts.Shortest
	assert.GreaterOrEqual(t, shortest, screws+measure.Inch/2)
	assert.Less(t, shortest, screws+measure.Inch/2+measure.Sixteenth)
}
