package main

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/timber"
	"pierbook/calc/trade"
)

// changeable are the cells of each table that say how much; the others say what.
var changeable = map[string][]string{
	"numbers":   {"imperial", "metric"},
	"uses":      {"load", "metric"},
	"soils":     {"bearing", "metric", "friction", "cohesion", "swell", "packed"},
	"species":   {"gravity", "density", "metric", "Fb", "Ft", "Fv", "Fcp", "Fc", "E", "Emin"},
	"nails":     {"length", "diameter"},
	"joints":    {"each", "edge", "edge metric", "field", "field metric"},
	"panels":    {"rating", "or"},
	"spans":     {"load"},
	"steps":     {"people"},
	"buildings": {"least", "most"},
	"boards":    {"spacing"},
}

// A row that nobody takes notice of is no fact of the trade but a remark: every
// row is changed in turn, and some sheet, figure or fault must come out
// otherwise. The sheet of assumptions prints every number and does not count.
func TestEveryRowOfTheTradeIsRead(t *testing.T) {
	before := map[string]string{}
	for _, table := range trade.Tables() {
		columns, known := changeable[table]
		if !assert.True(t, known, table) {
			continue
		}
		text := trade.TableText(table)
		for _, row := range rowsOf(text) {
			if knownUnread(row.line) {
				continue
			}
			jobs := jobsFor(t, table, row)
			for _, name := range jobs {
				if _, seen := before[name]; !seen {
					before[name] = cameOut(t, name, table == "numbers")
				}
			}
			changed := row.with(columns)
			require.NotEqual(t, row.line, changed, "%s: %s", table, row.line)
			back, err := trade.Try(table, strings.Replace(text, "\n"+row.line, "\n"+changed, 1))
			if assert.NoError(t, err, changed) {
				assert.True(t, slices.ContainsFunc(jobs, func(name string) bool { return cameOut(t, name, table == "numbers") != before[name] }), "tables/%s.txt: nobody reads %s", table, row.line)
				back()
			}
		}
	}
}

// knownUnread are rows that no job of these tests takes: of straps and braces the
// checks choose the count themselves, and no job here has a floor on two joists,
// which the tests of package timber hold.
func knownUnread(line string) bool {
	return strings.HasPrefix(line, "strap | ") || strings.HasPrefix(line, "brace | ") || strings.HasPrefix(line, "deck on two joists | ")
}

// tableRow is one line of a table with its cells by heading; under is the line
// that an indented one belongs to.
type tableRow struct {
	line, under string
	heads       []string
}

func rowsOf(text string) []tableRow {
	var rows []tableRow
	heads, under := map[bool][]string{}, ""
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) == "" || line[0] == '#' {
			continue
		}
		indented := line[0] == ' '
		if heads[indented] == nil {
			heads[indented] = strings.Split(strings.TrimSpace(line), " | ")
			continue
		}
		if !indented {
			under = line
		}
		rows = append(rows, tableRow{line, under, heads[indented]})
	}
	return rows
}

func (r tableRow) cell(heading string) string {
	return strings.Split(strings.TrimSpace(r.line), " | ")[slices.Index(r.heads, heading)]
}

var leadingNumber = regexp.MustCompile(`^(\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)`)

// with returns the line with its cells that say how much half as large again;
// a small whole number grows by one.
func (r tableRow) with(columns []string) string {
	cells := strings.Split(strings.TrimSpace(r.line), " | ")
	for i, heading := range r.heads {
		number := leadingNumber.FindString(cells[i])
		if !slices.Contains(columns, heading) || number == "" {
			continue
		}
		rest := strings.TrimPrefix(cells[i], number)
		if whole, err := strconv.Atoi(number); err == nil && rest == "" {
			if cells[i] = strconv.Itoa(whole + 1); whole > 100 {
				cells[i] = strconv.Itoa(whole * 3 / 2)
			}
			continue
		}
		var sum float64
		for part := range strings.FieldsSeq(number) {
			above, below, fraction := strings.Cut(part, "/")
			value, _ := strconv.ParseFloat(above, 64)
			if fraction {
				under, _ := strconv.ParseFloat(below, 64)
				value /= under
			}
			sum += value
		}
		cells[i] = strconv.FormatFloat(sum*1.5, 'f', 4, 64) + rest
	}
	indent := r.line[:len(r.line)-len(strings.TrimLeft(r.line, " "))]
	return indent + strings.Join(cells, " | ") + "\n"
}

