package main

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/content"
)

// A source is what a stranger can look up: author, title, edition or year,
// table or page. Where there is none, the field says so in one of five wordings.
var (
	anonymous = regexp.MustCompile(`(?i)https?:|www\.|\b[a-z0-9-]+\.(com|org|net|edu|gov|io)\b|\burl\b|thread|forum|\barticle|\bpages? of\b|web|diary|slides|question|worksheet|` +
		`\bhow-to\b|trade (journal|press|magazine)|cost book|fastener sheet|data sheet|course notes|user manual|operating manual|recalled|repository|reprint|transcription|as reported|restat`)
	// clauses hold numbers that look like years: Table 1806.2, 29 CFR 1926.651.
	clause = regexp.MustCompile(`\d+ CFR [\d., and]+\d|\b\d{4}\.[\d.]+`)
	year   = regexp.MustCompile(`\b(1[89]|20)\d\d\b|\b7-(16|10|22)\b`)
	marked = regexp.MustCompile(`from memory|common practice, no source|derived|computed here|our own`)
	// papers are the short names by which documents are cited.
	papers = regexp.MustCompile(`\b(NDS|IRC|IBC|UBC|ASCE|AWC|APA|CFR|HUD|NIST|NIOSH|OSHA|NAVFAC|DCA|ASTM|ANSI|WAC|NZS|PS \d|FM \d|Handbook|Manual|Guide)\b`)
)

func dated(source string) bool { return year.MatchString(clause.ReplaceAllString(source, "")) }

// checkSource holds one source field to the rule; a field whose record carries
// a mark of its own, such as memory: true, needs no year.
func checkSource(t assert.TestingT, where, source string, mark bool) {
	if found := anonymous.FindString(source); found != "" {
		assert.Fail(t, "a source that nobody can look up", "%s: %q in %q", where, found, source)
	}
	assert.Truef(t, mark || dated(source) || marked.MatchString(source), "%s: neither a year nor a mark in %q", where, source)
}

func TestRuleForSources(t *testing.T) {
	for source, good := range map[string]bool{
		"NDS 2018, Table 4.3.8":            true,
		"IBC Table 1806.2":                 false, // 1806 is no year
		"29 CFR 1926.651(b)":               false, // nor is 1926
		"29 CFR 1926.651(b) (2023)":        true,
		"common practice, no source":       true,
		"AWC DCA 6, from memory":           true,
		"a thread on posts, from memory":   false,
		"how-to article (2019)":            false,
		"https://example.org, read 2020":   false,
		"a page of a gravel yard, 2019":    false,
		"derived: two readings, two sigma": true,
	} {
		var seen recording
		checkSource(&seen, "here", source, false)
		assert.Equal(t, good, !seen.failed, source)
	}
}

// recording notes that a check failed without failing the test.
type recording struct{ failed bool }

func (r *recording) Errorf(string, ...any) { r.failed = true }

func TestSourcesOfPublishedValues(t *testing.T) {
	const folder = "../../testdata/published"
	files, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		path := filepath.Join(folder, file.Name())
		if strings.HasSuffix(path, ".csv") {
			checkTable(t, path)
			continue
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		var root yaml.Node
		require.NoError(t, yaml.Unmarshal(text, &root))
		assert.Positive(t, checkNode(t, path, &root), path)
	}
}

// checkNode holds every source below a node to the rule, and wants no key for
// an address; a record's own memory mark counts. It returns the sources seen.
func checkNode(t *testing.T, path string, n *yaml.Node) int {
	seen := 0
	for i, child := range n.Content {
		seen += checkNode(t, path, child)
		if n.Kind != yaml.MappingNode || i%2 == 1 {
			continue
		}
		value := n.Content[i+1]
		assert.NotContains(t, []string{"url", "link", "address"}, child.Value, "%s:%d", path, child.Line)
		switch child.Value {
		case "source", "nails_source":
			checkSource(t, path+":"+value.Value, value.Value, memoryOf(n))
			seen++
		case "result_origin":
			assert.Contains(t, []string{"published", "computed"}, value.Value)
		default:
			assert.Empty(t, anonymous.FindString(strings.Join(remarks(child, value), " ")), "%s:%d", path, child.Line)
		}
	}
	return seen
}

func remarks(key, value *yaml.Node) []string {
	if key.Value == "check" || key.Value == "note" {
		return []string{value.Value}
	}
	return []string{key.HeadComment, key.LineComment, value.HeadComment}
}

func memoryOf(n *yaml.Node) bool {
	for i := 0; i < len(n.Content); i += 2 {
		if n.Content[i].Value == "memory" {
			return n.Content[i+1].Value == "true"
		}
	}
	return false
}

