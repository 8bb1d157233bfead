package frame

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sets returns the pieces of the frame and of the surface, in the order in which
// tables list them, with the figures of each.
func (f *Frame) Sets(style measure.Style) []figure.Set {
	return []figure.Set{f.beamSet(), f.joistSet(), f.rimSet(), f.blockingSet(style), f.panelSet(), f.boardSet(style), f.cutOutSet(style), f.openingSet()}
}

// along are the figures of a piece that lies along the frame.
var along = []figure.Field{
	{Key: "length", Means: "length of %", Formula: "far end − near end", From: []string{".from", ".to"}},
	{Key: "from", Means: "near end of %, from the hook end of the frame", Formula: "where the piece before it ends"},
	{Key: "to", Means: "far end of %, from the hook end of the frame", Formula: "over the pier or joist of its joint, or the end of the frame"},
}

func (f *Frame) beamSet() figure.Set {
	set := figure.Set{Name: "beam-pieces", Key: "piece", Fields: append([]figure.Field{
		{Key: "line", Means: "beam line of %", Formula: "letters from A, without I and O"},
		{Key: "joint", Means: "ply of %, and the pier under its joint", Formula: "the pier nearest to its far end", From: []string{".to"}},
	}, along...)}
	for _, line := range f.Lines {
		for k, ply := range line.Plies {
			for i, piece := range ply.Pieces {
				joint := ""
				if i < len(ply.Pieces)-1 {
					joint = "over " + f.pierAt(line.Name, piece.To)
				}
				if len(line.Plies) > 1 && i == 0 {
					joint = fmt.Sprintf("ply %d; %s", k+1, joint)
				}
				set.Row(piece.Name, piece.Name, measure.Word(line.Name), measure.Word(joint), piece.Long(), piece.From, piece.To)
			}
		}
	}
	return set
}

func (f *Frame) pierAt(line string, x measure.Length) string {
	best, distance := "", f.Length
	for _, pier := range f.Piers {
		if f.Lines[pier.Line].Name == line && (pier.X-x).Abs() < distance {
			best, distance = pier.Name, (pier.X - x).Abs()
		}
	}
	return best
}

// joistSet is the joists of the first bay: those of the others stand in line.
func (f *Frame) joistSet() figure.Set {
	set := figure.Set{Name: "joists", Key: "joist", Known: []string{"mark"}, Fields: []figure.Field{
		{Key: "stands", Means: "side of its mark on which joist % stands", Formula: "marks are of the face nearer to the tape's hook", From: []string{".mark"}},
		{Key: "length", Means: "length of joist %", Formula: "as all joists", From: []string{"joist.length"}},
	}}
	for _, j := range f.Joists {
		if j.Bay == 1 {
			set.Row(strconv.Itoa(j.Number), fmt.Sprintf("J%d", j.Number), measure.Word(j.MarkSide+" its mark"), j.Long())
		}
	}
	return set
}

func (f *Frame) rimSet() figure.Set {
	set := figure.Set{Name: "rim-pieces", Key: "piece", Fields: along}
	for _, r := range f.Rims {
		for _, piece := range r.Pieces {
			set.Row(piece.Name, piece.Name, piece.Long(), piece.From, piece.To)
		}
	}
	return set
}

// blockingSet is the blocks in runs of one length on one line.
func (f *Frame) blockingSet(style measure.Style) figure.Set {
	set := figure.Set{Name: "blocking", Key: "blocks", Fields: []figure.Field{
		{Key: "count", Means: "pieces of blocking %", Formula: "blocks of one length on one line"},
		{Key: "length", Means: "length of blocking %", Formula: "from face to face of what it stands between"},
		{Key: "centre", Means: "centre of blocking %", Formula: "across from side A; along from the hook end where it runs along the joists", From: []string{"blocking.count"}},
	}}
	for i := 0; i < len(f.Blocking); {
		first, last := f.Blocking[i], i
		for last+1 < len(f.Blocking) && !f.Blocking[last+1].Turned && f.Blocking[last+1].Y == first.Y && f.Blocking[last+1].Long() == first.Long() {
			last++
		}
		name := first.Name
		if last > i {
			name += " to " + f.Blocking[last].Name
		}
		var centre measure.Quantity = first.Y
		if first.Turned {
			centre = measure.Word("x " + first.Y.Print(style))
		}
		set.Row(first.Name, name, measure.Count(last-i+1), first.Long(), centre)
		i = last + 1
	}
	return set
}

