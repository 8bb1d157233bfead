package frame

import (
	"cmp"
	"fmt"
	"strings"

	"pierbook/calc/measure"
)

// openings enters what the openings in the floor cut, and where.
func (l *ledger) openings() {
	f := l.frame
	cutting, blocks, bare := 0, 0, 0
	var cuts, each []string
	var area measure.Area
	for _, o := range f.Openings {
		if o.NeedsHeaders() {
			cutting++
			cuts = append(cuts, o.Name)
		}
		blocks, bare = blocks+len(o.Blocks), bare+len(o.Bare)
		area += o.Length.Times(o.Width)
		each = append(each, "opening."+o.Name+".cuts")
	}
	l.computed("openings.count", "openings in the floor", measure.Count(len(f.Openings)), "those that the job names under platform.openings", "")
	l.computed("openings.area", "area of the openings in the floor", area, "Σ length × width", "", "openings.count")
	l.computed("openings.cutting", "openings that cut a joist, a rim or a beam", measure.Count(cutting), "those whose place meets the top of a member", "", each...)
	l.computed("openings.headers", "openings that need headers and trimmers", measure.Word(orNone(cuts)), "those that cut a joist, a rim or a beam", "", "openings.cutting")
	l.computed("openings.blocks", "blocks that carry edges of openings", measure.Count(blocks), "one under each edge that nothing within a joist's thickness carries, of openings between two joists", "", "openings.count", "joist.section")
	l.source("common practice, no source: panel edges at an opening are carried")
	l.computed("openings.bare", "edges of openings that no block fits under", measure.Count(bare), "edges whose block would stand in another opening or block", "", "openings.blocks")
	for _, o := range f.Openings {
		l.opening(o)
	}
}

func orNone(names []string) string { return cmp.Or(strings.Join(names, ", "), "none") }

func (l *ledger) opening(o Opening) {
	key, path := "opening."+o.Name, "platform.openings."+o.Name
	place := []string{path + ".x", path + ".y", path + ".length", path + ".width", "joist.section"}
	l.computed(key+".cuts", "what the opening "+o.Name+" cuts of the frame", measure.Word(orNone(o.Through)), "joists, rims and beams flush with them whose tops meet the opening", "", place...)
	l.computed(key+".close", "joists that the opening "+o.Name+" comes closer to than their thickness", measure.Word(orNone(o.Close)), "joists left whole whose face is less than a thickness away", "", place...)
	l.computed(key+".over", "beam lines that run below the opening "+o.Name, measure.Word(orNone(o.Over)), "beams under the joists that meet the opening in plan", "", append(place[:4:4], "beam.section")...)
	l.computed(key+".blocks", "blocks that carry the edges of the opening "+o.Name, measure.Count(len(o.Blocks)), "one under each edge that nothing within a joist's thickness carries; none where headers are needed", "", key+".cuts")
	for _, c := range o.CutOuts {
		l.cutOut(o, c)
	}
}

// cutOut enters one cut-out, from the corner of its piece.
func (l *ledger) cutOut(o Opening, c CutOut) {
	key, path := "opening."+o.Name+"."+c.Piece, "platform.openings."+o.Name
	in := fmt.Sprintf("cut-out for %s in %s", o.Name, c.Piece)
	x, y := l.frame.pieceCorner(c.Piece)
	l.computed(key+".from_end", in+", from the piece's hook end", c.X, "opening's end − piece's end, 0 where the opening begins before the piece",
		fmt.Sprintf("%s − %s", l.say(x+c.X), l.say(x)), path+".x")
	l.computed(key+".from_side", in+", from the piece's edge nearest side A", c.Y, "opening's side − piece's edge, 0 where the opening begins before the piece",
		fmt.Sprintf("%s − %s", l.say(y+c.Y), l.say(y)), path+".y", "surface.gap")
	l.computed(key+".length", in+", size along the beams", c.Length, "the opening's length, as far as it lies in the piece", "", path+".x", path+".length")
	l.computed(key+".width", in+", size across the beams", c.Width, "the opening's width, as far as it lies in the piece", "", path+".y", path+".width")
	l.computed(key+".kind", in+": what kind of cut it is", measure.Word(c.Kind), "a notch reaches an edge of the piece, a hole none; in two: nothing is left beside it", "", key+".from_end", key+".from_side", key+".length", key+".width")
}

// pieceCorner returns the corner of a piece of the surface nearest the origin.
func (f *Frame) pieceCorner(name string) (x, y measure.Length) {
	for _, p := range f.Surface.Panels {
		if p.Name == name {
			return p.X, p.Y
		}
	}
	for _, b := range f.Surface.Boards {
		for _, p := range b.Pieces {
			if p.Name == name {
				return p.From, b.Y
			}
		}
	}
	return 0, 0
}
