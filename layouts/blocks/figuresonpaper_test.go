package blocks

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
)

// ofItsOwn are tables that are made in Go and print what is no figure: numbers of
// sheets and of issues, what figures are and where they come from, errors at each
// pier from one stand. The parts of a step are of its own as well.
var ofItsOwn = []string{"throw-away", "changes", "stand-errors", "instrument", "assumptions"}

// TestEveryNumberInATableIsAFigure reads the tables back from the sheets of the
// sample and of two more jobs: what stands in a cell with a number is the text of
// a figure or of two, and in the row of a pier never that of another pier.
func TestEveryNumberInATableIsAFigure(t *testing.T) {
	plans := map[string]*calc.Plan{"sample": sample(t), "second issue": second(t)}
	for _, name := range []string{"birch-slope-workshop", "orchard-shed"} {
		j, faults := job.Read(os.DirFS("../../testdata/jobs"), name+".yaml")
		require.NoError(t, faults.Err())
		p, faults := calc.Work(j)
		require.NoError(t, faults.Err())
		plans[name] = p
	}
	for name, p := range plans {
		texts := textsOf(p)
		cells := 0
		for _, s := range sheetsOf(t, p) {
			for _, leaf := range s.Leaves {
				for _, m := range markedUp.FindAllStringSubmatch(string(leaf.HTML), -1) {
					if _, parts := partsOfStep()[m[1]]; parts || slices.Contains(ofItsOwn, m[1]) {
						continue
					}
					table, _ := tableIn(t, m[0], m[1])
					cells += texts.check(t, name+", table "+m[1], table)
				}
			}
		}
		assert.Greater(t, cells, 300, name)
	}
}

// figureTexts are the texts of figures, those of piers apart.
type figureTexts struct {
	ofJob  map[string]bool
	ofPier map[string]map[string]bool
}

func textsOf(p *calc.Plan) figureTexts {
	texts := figureTexts{ofJob: map[string]bool{}, ofPier: map[string]map[string]bool{}}
	for _, pier := range p.Frame.Piers {
		texts.ofPier[pier.Name] = map[string]bool{}
	}
	for _, f := range p.Figures.All() {
		text := plainText(f.Text(p.Style))
		if rest, ok := strings.CutPrefix(f.Key, "pier."); ok {
			pier, _, _ := strings.Cut(rest, ".")
			texts.ofPier[pier][text] = true
		} else {
			texts.ofJob[text] = true
		}
	}
	for _, set := range p.Figures.Sets() {
		for _, thing := range set.Things {
			texts.ofJob[plainText(thing.Name)] = true
		}
	}
	return texts
}

func plainText(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "\u00a0", " ")), " ")
}

var holdsNumber = regexp.MustCompile(`\d`)

// check returns how many cells with a number there were.
func (f figureTexts) check(t *testing.T, where string, table content.Table) int {
	cells := 0
	rows := slices.Clone(table.Rows)
	for _, g := range table.Groups {
		rows = append(rows, g.Rows...)
	}
	for _, row := range rows {
		own, isPier := f.ofPier[row[0].Text]
		known := func(text string) bool {
			if f.ofJob[text] || own[text] {
				return true
			}
			if isPier {
				return false
			}
			for _, pier := range f.ofPier { // a row of several piers, or of what stands at one
				if pier[text] {
					return true
				}
			}
			return false
		}
		for i, cell := range row {
			text := plainText(cell.Text)
			if cell.Kind == content.Blank || i == 0 || !holdsNumber.MatchString(text) {
				continue
			}
			cells++
			assert.Truef(t, known(text) || inTwo(text, known), "%s: %q under %q in the row of %s is no figure's", where, text, table.Head[i].Text, row[0].Text)
		}
	}
	return cells
}

// inTwo says whether a text is those of two figures, one after the other.
func inTwo(text string, known func(string) bool) bool {
	for i := range text {
		if i > 0 && known(strings.TrimSpace(text[:i])) && known(strings.TrimSpace(text[i:])) {
			return true
		}
	}
	return false
}
