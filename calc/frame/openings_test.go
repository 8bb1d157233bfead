package frame_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

func shedWith(openings map[string]job.Opening) *job.Job {
	j := shed()
	j.Platform.Openings = openings
	return j
}

// One hatch by hand, 10 by 20 in at 100 in along and 40 in across the shed.
//
// Joist 7 covers 95 1/4 to 96 3/4, joist 8 begins at 111 1/4: the hatch lies
// between them, 3 1/4 in from the one and 1 1/4 in, less than a thickness, from
// the other. The second panel of row 1 begins at 96 1/8, the second of row 2 at
// 64 1/16 along and 47 5/8 across. In row 1: 100 − 96 1/8 = 3 7/8 from its end,
// 40 from its edge, 47 1/2 − 40 = 7 1/2 wide. In row 2: 100 − 64 1/16 = 35 15/16,
// 0, and 60 − 47 5/8 = 12 3/8 wide. The gap between the rows takes the other 1/8.
//
// Blocks stand beyond both edges across the joists, with their centres at
// 40 − 3/4 and 60 + 3/4, and reach from 96 3/4 to 111 1/4; a piece 20 in long
// stands between them with its centre at 100 − 3/4.
func TestHatchInPanels(t *testing.T) {
	j := shedWith(map[string]job.Opening{"hatch": {X: 100 * in, Y: 40 * in, Length: 10 * in, Width: 20 * in}})
	j.Platform.Width = 142*in + 3*in/4 // three whole rows
	f := lay(t, j)
	require.Len(t, f.Openings, 1)
	o := f.Openings[0]
	assert.Equal(t, []frame.CutOut{
		{Piece: "P1.2", X: 31 * in / 8, Y: 40 * in, Length: 10 * in, Width: 15 * in / 2, Kind: "notch"},
		{Piece: "P2.2", X: 35*in + 15*in/16, Y: 0, Length: 10 * in, Width: 99 * in / 8, Kind: "notch"},
	}, o.CutOuts)
	assert.Empty(t, o.Through)
	assert.Equal(t, []string{"J8"}, o.Close)
	assert.Equal(t, 7, o.Bay)
	assert.Empty(t, o.Bare)
	assert.Equal(t, []frame.Blocking{
		{Name: "Q1.1", Y: 39*in + in/4, From: 96*in + 3*in/4, To: 111*in + in/4},
		{Name: "Q1.2", Y: 60*in + 3*in/4, From: 96*in + 3*in/4, To: 111*in + in/4},
		{Name: "Q1.3", Y: 99*in + in/4, From: 40 * in, To: 60 * in, Turned: true},
	}, f.Blocking)
}

// One pipe by hand through a deck of boards, 200 by 150 mm at 900 mm along and
// 300 mm across.
//
// Boards of 120 mm with gaps of 5 begin every 125: the third at 250, the fourth
// at 375. The third loses 70 mm from 50 mm on, the fourth 450 − 375 = 75 mm; the
// gap takes 5. Joists of 45 stand at 800 and 1200, faces 822.5 and 1177.5, both
// 77.5 mm away, so that all four edges get a block.
func TestPipeThroughBoards(t *testing.T) {
	j := read(t, deck)
	j.Platform.Openings = map[string]job.Opening{"pipe": {X: 900 * mm, Y: 300 * mm, Length: 200 * mm, Width: 150 * mm}}
	f := lay(t, j)
	o := f.Openings[0]
	assert.Equal(t, []frame.CutOut{
		{Piece: "D3-1", X: 900 * mm, Y: 50 * mm, Length: 200 * mm, Width: 70 * mm, Kind: "notch"},
		{Piece: "D4-1", X: 900 * mm, Y: 0, Length: 200 * mm, Width: 75 * mm, Kind: "notch"},
	}, o.CutOuts)
	assert.Equal(t, []frame.Blocking{
		{Name: "Q1.1", Y: 555 * mm / 2, From: 1645 * mm / 2, To: 2355 * mm / 2},
		{Name: "Q1.2", Y: 945 * mm / 2, From: 1645 * mm / 2, To: 2355 * mm / 2},
		{Name: "Q1.3", Y: 1755 * mm / 2, From: 300 * mm, To: 450 * mm, Turned: true},
		{Name: "Q1.4", Y: 2245 * mm / 2, From: 300 * mm, To: 450 * mm, Turned: true},
	}, f.Blocking)
}

