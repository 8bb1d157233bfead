package blocks

import (
	"cmp"
	"fmt"
	"html/template"
	"path"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/content"
)

// Tables of what is not as it was in the last issue.

// workedTo are the figures of the whole platform that people work to or order
// by, a star for any part of a key between dots.
var workedTo = []string{
	"job.progress", "checks.summary", "platform.floor_load", "frame.length", "frame.width", "frame.diagonal", "frame.piers", "frame.lines", "piers.diagonal",
	"build_up", "floor.height", "post_tops.above_bench_mark", "line.*.post_number", "diagonals.do", "diagonals.accept", "diagonals.stop",
	"joist.count", "joist.section", "joist.spacing", "joist.length", "joist.sit", "beam.section", "beam.length", "beam.plies", "rim.section", "rim.length", "rim.count", "post.section",
	"surface.kind", "surface.thickness", "surface.rows", "surface.sheets", "surface.last_row", "board.count", "panel.count", "panel.first_line",
	"stone.kind", "stone.order", "order.weight", "cut.*.sticks", "hole.side", "built.range", "built.hump", "built.verdict",
}

// workedToAtPier are the same for each pier, with the words of the table.
var workedToAtPier = []struct{ key, words string }{
	{"x", "x"}, {"y", "y"}, {"dig", "dig"}, {"stone", "stone"}, {"seat", "seat"}, {"post", "post"}, {"post_words", "post:"},
}

// piersListed is how many piers are listed one by one; with more of them the
// tables of piers are the quicker read.
const piersListed = 30

// changeTable lists what reads otherwise than in the last issue: first the
// numbers of the whole, then those of the piers. Figures that nobody works to
// are counted.
func changeTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("What"), number("Was"), number("Is")}}
	if p.Since == nil {
		return t
	}
	whole := content.Group{Name: "The whole"}
	for _, change := range p.Since.Changes {
		if worked(change.Key) {
			whole.Rows = append(whole.Rows, []content.Cell{head(meaning(change)), text(dash(change.Was)), text(dash(change.Is))})
		}
	}
	for _, g := range []content.Group{whole, pierChanges(p.Frame.Piers, p.Since.Changes)} {
		if len(g.Rows) > 0 {
			t.Groups = append(t.Groups, g)
		}
	}
	if len(t.Groups) == 0 {
		t.Rows = [][]content.Cell{{head("nothing that the work goes by"), text(dash("")), text(dash(""))}}
	}
	t.Note = fmt.Sprintf("Figures that read otherwise than in the last issue%s: %d. Those that the work goes by stand here.", revisionOf(p.Since), len(p.Since.Changes))
	return t
}

// worked says whether people work to a figure of the whole.
func worked(key string) bool {
	return slices.ContainsFunc(workedTo, func(pattern string) bool {
		match, _ := path.Match(pattern, key) // the patterns are in order
		return match
	})
}

func revisionOf(since *figure.Since) string {
	if since.Revision == "" {
		return ""
	}
	return ", revision " + since.Revision
}

func meaning(c figure.Change) string {
	if size, ok := strings.CutPrefix(c.Key, "cut."); ok && c.Means == "" { // nothing of this size is cut any more
		return "sticks of " + strings.TrimSuffix(size, ".sticks") + " to buy"
	}
	if c.Means == "" {
		return c.Key
	}
	return c.Means
}

// dash stands for what was or is not there.
func dash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// pierChanges gathers the changes at each pier in one row.
func pierChanges(piers []frame.Pier, changes []figure.Change) content.Group {
	type pair struct{ was, is []string }
	var names []string
	at := map[string]*pair{}
	for _, change := range changes {
		rest, ok := strings.CutPrefix(change.Key, "pier.")
		name, what, found := strings.Cut(rest, ".")
		i := slices.IndexFunc(workedToAtPier, func(w struct{ key, words string }) bool { return w.key == what })
		if !ok || !found || i < 0 {
			continue
		}
		if at[name] == nil {
			at[name], names = &pair{}, append(names, name)
		}
		label := workedToAtPier[i].words + " "
		at[name].was = append(at[name].was, label+dash(change.Was))
		at[name].is = append(at[name].is, label+dash(change.Is))
	}
	names = inOrder(piers, names)
	g := content.Group{Name: "Piers"}
	for i, name := range names {
		if i == piersListed {
			g.Rows = append(g.Rows, []content.Cell{head(fmt.Sprintf("%d more piers", len(names)-i)), text(""), text("see the tables of piers and posts")})
			break
		}
		g.Rows = append(g.Rows, []content.Cell{head(name), text(strings.Join(at[name].was, "; ")), text(strings.Join(at[name].is, "; "))})
	}
	return g
}

// inOrder puts names of piers into the order of the piers; what is no pier any
// more comes last.
func inOrder(piers []frame.Pier, names []string) []string {
	place := func(name string) int {
		if i := slices.IndexFunc(piers, func(p frame.Pier) bool { return p.Name == name }); i >= 0 {
			return i
		}
		return len(piers)
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(place(a), place(b)) })
	return names
}

// throwAway is the table of sheets that are not as they were in the last issue.
const throwAway = "throw-away"

func throwAwayTable(p *calc.Plan, c content.Call) template.HTML {
	since := p.SinceLast(Issued(c.Sheets))
	if since == nil {
		return ""
	}
	t := content.Table{Head: []content.Column{words("Throw away"), words("Sheet"), words("Put in"), words("Done")}, Size: content.Working,
		Note: "Sheets that are not named here print the same as before and stay."}
	for _, change := range since.Sheets {
		t.Rows = append(t.Rows, []content.Cell{head(sheetNumber(change.Was)), text(change.Title), text(sheetNumber(change.Is)), tick()})
	}
	if since.Unrecorded {
		t.Rows = [][]content.Cell{{head("all sheets"), text("the last issue kept no record of its sheets"), text("all sheets"), tick()}}
		t.Note = ""
	}
	return t.For(c)
}

func sheetNumber(n int) string {
	if n == 0 {
		return "–"
	}
	return "sheet\u00a0" + strconv.Itoa(n)
}

// Issued says of each sheet what the next issue needs to know of it.
func Issued(sheets []content.Sheet) []figure.Sheet {
	list := make([]figure.Sheet, len(sheets))
	for i, s := range sheets {
		list[i] = figure.Sheet{Name: s.Name, Number: s.Number, Title: s.Title, Mark: s.Mark()}
	}
	return list
}
