package spreadsheet

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
)

// Texts as only an attacker writes them: the openers of formulas that the OWASP
// page on CSV injection names, with DDE calls, and ways round an apostrophe.
var hostile = []string{
	`=1+1`, `+1`, `-1`, `@SUM(A1:A9)`, `=cmd|' /C calc'!A0`, `|calc`, `%0A=1+1`,
	`'=1+1`, `''=1+1`, `"=1+1"`, ` =1+1`, "\t=1+1", "\r\n=1+1", "\u00a0=1+1", "\u200b=1+1", "\ufeff=1+1", "\x00=1+1",
	`＝1+1`, `＋1`, `－1`, `＠x`, `﹦1`, `−1+2`, "safe\n=1+1", "safe\r=1+1", "“=1+1", `;=1+1`, `,=1+1`,
}

// opens says whether a cell would start a formula in a program that trims
// blanks and signs that cannot be seen, or takes one apostrophe off.
var opens = regexp.MustCompile(`^[\s\x00-\x1f\x{feff}\x{200b}\x{a0}]*[=+\-@|%＝＋－＠｜％﹦﹢﹣﹫−]`)

func TestNoTextStartsAFormula(t *testing.T) {
	for _, text := range hostile {
		cell := words(text)
		assert.False(t, opens.MatchString(cell), "%q became %q", text, cell)
		assert.NotContains(t, cell, "\n")
		assert.NotContains(t, cell, "\r")
		assert.NotContains(t, cell, "\t")
		if rest, quoted := strings.CutPrefix(cell, "'"); quoted && !strings.HasPrefix(text, "'") {
			assert.NotEmpty(t, rest)
		}
	}
	for _, text := range []string{"2x8", "pier B3", `5 7/16″`, "dense graded stone", "", "A-1"} {
		assert.Equal(t, text, words(text), "harmless text stays as it is")
	}
}

// A program that drops a leading apostrophe still must not come to a formula
// that the text itself had behind one.
func TestAnApostropheInTheTextIsNoDoorIn(t *testing.T) {
	cell := words(`'=1+1`)
	assert.Equal(t, `''=1+1`, cell)
	assert.False(t, opens.MatchString(cell[1:]))
}

func TestEveryTextIsHarmless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("=+-@|%'\" \t\r\n\u00a0\u200b＝−ab1,;"))).Draw(t, "text")
		cell := words(text)
		if opens.MatchString(cell) || strings.ContainsAny(cell, "\r\n\t") || !utf8.ValidString(cell) {
			t.Fatalf("%q became %q", text, cell)
		}
	})
}

// sample works the built-in sample.
func sample(t *testing.T) *calc.Plan {
	t.Helper()
	j, faults := job.Read(content.Sample, content.SampleJob)
	require.True(t, faults.Empty(), "%v", faults)
	plan, faults := calc.Work(j)
	require.True(t, faults.Empty(), "%v", faults)
	return plan
}

var plain = regexp.MustCompile(`^-?\d+(\.\d+)?$`)

// RFC 4180: records end with CR LF, fields with commas, quotes or line ends are
// quoted; here every record has as many fields as the head.
func TestFilesAreAsRFC4180Says(t *testing.T) {
	plan := sample(t)
	for name, write := range map[string]func(*calc.Plan) ([]byte, error){"piers": Piers, "cuts": Cuts, "order": Order} {
		file, err := write(plan)
		require.NoError(t, err)
		assert.Equal(t, bytes.Count(file, []byte("\n")), bytes.Count(file, []byte("\r\n")), name)
		assert.True(t, bytes.HasSuffix(file, []byte("\r\n")), name)
		text, marked := bytes.CutPrefix(file, []byte{0xEF, 0xBB, 0xBF})
		assert.True(t, marked, "the mark of UTF-8 comes first, once")
		assert.NotContains(t, string(text), mark)
		reader := csv.NewReader(bytes.NewReader(text))
		rows, err := reader.ReadAll()
		require.NoError(t, err, name)
		require.Greater(t, len(rows), 3, name)
		for _, row := range rows[1:] {
			for i, cell := range row {
				head := rows[0][i]
				if number := strings.HasSuffix(head, " mm") || strings.HasSuffix(head, " kg") || strings.HasSuffix(head, " N") || head == "count" || head == "cost" || head == "price"; number && cell != "" {
					assert.Regexp(t, plain, cell, "%s: %s is a plain number", name, head)
				}
				assert.False(t, opens.MatchString(cell) && !plain.MatchString(cell), "%s: %q", name, cell)
			}
		}
	}
}

func TestHostileTextsOfAPlan(t *testing.T) {
	plan := sample(t)
	for _, text := range hostile {
		plan.Order.Lines[0].What, plan.Order.Lines[0].Note = text, text
		plan.Cuts[0].Section.Size, plan.Heights.Piers[0].Name = text, text
		for name, write := range map[string]func(*calc.Plan) ([]byte, error){"piers": Piers, "cuts": Cuts, "order": Order} {
			file, err := write(plan)
			require.NoError(t, err)
			rows, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
			require.NoError(t, err)
			for _, row := range rows {
				for _, cell := range row {
					assert.False(t, opens.MatchString(cell) && !plain.MatchString(cell), "%s: %q", name, cell)
				}
			}
		}
	}
}

func BenchmarkOrder(b *testing.B) {
	j, _ := job.Read(content.Sample, content.SampleJob)
	plan, _ := calc.Work(j)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Order(plan); err != nil {
			b.Fatal(err)
		}
	}
}