func (f *Frame) panelSet() figure.Set {
	set := figure.Set{Name: "panels", Key: "panel", Fields: []figure.Field{
		{Key: "row", Means: "row of panel %", Formula: "counted from side A"},
		{Key: "x", Means: "panel % from the hook end", Formula: "where the panel before it and its gap end", From: []string{"surface.gap"}},
		{Key: "y", Means: "panel % from side A", Formula: "near edge of its row", From: []string{"surface.gap"}},
		{Key: "length", Means: "length of panel %", Formula: "to the middle of a joist, or to the end", From: []string{"panel.face_length"}},
		{Key: "width", Means: "width of panel %", Formula: "width of its row", From: []string{"panel.face_width"}},
		{Key: "cut", Means: "what is cut off panel %", Formula: "against a whole sheet", From: []string{".length", ".width"}},
		{Key: "sheet", Means: "sheet that panel % is cut from", Formula: "longest first, each from the offcut that it fills best", From: []string{"surface.sheets"}},
	}}
	rows := map[int]string{}
	for _, row := range f.Surface.Rows {
		rows[row.Number] = strconv.Itoa(row.Number)
		if row.Comment != "" {
			rows[row.Number] += ": " + row.Comment
		}
	}
	for _, p := range f.Surface.Panels {
		set.Row(p.Name, p.Name, measure.Word(rows[p.Row]), p.X, p.Y, p.Length, p.Width, measure.Word(p.cut()), measure.Count(p.Sheet))
	}
	return set
}

func (p Panel) cut() string {
	words := "whole sheet"
	switch {
	case p.CutLength && p.Ripped:
		words = "cut and ripped"
	case p.CutLength:
		words = "cut to length"
	case p.Ripped:
		words = "ripped"
	}
	if p.FromOffcut {
		words += ", from an offcut"
	}
	return words
}

func (f *Frame) boardSet(style measure.Style) figure.Set {
	set := figure.Set{Name: "boards", Key: "board", Fields: []figure.Field{
		{Key: "y", Means: "near edge of board % from side A", Formula: "where the board before it and its gap end", From: []string{"board.width", "surface.gap"}},
		{Key: "width", Means: "width of board %", Formula: "a whole board, or what is left at the edges", From: []string{"board.width"}},
		{Key: "ripped", Means: "board % is ripped", Formula: "narrower than a whole board", From: []string{".width"}},
		{Key: "joints", Means: "joints of board %, from the hook end", Formula: "over joists, staggered", From: []string{"board.pieces"}},
	}}
	for _, b := range f.Surface.Boards {
		var joints []string
		for _, piece := range b.Pieces[:max(0, len(b.Pieces)-1)] {
			joints = append(joints, piece.To.Print(style))
		}
		set.Row(strconv.Itoa(b.Number), strconv.Itoa(b.Number), b.Y, b.Width, figure.Yes(b.Ripped), measure.Word(strings.Join(joints, ", ")))
	}
	return set
}

// cutOutSet is what each opening cuts out of the pieces of the floor.
func (f *Frame) cutOutSet(style measure.Style) figure.Set {
	set := figure.Set{Name: "cut-outs", Key: "opening", Known: []string{"from_end", "from_side", "length", "width", "kind"}, Fields: []figure.Field{
		{Key: "opening", Means: "opening that % is cut for, its size and place", Formula: "as the job has it"},
	}}
	for _, o := range f.Openings {
		place := fmt.Sprintf("%s: %s × %s, begins at %s along and %s across", o.Name, o.Length.Print(style), o.Width.Print(style), o.X.Print(style), o.Y.Print(style))
		for _, cut := range o.CutOuts {
			set.Row(o.Name+"."+cut.Piece, cut.Piece, measure.Word(place))
		}
	}
	return set
}

// openingSet says where each opening lies in the frame, and what carries its
// edges.
func (f *Frame) openingSet() figure.Set {
	set := figure.Set{Name: "openings", Key: "opening", Fields: []figure.Field{
		{Key: "lies", Means: "where the opening % lies in the frame", Formula: "the joists beside it, or what it cuts", From: []string{".cuts"}},
		{Key: "carried", Means: "what carries the edges of the opening %", Formula: "blocks, else the joists; headers where it cuts the frame", From: []string{".cuts", ".blocks"}},
		{Key: "look_out", Means: "what to look out for at the opening %", Formula: "joists close by, beams below, edges without a block", From: []string{".close", ".over"}},
	}}
	for _, o := range f.Openings {
		lies := fmt.Sprintf("between J%d and J%d", o.Bay, o.Bay+1)
		carried := cmp.Or(strings.Join(o.Blocks, ", "), "the joists, and what lies across them")
		if o.NeedsHeaders() {
			lies, carried = "cuts "+strings.Join(o.Through, ", "), "headers, trimmers: by others"
		}
		set.Row(o.Name, o.Name, measure.Word(lies), measure.Word(carried), measure.Word(o.lookOut()))
	}
	return set
}

func (o Opening) lookOut() string {
	var list []string
	if len(o.Close) > 0 {
		list = append(list, "less than a joist's thickness from "+strings.Join(o.Close, ", "))
	}
	if len(o.Over) > 0 {
		list = append(list, "the beam of line "+strings.Join(o.Over, ", ")+" runs below; never cut it")
	}
	if len(o.Bare) > 0 {
		list = append(list, "no room for a block towards "+strings.Join(o.Bare, ", ")+": carry that edge some other way")
	}
	return strings.Join(list, "; ")
}
