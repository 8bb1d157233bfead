// Package frame lays the platform out in plan: beam lines, piers, splices,
// rims, joists and the pieces of the surface, from the sizes in the job and the
// lengths that the yard sells.
//
// Positions are exact lengths over the frame corner next to pier A1: x along the
// beams from the end the tape hooks on, y across them from line A's side. Equal
// spacings are worked from the origin, never added up.
//
// The rules are those of the trade (no source, unless one is named beside the
// rule): beams join over inner piers only, joists are marked on their near faces
// from one end, end joints of panels and boards lie over joists and are staggered.
// Bearing follows IRC 2018 R502.6, panels APA Form E30V (2011). Whether the
// members are strong enough is no matter of this package; overhangs and whatever
// its advice calls unusual are an engineer's, and the code official's to accept.
package frame

import (
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Frame is the platform in plan, every piece of it.
type Frame struct {
	Length, Width measure.Length // outside faces, rims included
	Lines         []Line         // A, B, C …, by rising y
	Piers         []Pier         // line by line, by rising x
	Rims          []Rim          // one along each long side, in pieces; none when the outer beams are the sides
	Joists        []Joist        // bay by bay, by rising x
	Blocking      []Blocking     // under panel edges and round openings, where the frame wants it
	Surface       Surface
	Openings      []Opening // in the surface, by name
	BuildUp       BuildUp
	Sections      Sections
	Advice        []Advice // what a change of size would save or mend, said before anything is ordered
	// WidestBay is the greatest distance between the centres of neighbouring
	// joists: the span that the surface really has to bridge.
	WidestBay measure.Length
}

// Sections are the cross-sections the frame is made of, none left to pick.
type Sections struct {
	Joist, Rim, Beam, Post job.Section
}

// BuildUp is what lies between the top of a post and the top of the surface.
type BuildUp struct {
	Surface, Joist, Beam, Cap measure.Length // Joist is 0 when joists sit between the beams
}

// Total returns the whole build-up.
func (b BuildUp) Total() measure.Length { return b.Surface + b.Joist + b.Beam + b.Cap }

// Line is a beam line.
type Line struct {
	Name       string         // A, B, C …, without I and O
	Y          measure.Length // centre
	Start, End measure.Length // x of the beam's ends
	Plies      []Ply
}

// Ply is one layer of a beam: one board or timber after the other, butted over piers.
type Ply struct {
	Pieces []Piece
}

// Piece is one length of timber along x or y.
type Piece struct {
	Name     string // as on the cut table: beam "A-1a" is line A, piece 1, ply a
	From, To measure.Length
}

// Long returns the length of the piece.
func (p Piece) Long() measure.Length { return p.To - p.From }

// Pier is a place where a post stands.
type Pier struct {
	Name   string // "B3"
	Line   int    // index into Lines
	Number int    // from 1
	X, Y   measure.Length
	Splice bool // a beam joint lies over it
	// TributaryLength is the length of beam that the pier carries by halves of
	// the bays beside it, with the overhang at the ends.
	TributaryLength measure.Length
	// TributaryWidth is the width of floor that its line carries, likewise.
	TributaryWidth measure.Length
}

// PerLine returns how many piers stand under a line.
func (f *Frame) PerLine(line int) int {
	n := 0
	for _, p := range f.Piers {
		if p.Line == line {
			n++
		}
	}
	return n
}

// Pier returns the pier with the name and whether there is one.
func (f *Frame) Pier(name string) (Pier, bool) {
	for _, p := range f.Piers {
		if p.Name == name {
			return p, true
		}
	}
	return Pier{}, false
}

// Corners returns the four outer piers in order round the frame: A1, the last
// of line A, the last of the last line, and the first of the last line.
func (f *Frame) Corners() [4]Pier {
	var c [4]Pier
	last := len(f.Lines) - 1
	for _, p := range f.Piers {
		switch {
		case p.Line == 0 && p.Number == 1:
			c[0] = p
		case p.Line == 0 && p.Number == f.PerLine(0):
			c[1] = p
		case p.Line == last && p.Number == f.PerLine(last):
			c[2] = p
		case p.Line == last && p.Number == 1:
			c[3] = p
		}
	}
	return c
}

// Rim is the board along a long side, at the joist ends.
type Rim struct {
	Side   string         // name of the beam line it runs beside
	Y      measure.Length // outer face
	Pieces []Piece
}

// Joist is one joist.
type Joist struct {
	Name     string         // "J7", or "J7/2" in the second bay when joists sit between the beams
	Number   int            // along x, from 1
	Bay      int            // from 1; always 1 when joists sit on the beams
	Near     measure.Length // x of the face nearer to x = 0: the running mark
	Centre   measure.Length // x
	MarkSide string         // on which side of the mark the joist stands: "beyond" (towards growing x) or "before"
	From, To measure.Length // y of its ends
	// Overhang marks the short piece from the rim to an outer beam that stands
	// in from the side, with joists between beams: bay 0 and the bay after the
	// last. It is no cantilever until an engineer has detailed it.
	Overhang bool
	// BeyondBeams marks an end joist that stands wholly past the beams' ends.
	BeyondBeams bool
}

// Long returns the length of the joist.
func (j Joist) Long() measure.Length { return j.To - j.From }

// Blocking is a short piece between two joists, or between two such pieces.
type Blocking struct {
	Name     string
	Y        measure.Length // centre
	From, To measure.Length // x
	// Turned marks a piece that runs along the joists, beside an opening: its
	// centre is an x then, and its ends are y.
	Turned bool
}

// Long returns the length of the block.
func (b Blocking) Long() measure.Length { return b.To - b.From }

// Surface is the floor in pieces.
type Surface struct {
	Panels []Panel // row by row from y = 0, by rising x; nil for boards
	Rows   []Row
	Boards []Board // by rising position; nil for panels
	Sheets int     // whole sheets to buy
	OneBay bool    // some panels cover one joist bay only
}

// Row is one row of panels across the joists.
type Row struct {
	Number  int
	Y       measure.Length // of its nearer edge
	Width   measure.Length // of the panels as laid
	Ripped  bool           // narrower than a full sheet
	Panels  int
	Comment string
}

// Panel is one piece of sheet as laid.
type Panel struct {
	Name          string // "P2.3" is row 2, third from x = 0
	Row, Number   int
	X, Y          measure.Length // its corner nearest the origin
	Length, Width measure.Length // along x and y
	Sheet         int            // which sheet it is cut from, from 1
	FromOffcut    bool           // cut from what another piece left
	CutLength     bool           // shorter than a full sheet
	Ripped        bool           // narrower than a full sheet
}

// Board is one run of boards across the joists.
type Board struct {
	Number int
	Y      measure.Length // of its nearer edge
	Width  measure.Length
	Ripped bool
	Pieces []Piece // along x, joints on joists
}

// Advice is something worth changing before anything is ordered.
type Advice struct {
	Path   string // of the job key it is about
	Saying string // ready to print
	// Standing is "by others" or "not counted" of what the checks do not settle, and
	// empty of advice about cost and convenience.
	Standing string
}