// The boards of the deck are 120 mm wide: an opening as wide as one leaves
// nothing of it beside the opening, and one inside it is a hole.
func TestKindsOfCut(t *testing.T) {
	j := read(t, deck)
	for kind, o := range map[string]job.Opening{
		"in two":    {X: 900 * mm, Y: 250 * mm, Length: 200 * mm, Width: 120 * mm},
		"hole":      {X: 900 * mm, Y: 300 * mm, Length: 50 * mm, Width: 50 * mm},
		"notch":     {X: 0, Y: 250 * mm, Length: 30 * mm, Width: 120 * mm},
		"all of it": {X: 0, Y: 250 * mm, Length: 6000 * mm, Width: 120 * mm},
	} {
		j.Platform.Openings = map[string]job.Opening{"o": o}
		cuts := lay(t, j).Openings[0].CutOuts
		require.NotEmpty(t, cuts)
		assert.Equal(t, kind, cuts[0].Kind)
	}
}

// Joists 7 and 8 stand at 96 and 112 in: an opening from 90 to 120 in cuts both,
// and no block helps. The beam of line B, 3 1/2 in wide at 72 in, runs below.
func TestOpeningThatCutsJoistsGetsNoBlocks(t *testing.T) {
	f := lay(t, shedWith(map[string]job.Opening{"stair": {X: 90 * in, Y: 50 * in, Length: 30 * in, Width: 30 * in}}))
	o := f.Openings[0]
	assert.True(t, o.NeedsHeaders())
	assert.Equal(t, []string{"J7", "J8"}, o.Through)
	assert.Equal(t, []string{"B"}, o.Over)
	assert.Zero(t, o.Bay)
	assert.Empty(t, f.Blocking)
}

// A notch in the side of the floor is one in the rim as well; with joists between
// the beams it is a flush beam that an opening may cut.
func TestOpeningsCutRimsAndFlushBeams(t *testing.T) {
	f := lay(t, shedWith(map[string]job.Opening{"side": {X: 100 * in, Y: 0, Length: 6 * in, Width: 6 * in}, "far": {X: 100 * in, Y: 140 * in, Length: 6 * in, Width: 4 * in}}))
	assert.Equal(t, []string{"the rim of side C"}, f.Openings[0].Through)
	assert.Equal(t, []string{"the rim of side A"}, f.Openings[1].Through)
	j := read(t, deck)
	j.Platform.Openings = map[string]job.Opening{"middle": {X: 900 * mm, Y: 1500 * mm, Length: 100 * mm, Width: 100 * mm}}
	assert.Equal(t, []string{"beam B"}, lay(t, j).Openings[0].Through)
}

// Blocks under the long joints of square-edged panels make way for an opening, in
// its bay only: the joint at 47 9/16 in runs through the hatch of bay 7.
func TestBlocksUnderJointsMakeWayForAnOpening(t *testing.T) {
	wish := shedWith(nil)
	wish.Platform.Width = 142*in + 3*in/4
	wish.Platform.Surface.Edge = "square"
	before := lay(t, wish).Blocking
	wish.Platform.Openings = map[string]job.Opening{"hatch": {X: 100 * in, Y: 40 * in, Length: 10 * in, Width: 20 * in}}
	f := lay(t, wish)
	assert.Len(t, f.Blocking, len(before)-1+3)
	for _, b := range f.Blocking {
		assert.NotEqual(t, "K1.7", b.Name)
	}
	assert.Contains(t, before, frame.Blocking{Name: "K1.7", Y: 47*in + 9*in/16, From: 96*in + 3*in/4, To: 111*in + in/4})
}

// Two sleeves an inch apart leave no room for a block between them: the edges
// are told, not blocked through a sleeve.
func TestEdgesWithoutRoomAreTold(t *testing.T) {
	f := lay(t, shedWith(map[string]job.Opening{"one": {X: 100 * in, Y: 40 * in, Length: 4 * in, Width: 4 * in}, "two": {X: 100 * in, Y: 45 * in, Length: 4 * in, Width: 4 * in}}))
	assert.Contains(t, f.Openings[0].Bare, "side C")
	assert.Contains(t, f.Openings[1].Bare, "side A")
}

