package frame_test

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
)

func read(t *testing.T, text string) *job.Job {
	j, faults := job.Read(fstest.MapFS{"floor.yaml": {Data: []byte(text)}}, "floor.yaml")
	require.NoError(t, faults.Err())
	return j
}

const deck = `name: Low deck
units: metric
platform:
  length: 6 m
  width: 3 m
  use: deck
  surface: {kind: boards, thickness: 28 mm, width: 120 mm, gap: 5 mm}
timber: {species: hem_fir, grade: No.2}
frame:
  joists: {size: 45x145 mm, spacing: 400 mm, sit: between_beams}
  beams: {size: 45x195 mm, plies: 2, lines: 3, inset: 45 mm}
  posts: {size: 90x90 mm}
  piers: {spacing: 1.5 m}
site:
  soil: {class: sand, bearing: 75 kPa}
yard:
  stock: {boards: [3 m, 4.2 m], 45x145 mm: [4.8 m, 3.6 m], 45x195 mm: [3 m, 4.8 m]}
`

// A metric job as read from its file, with the yard's lengths: two runs of board
// with joints on joists, plies that join over different piers.
func TestDeckFromItsFile(t *testing.T) {
	j := read(t, deck)
	f := lay(t, j)
	assert.Equal(t, 5, f.PerLine(0))
	assert.Equal(t, 16, len(f.Joists)/2)
	// Lines at 90, 1500 and 2910 mm, 1410 apart, less a beam of 90.
	assert.Equal(t, 1320*mm, f.Joists[0].Long())
	assert.Len(t, f.Rims, 2)
	require.Len(t, f.Surface.Boards[0].Pieces, 2)
	assert.NotEqual(t, f.Lines[0].Plies[0].Pieces[1].From, f.Lines[0].Plies[1].Pieces[1].From)
}

// A fault of the layout points at the line of the file that has to change.
func TestFaultPointsIntoTheFile(t *testing.T) {
	j := read(t, deck)
	j.Frame.Beams.Inset = 20 * mm
	_, faults := frame.Lay(j)
	require.Len(t, faults.Sorted(), 1)
	at := faults.Sorted()[0].At
	assert.Equal(t, 11, at.Line)
	assert.Equal(t, "45 mm", string([]rune(at.Text)[at.Column-1:][:at.Length]))
}
