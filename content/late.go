package content

import (
	"encoding/hex"
	"hash/fnv"
	"html/template"
	"slices"
)

// late says whether a page has a block that shows something of all the other
// sheets, so that it must be filled after them.
func (b Blocks) late(p *page) bool {
	return someCall(p.body, func(c call) bool { return slices.Contains(b[c.block].Last, c.argument) })
}

// someCall says whether one of the blocks that pieces bring in is wanted.
func someCall(pieces []piece, wanted func(call) bool) bool {
	for _, p := range pieces {
		found := false
		switch h := p.hole.(type) {
		case call:
			found = wanted(h)
		case when:
			found = someCall(h.body, wanted)
		case group:
			found = someCall(h.body, wanted)
		}
		if found {
			return true
		}
	}
	return false
}

// Mark returns a short mark of all that the sheet prints, to the last letter and
// line: two sheets with one mark are the same on paper, their numbers apart. It
// is empty for a sheet that is not filled yet.
func (s Sheet) Mark() string {
	if len(s.Leaves) == 0 {
		return ""
	}
	sum := fnv.New64a()
	write := func(text template.HTML) {
		sum.Write([]byte(text))
		sum.Write([]byte{0})
	}
	write(template.HTML(s.Title))
	for _, fact := range []template.HTML{s.People, s.Time, s.Tools, s.Overnight} {
		write(fact)
	}
	for _, leaf := range s.Leaves {
		write(leaf.HTML)
	}
	return hex.EncodeToString(sum.Sum(nil))
}