// What is cut out of all pieces is the opening less the gaps in it, and no block
// stands in an opening, in a joist or in another block.
func TestCutOutsAddUpToTheOpening(t *testing.T) {
	forAnyFrame(t, func(t *rapid.T, j *job.Job, _ *frame.Frame) {
		place := func(side Length, label string) (from, long Length) {
			long = Length(rapid.Int64Range(1, int64(side)).Draw(t, label))
			return Length(rapid.Int64Range(0, int64(side-long)).Draw(t, "from "+label)), long
		}
		j.Platform.Openings = map[string]job.Opening{}
		for i := range rapid.IntRange(1, 3).Draw(t, "openings") {
			var o job.Opening
			o.X, o.Length = place(min(j.Platform.Length, 3*ft), "length")
			o.Y, o.Width = place(min(j.Platform.Width, 3*ft), "width")
			j.Platform.Openings[fmt.Sprintf("o%d", i)] = o
		}
		f := lay(t, j)
		for _, o := range f.Openings {
			area := o.Length.Times(o.Width)
			for _, c := range o.CutOuts {
				require.Positive(t, c.Length)
				require.Positive(t, c.Width)
				area -= c.Length.Times(c.Width)
			}
			for _, gap := range gaps(f) {
				area -= shared(o.Rect, gap)
			}
			require.InDelta(t, 0, float64(area), 1e-9)
		}
		thick := f.Sections.Joist.Width
		var tops []frame.Rect
		for _, joist := range f.Joists {
			tops = append(tops, frame.Rect{X: joist.Near, Y: joist.From, Length: thick, Width: joist.Long()})
		}
		for _, b := range f.Blocking {
			top := frame.Rect{X: b.From, Y: b.Y - thick/2, Length: b.Long(), Width: thick}
			if b.Turned {
				top = frame.Rect{X: b.Y - thick/2, Y: b.From, Length: thick, Width: b.Long()}
			}
			for _, o := range f.Openings {
				require.Zero(t, shared(o.Rect, top), "%s in %s", b.Name, o.Name)
			}
			for _, other := range tops {
				require.Zero(t, shared(other, top), b.Name)
			}
			if b.Name[0] == 'Q' {
				tops = append(tops, top)
			}
		}
	})
}

// gaps returns the places of the floor that no piece of the surface covers.
func gaps(f *frame.Frame) []frame.Rect {
	var list []frame.Rect
	y := Length(0)
	strip := func(from, width Length) {
		list = append(list, frame.Rect{Y: y, Length: f.Length, Width: from - y})
		y = from + width
	}
	for _, b := range f.Surface.Boards {
		strip(b.Y, b.Width)
	}
	for _, row := range f.Surface.Rows {
		strip(row.Y, row.Width)
		x := Length(0)
		for _, p := range f.Surface.Panels {
			if p.Row == row.Number {
				list = append(list, frame.Rect{X: x, Y: row.Y, Length: p.X - x, Width: row.Width})
				x = p.X + p.Length
			}
		}
	}
	strip(f.Width, 0)
	return list
}

// shared is the area that two rectangles have in common.
func shared(a, b frame.Rect) Area {
	long := min(a.X+a.Length, b.X+b.Length) - max(a.X, b.X)
	wide := min(a.Y+a.Width, b.Y+b.Width) - max(a.Y, b.Y)
	return max(0, long).Times(max(0, wide))
}

func TestFiguresOfAHatch(t *testing.T) {
	j := shedWith(map[string]job.Opening{"hatch": {X: 100 * in, Y: 40 * in, Length: 10 * in, Width: 20 * in}, "stair": {X: 20 * in, Y: 50 * in, Length: 30 * in, Width: 30 * in}})
	j.Platform.Width = 142*in + 3*in/4 // three whole rows
	r := registry(t, j)
	for key, want := range map[string]string{
		"openings.count": "2", "openings.cutting": "1", "openings.headers": "stair", "openings.blocks": "3", "openings.bare": "0",
		"opening.hatch.cuts": "none", "opening.hatch.close": "J8", "opening.hatch.P1.2.from_end": `3 7/8″`, "opening.hatch.P1.2.from_side": `3′ 4″`,
		"opening.hatch.P2.2.width": `12 3/8″`, "opening.hatch.P2.2.kind": "notch", "opening.stair.cuts": "J3, J4", "blocking.count": "3",
	} {
		assert.Equal(t, want, text(t, r, j, key), key)
	}
}
