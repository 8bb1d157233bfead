package blocks

import (
	"os"
	"regexp"
	"slices"
	"strconv"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
)

const short = `name: Bean store
platform: {length: 10', width: 8', use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
`

const steep = short + `ground:
  sights:
    - [bench_mark: 4', A1: 2', A4: 2', C4: 9', C1: 8' 6", bench_mark: 4']
`

// dugTooDeep clashes only once a hole is dug: what was planned is known, and no
// floor is.
const dugTooDeep = short + `ground:
  sights:
    - [bench_mark: 4', A1: 4' 2", A4: 4' 4", C4: 4' 9", C1: 4' 6", bench_mark: 4']
measured:
  holes: {A1: {depth: 19", found: firm}}
`

// everyKind works seven kinds of jobs: the sample, one without readings, one whose
// heights clash and one whose holes as dug do, and those of testdata: metric, a
// given floor, boards.
func everyKind(t *testing.T) map[string]*calc.Plan {
	t.Helper()
	plans := map[string]*calc.Plan{"sample": sample(t)}
	read := func(name string, j *job.Job, faults interface{ Err() error }) {
		require.NoError(t, faults.Err(), name)
		p, more := calc.Work(j)
		require.NoError(t, more.Err(), name)
		plans[name] = p
	}
	for name, text := range map[string]string{"short": short, "steep": steep, "dug too deep": dugTooDeep} {
		j, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(text)}}, "job.yaml")
		read(name, j, faults)
	}
	for _, name := range []string{"birch-slope-workshop", "mill-bank-deck", "orchard-shed"} {
		j, faults := job.Read(os.DirFS("../../testdata/jobs"), name+".yaml")
		read(name, j, faults)
	}
	return plans
}

// Whatever the job, each drawing can be drawn and nothing that has no number
// reaches a drawing or a table.
func TestEveryBlockOfEveryKindOfJob(t *testing.T) {
	for job, p := range everyKind(t) {
		trouble := &Trouble{}
		for kind, makers := range map[string]map[string]maker{"drawing": drawings(trouble), "table": tables} {
			for name, make := range makers {
				out := string(make(p, content.Call{Block: kind, Argument: name, Page: "page", Number: "1.1"}))
				for _, never := range []string{"NaN", "Inf", "%!", "<nil>"} {
					assert.NotContains(t, out, never, "%s: %s %s", job, kind, name)
				}
			}
		}
		assert.NoError(t, trouble.Err, job)
		for _, s := range sheetsOf(t, p) {
			for _, leaf := range s.Leaves {
				assert.Empty(t, noNumber.FindString(string(leaf.HTML)), "%s: sheet %s", job, s.Name)
			}
		}
	}
}

// noNumber is what is printed in the place of a number that is none.
var noNumber = regexp.MustCompile(`.{0,20}(\bNaN\b|\bInf\b|%!|<nil>).{0,20}`)

var (
	oneTable = regexp.MustCompile(`(?s)<table.*?</table>`)
	oneRow   = regexp.MustCompile(`(?s)<tr.*?</tr>`)
	oneCell  = regexp.MustCompile(`<t[hd]\b[^>]*>`)
	spans    = regexp.MustCompile(`colspan="(\d+)"`)
)

// width counts the columns that a row fills.
func width(row string) int {
	columns := 0
	for _, cell := range oneCell.FindAllString(row, -1) {
		span := 1
		if m := spans.FindStringSubmatch(cell); m != nil {
			span, _ = strconv.Atoi(m[1])
		}
		columns += span
	}
	return columns
}

// A row that is short of a cell puts its numbers under the wrong heads.
func TestEveryRowIsAsWideAsItsTable(t *testing.T) {
	for job, p := range everyKind(t) {
		seen := 0
		for name, make := range tables {
			out := string(make(p, content.Call{Block: "table", Argument: name, Page: "page", Number: "1.1"}))
			for _, table := range oneTable.FindAllString(out, -1) {
				rows := oneRow.FindAllString(table, -1)
				for _, row := range rows {
					seen++
					assert.Equal(t, width(rows[0]), width(row), "%s, table %s: %s", job, name, row)
				}
			}
		}
		assert.Greater(t, seen, 100, job)
	}
}

// A blank for a number says in which unit it wants to be written.
func TestBlanksForNumbersHaveTheirUnit(t *testing.T) {
	inWords := []string{"Again", "Firm, rock, water", "Held by", "Settled by", "Layers", "Price", "Cost"}
	for job, p := range everyKind(t) {
		blanks := 0
		for _, s := range sheetsOf(t, p) {
			for _, leaf := range s.Leaves {
				for _, m := range markedUp.FindAllStringSubmatch(string(leaf.HTML), -1) {
					table, _ := tableIn(t, m[0], m[1])
					lists := [][][]content.Cell{table.Rows}
					for _, g := range table.Groups {
						lists = append(lists, g.Rows)
					}
					for _, row := range slices.Concat(lists...) {
						for i, cell := range row {
							if column := table.Head[i]; cell.Kind == content.Blank && !slices.Contains(inWords, column.Text) {
								blanks++
								assert.NotEmpty(t, column.Unit, "%s, table %s: %s under %s", job, m[1], cell.Text, column.Text)
							}
						}
					}
				}
			}
		}
		assert.Positive(t, blanks, job)
	}
}