// checkTable holds every row of a table to the rule; source, table and edition
// together name the document.
func checkTable(t *testing.T, path string) {
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err, path)
	require.Greater(t, len(rows), 1, path)
	column := func(name string, row []string) string {
		if i := slices.Index(rows[0], name); i >= 0 {
			return row[i]
		}
		return ""
	}
	require.Contains(t, rows[0], "source", path)
	assert.NotContains(t, rows[0], "url", path)
	for _, row := range rows[1:] {
		where := strings.Join([]string{column("source", row), column("table", row), column("edition", row)}, ", ")
		checkSource(t, path, where, column("memory", row) == "true")
	}
}

func TestSourcesOfTables(t *testing.T) {
	tables := 0
	require.NoError(t, filepath.WalkDir("../../calc", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || d.IsDir() || strings.Contains(path, "testdata"):
		case strings.HasSuffix(path, ".csv"):
			checkTable(t, path)
			tables++
		case strings.Contains(path, "/trade/tables/"):
			checkTradeRows(t, path)
			tables++
		}
		return err
	}))
	assert.GreaterOrEqual(t, tables, 9)
}

// checkTradeRows holds every row to the rule; the headings of rows, and of
// indented rows, come first.
func checkTradeRows(t *testing.T, path string) {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	heads := map[bool][]string{}
	for line := range strings.Lines(string(text)) {
		indented := strings.HasPrefix(line, " ")
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		cells := strings.Split(line, " | ")
		if heads[indented] == nil {
			heads[indented] = cells
			continue
		}
		cell := func(heading string) string {
			if i := slices.Index(heads[indented], heading); i >= 0 {
				return cells[i]
			}
			return ""
		}
		checkSource(t, path+" "+cells[0], cell("source"), cell("memory") == "yes")
	}
}

// Every record says how its source was read; one that was not read is marked
// by that.
func TestSourcesOfRecords(t *testing.T) {
	for _, name := range []string{"cautions.txt", "questions.txt"} {
		text, err := os.ReadFile("../../content/" + name)
		require.NoError(t, err)
		sources := 0
		for record := range strings.SplitSeq(string(text), "\n\n") {
			fields := map[string]string{}
			for line := range strings.Lines(record) {
				if word, rest, found := strings.Cut(strings.TrimSpace(line), " "); found && line[0] != '#' && line[0] != ' ' {
					fields[word] = strings.TrimSpace(rest)
				}
			}
			if source, given := fields["source"]; given {
				checkSource(t, name+" "+fields["id"], source, fields["read"] == "memory" && strings.HasPrefix(source, "29 CFR"))
				sources++
			}
		}
		assert.Greater(t, sources, 30, name)
	}
}

// What is printed: every default of the table of keys, and every figure of the
// jobs at hand. What was assumed needs a year or a mark, and so does whatever
// names a document; the working of a figure is a source of its own.
func TestSourcesOfWhatIsPrinted(t *testing.T) {
	for _, key := range job.Keys() {
		for _, source := range []string{key.Default.Source, key.Default.MetricSource} {
			if source != "" {
				checkSource(t, key.Path, source, key.Default.Memory)
			}
		}
	}
	seen := map[string]bool{}
	for _, plan := range plansAtHand(t) {
		for _, f := range plan.Figures.All() {
			if f.Source != "" && !seen[f.Source] && (f.Origin == figure.Assumed || papers.MatchString(f.Source)) {
				checkSource(t, f.Key, f.Source, f.Memory)
			}
			assert.Empty(t, anonymous.FindString(f.Source), f.Key)
			seen[f.Source] = true
			if !seen[f.Working] && papers.MatchString(f.Working) {
				checkSource(t, f.Key, f.Working, f.Memory)
			}
			seen[f.Working] = true
		}
	}
	assert.Greater(t, len(seen), 100)
}

// plansAtHand works the sample, the shared jobs, and the sample's frame in every
// use and with every class of soil.
func plansAtHand(t *testing.T) []*calc.Plan {
	t.Helper()
	var plans []*calc.Plan
	add := func(files fs.FS, name string) {
		plan, faults := work(files, name)
		require.NoError(t, faults.Err(), name)
		plans = append(plans, plan)
	}
	add(content.Sample, content.SampleJob)
	for _, folder := range []string{jobsFolder, explained} {
		names, err := fs.Glob(os.DirFS(folder), "*.yaml")
		require.NoError(t, err)
		for _, name := range names {
			add(os.DirFS(folder), name)
		}
	}
	return plans
}
