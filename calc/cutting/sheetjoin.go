package cutting

import (
	"math/bits"

	"pierbook/calc/measure"
)

// block is a rectangle that a set of parts can be cut from: one part, or two
// blocks laid end to end or side by side. Its cuts all run from edge to edge.
type block struct {
	length, width int64
	part          int // when it is a single part
	turned        bool
	first, second *block
	across        bool // the second lies beside the first, not beyond it
}

// exactSheets returns the fewest sheets. For every set of parts it keeps the
// blocks that no other beats in both length and width, joining the blocks of
// every two sets that make it up; then it covers all parts by the fewest sets
// that go on a sheet.
//
// Any plan of cuts from edge to edge is a tree of such joins, since each cut
// divides the parts of a rectangle in two sets.
func exactSheets(parts []rectangle, length, width int64) []Sheet {
	sets := make([][]*block, 1<<len(parts))
	for i, r := range parts {
		set := &sets[1<<i]
		offer(set, &block{length: r.length, width: r.width, part: i}, length, width)
		if r.Turns {
			offer(set, &block{length: r.width, width: r.length, part: i, turned: true}, length, width)
		}
	}
	for set := 1; set < len(sets); set++ {
		if bits.OnesCount(uint(set)) < 2 {
			continue
		}
		low := set & -set
		for one := (set - 1) & set; one > 0; one = (one - 1) & set {
			if one&low != 0 {
				join(&sets[set], sets[one], sets[set&^one], length, width)
			}
		}
	}
	return cover(sets, parts)
}

// join offers every block of the one set end to end and side by side with
// every block of the other.
func join(set *[]*block, ones, others []*block, length, width int64) {
	for _, a := range ones {
		for _, b := range others {
			offer(set, &block{length: a.length + b.length, width: max(a.width, b.width), first: a, second: b}, length, width)
			offer(set, &block{length: max(a.length, b.length), width: a.width + b.width, first: a, second: b, across: true}, length, width)
		}
	}
}

// offer keeps a block that goes on a sheet, unless another is no larger.
func offer(set *[]*block, b *block, length, width int64) {
	if b.length > length || b.width > width {
		return
	}
	kept := (*set)[:0]
	for i, c := range *set {
		if c.length <= b.length && c.width <= b.width {
			*set = append(kept, (*set)[i:]...)
			return
		}
		if c.length < b.length || c.width < b.width {
			kept = append(kept, c)
		}
	}
	*set = append(kept, b)
}

// cover covers all parts by the fewest sets that go on a sheet.
func cover(sets [][]*block, parts []rectangle) []Sheet {
	fewest := make([]int, len(sets))
	taken := make([]int, len(sets))
	for set := 1; set < len(sets); set++ {
		fewest[set] = len(parts) + 1
		low := set & -set
		for one := set; one > 0; one = (one - 1) & set {
			if one&low != 0 && len(sets[one]) > 0 && fewest[set&^one]+1 < fewest[set] {
				fewest[set], taken[set] = fewest[set&^one]+1, one
			}
		}
	}
	var sheets []Sheet
	for set := len(sets) - 1; set > 0; set &^= taken[set] {
		var sheet Sheet
		sets[taken[set]][0].lay(&sheet, parts, 0, 0)
		sheets = append(sheets, sheet)
	}
	return sheets
}

// lay places the parts of the block with its near corner at x, y.
func (b *block) lay(sheet *Sheet, parts []rectangle, x, y int64) {
	if b.first == nil {
		sheet.Placed = append(sheet.Placed, parts[b.part].at(x, y, b.turned))
		return
	}
	b.first.lay(sheet, parts, x, y)
	if b.across {
		b.second.lay(sheet, parts, x, y+b.first.width)
	} else {
		b.second.lay(sheet, parts, x+b.first.length, y)
	}
}

// at places a part.
func (r rectangle) at(x, y int64, turned bool) Placed {
	p := Placed{Name: r.Name, X: measure.Length(x), Y: measure.Length(y), Length: r.Length, Width: r.Width, Turned: turned}
	if turned {
		p.Length, p.Width = r.Width, r.Length
	}
	return p
}