// jobsFor returns jobs in which a row could be read, as texts or as names of the
// jobs at hand.
func jobsFor(t *testing.T, table string, row tableRow) []string {
	switch table {
	case "uses":
		return []string{tradeJob("use: " + row.cell("use"))}
	case "buildings":
		return []string{tradeJob("use: shed"), tradeJob("use: greenhouse")}
	case "soils":
		return []string{tradeJob("class: "+row.cell("class"), "bearing: 1500 psf")}
	case "species":
		id, grade, size := strings.SplitN(row.under, " | ", 2)[0], "No.2", "2x8"
		if row.line != row.under {
			grade = row.cell("grade")
			if width := row.cell("width"); width != "-" {
				size = "2x" + width
			}
		}
		if row.line != row.under && row.cell("class") == "timbers" {
			return []string{tradeJob("species: "+id, "grade: "+grade, "beams: 6x6")}
		}
		return []string{tradeJob("species: "+id, "grade: "+grade, "joists: "+size)}
	case "panels":
		return []string{tradeJob("thickness: " + row.cell("thickness"))}
	case "spans":
		spacing, _, _ := strings.Cut(row.cell("spacing"), " ")
		return []string{tradeJob("thickness: 1 1/4 in", "rating: "+row.cell("rating"), "spacing: "+spacing+" in")}
	case "boards":
		thickness := row.cell("thickness")
		if row.cell("of") == "deck" {
			return []string{tradeJob("kind: boards", "thickness: "+thickness, "use: deck", "building: no")}
		}
		return []string{tradeJob("kind: boards", "thickness: "+thickness)}
	case "nails":
		return nailJobs(row.cell("key"))
	case "joints":
		return nailJobs(row.cell("nail"))
	}
	return []string{"", "orchard-shed.yaml", "birch-slope-workshop.yaml", tradeJob("width: 12 ft 6 1/2 in"), tradeJob("width: 14 ft 5 in"), deepJob(""), cutJob(t, 1.0/12), cutJob(t, 0.157)}
}

// nailJobs are jobs of which one takes the nail.
func nailJobs(string) []string {
	return []string{"", "orchard-shed.yaml", tradeJob("thickness: 1 1/8 in"), tradeJob("thickness: 7/8 in"), tradeJob("kind: boards", "thickness: 1 1/2 in"),
		tradeJob("joists: 3x8"), tradeJob("joists: 4x8", "inset: 3 1/2 in"), tradeJob("beams: 2x8, plies: 2", "posts: 4x4"), tradeJob("beams: 2 1/8\" x 7 1/4\", plies: 2"),
		tradeJob("sit: between_beams", "edge: square")}
}

// tradeJob writes a job with some of its words changed.
func tradeJob(words ...string) string {
	w := map[string]string{"use": "shed", "class": "clay", "bearing": "", "species": "hem_fir", "grade": "No.2", "joists": "2x8", "beams": "4x8", "posts": "4x4", "thickness": "3/4 in", "rating": "", "spacing": "16 in", "kind": "panels", "building": "yes", "width": "12 ft", "inset": "0", "sit": "on_beams", "edge": "tongue_and_groove", "more": ""}
	for _, word := range words {
		key, value, _ := strings.Cut(word, ": ")
		w[key] = value
	}
	var b strings.Builder
	line := func(format string, parts ...any) { fmt.Fprintf(&b, format+"\n", parts...) }
	edge := ""
	if w["kind"] == "panels" {
		edge = ", edge: " + w["edge"]
	}
	line("name: Trade\nplatform: {length: 16 ft, width: %s, use: %s, surface: {kind: %s, thickness: %s%s%s}}", w["width"], w["use"], w["kind"], w["thickness"], ifGiven(", span_rating: ", w["rating"]), edge)
	if w["building"] == "yes" {
		line("building: {wall_height: 7 ft, roof: {shape: gable}}")
	}
	line("timber: {species: %s, grade: %s}\nsite: {soil: {class: %s%s}, wind: {speed: 115 mph, exposure: C}}", w["species"], w["grade"], w["class"], ifGiven(", bearing: ", w["bearing"]))
	line("frame: {joists: {size: %s, spacing: %s, sit: %s}, beams: {size: %s, inset: %s}, posts: {size: %s}}\n%s", w["joists"], w["spacing"], w["sit"], w["beams"], w["inset"], w["posts"], w["more"])
	return b.String()
}

// deepJob has holes deeper than a person's knee.
func deepJob(measured string) string {
	return tradeJob("more: ground: {sights: [[bench_mark: 4 ft, A1: 5 ft, A3: 5 ft, A5: 5 ft, B1: 5 ft, B5: 5 ft, C1: 5 ft, C3: 5 ft, C5: 5 ft, bench_mark: 4 ft]]}\ndig: {least: 26 in, deepest: 4 ft}\nstone: {most: 30 in}" + measured)
}

// cutJob has one post cut a little too long: by a twelfth of an inch, which is more
// than a post may be off to serve, or by 0.157 in, which is more than is planed off.
func cutJob(t *testing.T, long float64) string {
	t.Helper()
	const seats = "\nmeasured: {seats: {bench_mark: 4 ft, A1: 5 ft, close: 4 ft}"
	kept := func(measured string) string { // what is measured holds for a floor that stays
		return strings.Replace(deepJob(measured), "use: shed", "use: shed, floor: {height: 8 in}", 1)
	}
	plan, faults := work(fstest.MapFS{"a.yaml": {Data: []byte(kept(seats + "}"))}}, "a.yaml")
	require.NoError(t, faults.Err())
	require.Equal(t, "A1", plan.Heights.Posts[0].Name)
	return kept(fmt.Sprintf("%s, posts_cut: {A1: %.4f in}}", seats, plan.Heights.Posts[0].ToCut.Inches()+long))
}

func ifGiven(key, value string) string {
	if value == "" {
		return ""
	}
	return key + value
}

// cameOut tells all that came out of a job but the numbers of the trade
// themselves: figures, faults, and for the jobs at hand what each sheet prints.
func cameOut(t *testing.T, name string, sheets bool) string {
	t.Helper()
	if strings.HasPrefix(name, "name:") {
		files := fstest.MapFS{"a.yaml": {Data: []byte(name)}}
		plan, faults := work(files, "a.yaml")
		var b strings.Builder
		for _, f := range faults.Sorted() {
			fmt.Fprintln(&b, f)
		}
		if plan == nil {
			return b.String()
		}
		for _, f := range plan.Figures.All() {
			if !strings.HasPrefix(f.Key, "trade.") {
				fmt.Fprintln(&b, f.Key, f.Text(plan.Style))
			}
		}
		if !sheets {
			return b.String()
		}
		made, faults, err := bind(plan, files, newLibrary())
		require.NoError(t, err)
		require.NoError(t, faults.Err())
		return b.String() + printed(t, made)
	}
	return printed(t, boundFiles(t, name))
}

// printed tells what the sheets and lists of a binder print.
func printed(t *testing.T, made map[string][]byte) string {
	t.Helper()
	var saved struct {
		Sheets []struct{ Name, Mark string }
	}
	require.NoError(t, json.Unmarshal(made[figuresFile], &saved))
	require.NotEmpty(t, saved.Sheets)
	var b strings.Builder
	for _, sheet := range saved.Sheets {
		if sheet.Name != "assumptions" {
			fmt.Fprintln(&b, sheet.Name, sheet.Mark)
		}
	}
	return b.String() + string(made[orderFile]) + string(made[cutsFile])
}

// A species added to its table, and to nothing else, is chosen in a job, worked
// and printed.
func TestASpeciesIsOneRowOfOneFile(t *testing.T) {
	const added = "grey_alder | Grey Alder | 0.40 | no | 27.0 pcf | 433 kg/m3 | invented for this test\n  No.2 | dimension | - | 800 | 450 | 150 | 400 | 1200 | 1200000 | 440000 | invented for this test | no\n"
	back, err := trade.Try("species", trade.TableText("species")+added)
	require.NoError(t, err)
	defer back()
	assert.Contains(t, trade.SpeciesNames(), "grey_alder")
	found, known := trade.FindSpecies("Grey Alder")
	require.True(t, known)
	values, known := found.Values("No.2", "dimension", 8)
	require.True(t, known)
	assert.InDelta(t, 800, float64(values.Bending/measure.PoundPerSquareIn), 1e-9)
	j, faults := job.Read(fstest.MapFS{"a.yaml": {Data: []byte(tradeJob())}}, "a.yaml")
	require.NoError(t, faults.Err())
	j.Timber.Species = "grey_alder" // the words of the table of keys were gathered before
	plan, faults := calc.Work(j)
	require.NoError(t, faults.Err())
	ref, err := timber.LookUp(j.Timber, plan.Frame.Sections.Joist)
	require.NoError(t, err)
	assert.Equal(t, values.Bending, ref.Bending)
}

// The words of the table of keys are the rows of the trade.
func TestTheWordsOfAJobAreRowsOfTheTrade(t *testing.T) {
	soils, uses := trade.Soils(), trade.Uses()
	for _, key := range job.Keys() {
		switch {
		case strings.HasSuffix(key.Path, ".species"):
			assert.Equal(t, trade.SpeciesNames(), key.Choices, key.Path)
		case strings.HasSuffix(key.Path, ".grade"):
			assert.Equal(t, trade.GradeNames(), key.Choices, key.Path)
		case key.Path == "site.soil.class":
			require.Len(t, key.Choices, len(soils))
			assert.Equal(t, soils[0].Class, key.Choices[0])
		case key.Path == "platform.use":
			require.Len(t, key.Choices, len(uses))
			assert.Equal(t, uses[0].Name, key.Choices[0])
		}
	}
}
