package job_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func TestEveryKeyIsExplained(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range job.Keys() {
		require.False(t, seen[k.Path], "%s stands twice in the table", k.Path)
		seen[k.Path] = true
		assert.NotEmpty(t, k.Means, k.Path)
		assert.Equal(t, strings.Count(k.Path, "*"), len(k.Stars), k.Path)
		if k.Required {
			assert.NotEmpty(t, k.Missing, k.Path)
		}
		if k.Default.Imperial != "" || k.Default.Metric != "" {
			assert.NotEmpty(t, k.Default.Source, k.Path)
		}
		if k.When != nil {
			assert.NotEmpty(t, k.Whose, k.Path)
		}
		if k.From != nil {
			assert.NotEmpty(t, k.FromSays, k.Path)
		}
	}
}

// The assumptions sheet is only as good as the sources of the defaults.
func TestEveryAssumptionHasItsSource(t *testing.T) {
	for _, units := range []string{"imperial", "metric"} {
		for _, use := range job.UseNames() {
			text := strings.Replace(dozen, "hen_house", use, 1) + "units: " + units + "\nbuilding: {enclosure: open}\n"
			for _, e := range read(t, "job.yaml", text).Entries() {
				if e.Origin == figure.Assumed {
					assert.NotEmpty(t, e.Source, e.Path)
				} else {
					assert.True(t, e.At.Known(), e.Path)
				}
				assert.NotEmpty(t, e.Text, e.Path)
				assert.NotEmpty(t, e.Means, e.Path)
			}
		}
	}
}

// A default is written as it would stand in a job: a job that writes every
// default out is the same job.
func TestDefaultsWrittenOutGiveTheSameJob(t *testing.T) {
	for _, units := range []string{"imperial", "metric"} {
		first := read(t, "job.yaml", dozen+"units: "+units+"\n")
		second := read(t, "job.yaml", writtenOut(first))
		assert.Equal(t, first.Platform, second.Platform)
		assert.Equal(t, first.Site, second.Site)
		assert.Equal(t, first.Timber, second.Timber)
		assert.Equal(t, first.Frame, second.Frame)
		assert.Equal(t, first.Block, second.Block)
		assert.Equal(t, first.Stone, second.Stone)
		assert.Equal(t, first.Dig, second.Dig)
		assert.Equal(t, first.Ground, second.Ground)
		assert.Equal(t, first.Yard, second.Yard)
		assert.Equal(t, first.Style(), second.Style())
	}
}

// writtenOut returns a job file with every entry of j.
func writtenOut(j *job.Job) string {
	type table map[string]any
	root := table{}
	for _, e := range j.Entries() {
		at, names := root, strings.Split(e.Path, ".")
		for _, name := range names[:len(names)-1] {
			if at[name] == nil {
				at[name] = table{}
			}
			at = at[name].(table)
		}
		at[names[len(names)-1]] = e.Text
	}
	var write func(t table) string
	write = func(t table) string {
		var parts []string
		for name, v := range t {
			if inner, ok := v.(table); ok {
				parts = append(parts, name+": "+write(inner))
			} else if text := v.(string); strings.HasPrefix(text, "[") {
				parts = append(parts, name+": "+text)
			} else {
				parts = append(parts, name+": '"+strings.ReplaceAll(text, "'", "''")+"'")
			}
		}
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return write(root) + "\n"
}

func TestEntriesComeInTheOrderOfTheTable(t *testing.T) {
	j := read(t, "job.yaml", "crew: {people: 2}\n"+strings.Replace(dozen, "crew: {people: 1}\n", "", 1))
	var order []string
	for _, k := range job.Keys() {
		order = append(order, k.Path)
	}
	last := -1
	for _, e := range j.Entries() {
		at := slices.Index(order, e.Path)
		if strings.HasPrefix(e.Path, "yard.stock.") {
			at = slices.Index(order, "yard.stock.*")
		}
		require.GreaterOrEqual(t, at, last, e.Path)
		last = at
	}
}

func TestMetricJob(t *testing.T) {
	j := read(t, "job.yaml", `name: Werkstatt
units: metric
platform: {length: 4.8 m, width: 3600 mm, floor_load: 2.5 kPa, surface: {kind: boards}}
timber: {values: {bending: 9.2 MPa, shear: 1.1 MPa, bearing_across: 1.9 MPa, compression: 8.1 MPa, elastic: 11 GPa, elastic_min: 4.1 GPa, source: C24 with the factors of a national rule}}
site: {soil: {bearing: 100 kPa}}
frame:
  beams: {width: 45 mm, depth: 195 mm, plies: 2}
  posts: {timber: {species: hem_fir, grade: No.1}}
ground:
  unit: mm
  spots: {E1: {x: 1000, y: -500}}
  sights:
    - bench_mark: 1276
      A1: 1402
      E1: 1.5 m
    - [unit: cm, bench_mark: 120, A2: 131.5]
measured:
  seats: {unit: cm, bench_mark: 127.6, A1: 140}
`)
	assert.Equal(t, measure.Metric, j.Units)
	assert.Equal(t, measure.Stress(2500), j.Platform.FloorLoad)
	assert.Equal(t, 28*measure.Millimetre, j.Platform.Surface.Thickness)
	assert.Equal(t, 120*measure.Millimetre, j.Platform.Surface.BoardWidth)
	assert.Equal(t, job.Section{Size: "45x145 mm", Width: 45 * measure.Millimetre, Depth: 145 * measure.Millimetre, Plies: 1}, j.Frame.Joists.Section)
	assert.Equal(t, "45x195 mm", j.Frame.Beams.Size)
	assert.Equal(t, 90*measure.Millimetre, j.Frame.Beams.Across())
	assert.Equal(t, "45x145 mm", j.Frame.Rims.Size, "as the joists")
	assert.InDelta(t, 9.2e6, float64(j.Timber.Values.Bending), 1)
	assert.InDelta(t, 560, float64(j.Timber.Density), 1e-9)
	assert.Equal(t, "No.1", j.Frame.Posts.Timber.Grade)
	assert.True(t, j.Frame.Posts.Timber.Incised)
	assert.Nil(t, j.Frame.Beams.Timber)
	assert.Equal(t, job.Spot{X: measure.Metre, Y: -500 * measure.Millimetre}, j.Ground.Spots["E1"])
	require.Len(t, j.Ground.SetUps, 2)
	assert.Equal(t, 1315*measure.Millimetre, j.Ground.SetUps[1][1].Reading)
	assert.Equal(t, 1402*measure.Millimetre, j.Ground.SetUps[0][1].Reading)
	assert.Equal(t, 1500*measure.Millimetre, j.Ground.SetUps[0][2].Reading, "a unit that is written wins")
	assert.Equal(t, 1276*measure.Millimetre, j.Measured.Seats["bench_mark"])
	assert.Len(t, j.Yard.Stock["45x195 mm"], 7)
	assert.Len(t, j.Yard.Stock["boards"], 7)
	assert.Equal(t, measure.MillimetreRod, j.Style().Rod)
}

func TestAnswersOfTheAuthorities(t *testing.T) {
	j := read(t, "job.yaml", dozen+"asked: {frost: 12 in here, utilities: {number: 4711, date: 2027-04-02, by: one-call centre}}\n")
	assert.Equal(t, map[string]job.Answer{"frost": {Answer: "12 in here"}, "utilities": {Number: "4711", Date: "2027-04-02", By: "one-call centre"}}, j.Asked)
}

func TestReadingsInTenthsOfAFoot(t *testing.T) {
	j := read(t, "job.yaml", dozen+"ground: {unit: ft, instrument: {reads: tenths}, sights: [[bench_mark: 4.19, A1: 4.75 ft, A4: 57\"]]}\n")
	assert.Equal(t, measure.Length(1_277_112_000), j.Ground.SetUps[0][0].Reading)
	assert.Equal(t, measure.Length(1_447_800_000), j.Ground.SetUps[0][1].Reading)
	assert.Equal(t, "4.19\u00a0ft", measure.Reading(j.Ground.SetUps[0][0].Reading).Print(j.Style()))
}

func TestPickLeavesTheChoiceToTheProgram(t *testing.T) {
	j := read(t, "job.yaml", dozen+"frame: {joists: {size: pick, spacing: pick}, beams: {size: pick, plies: 2, lines: pick}, piers: {per_line: pick}}\n")
	assert.True(t, j.Frame.Joists.Pick && j.Frame.Beams.Pick && j.Frame.Rims.Pick, "rims go with the joists")
	assert.Zero(t, j.Frame.Joists.Spacing)
	assert.Zero(t, j.Frame.Beams.Lines)
	assert.Zero(t, j.Frame.Piers.PerLine)
	assert.Equal(t, 2, j.Frame.Beams.Plies)
	assert.Len(t, j.StockOf("2x8"), 5)
}

// Sizes: American Softwood Lumber Standard PS 20, dry dressed sizes.
func TestDressedSizes(t *testing.T) {
	for text, want := range map[string]job.Section{
		"2x6":             {Size: "2x6", Width: 24 * measure.Sixteenth, Depth: 88 * measure.Sixteenth},
		"4×6":             {Size: "4x6", Width: 56 * measure.Sixteenth, Depth: 88 * measure.Sixteenth},
		"2X10":            {Size: "2x10", Width: 24 * measure.Sixteenth, Depth: 148 * measure.Sixteenth},
		"6x6":             {Size: "6x6", Width: 88 * measure.Sixteenth, Depth: 88 * measure.Sixteenth},
		"5/4x6":           {Size: "5/4x6", Width: measure.Inch, Depth: 88 * measure.Sixteenth},
		"45 × 145":        {Size: "45x145 mm", Width: 45 * measure.Millimetre, Depth: 145 * measure.Millimetre},
		"45x145 mm":       {Size: "45x145 mm", Width: 45 * measure.Millimetre, Depth: 145 * measure.Millimetre},
		`1 1/2" x 5 1/2"`: {Size: "2x6", Width: 24 * measure.Sixteenth, Depth: 88 * measure.Sixteenth},
		`1 3/4" x 9 1/2"`: {Size: `1 3/4"x9 1/2"`, Width: 28 * measure.Sixteenth, Depth: 152 * measure.Sixteenth},
		"45 mm x 0.145 m": {Size: "45x145 mm", Width: 45 * measure.Millimetre, Depth: 145 * measure.Millimetre},
	} {
		got, ok := job.ParseSize(text)
		require.True(t, ok, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "x", "2x7", "6x4", "45x9", "045x145", "45x1450", "0x0 mm", "-45x145 mm", "2x6x8", "45 mm"} {
		_, ok := job.ParseSize(text)
		assert.False(t, ok, text)
	}
}

func TestNameOfASizeIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Custom(func(t *rapid.T) measure.Length {
			if rapid.Bool().Draw(t, "metric") {
				return measure.Length(rapid.IntRange(1, 400).Draw(t, "mm")) * measure.Millimetre
			}
			return measure.Length(rapid.IntRange(1, 300).Draw(t, "sixteenths")) * measure.Sixteenth
		})
		width, depth := side.Draw(t, "width"), side.Draw(t, "depth")
		got, ok := job.ParseSize(job.SizeName(width, depth))
		require.True(t, ok, job.SizeName(width, depth))
		require.Equal(t, job.Section{Size: job.SizeName(width, depth), Width: width, Depth: depth}, got)
	})
}

func TestFolderNames(t *testing.T) {
	for name, want := range map[string]string{
		"Orchard potting shed": "orchard-potting-shed", "  Shed No. 2  ": "shed-no-2", "Müllers Gärtchen": "muellers-gaertchen",
		"../../etc/passwd": "etc-passwd", `C:\windows`: "c-windows", "Ellwood's": "ellwoods", "con": "con-", "COM1": "com1-", "index": "index-",
		"a\u202eb": "a-b-", "温室": "", "!!!": "", "": "811c9dc5", strings.Repeat("long ", 100): "long-long-",
	} {
		got := (&job.Job{Name: name}).Slug()
		assert.True(t, strings.HasPrefix(got, want), "%q gives %q", name, got)
	}
	assert.NotEqual(t, (&job.Job{Name: "温室"}).Slug(), (&job.Job{Name: "小屋"}).Slug())
}

func TestFolderNamesAreSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		got := (&job.Job{Name: name}).Slug()
		require.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)*$`, got)
		require.LessOrEqual(t, len(got), 60)
		require.NotRegexp(t, `^(con|prn|aux|nul|index|com[0-9]|lpt[0-9])$`, got)
	})
}

func TestHostileNamesAreText(t *testing.T) {
	for _, name := range []string{"../../x", "<script>", "*bold* | {when x}", strings.Repeat("x", 120)} {
		j := read(t, "job.yaml", strings.Replace(dozen, "Hen house", "\""+name+"\"", 1))
		assert.Equal(t, name, j.Name)
	}
}

// Every text has room for so many letters, so that none fills a binder.
func TestEveryTextHasALimit(t *testing.T) {
	for _, key := range job.Keys() {
		if name := key.Kind.Name; name == job.Text.Name || name == job.File.Name {
			assert.Positive(t, key.Letters, key.Path)
			assert.LessOrEqual(t, key.Letters, 200, key.Path)
		}
	}
	_, faults := job.Read(files("job.yaml", strings.Replace(dozen, "Hen house", strings.Repeat("ø", 121), 1)), "job.yaml")
	assert.Contains(t, printed(faults), "job.yaml:1:7: name: 121 letters are more than have room\n")
	assert.Contains(t, printed(faults), "  write at most 120\n")
	assert.Equal(t, strings.Repeat("ø", 120), read(t, "job.yaml", strings.Replace(dozen, "Hen house", strings.Repeat("ø", 120), 1)).Name)
}

// What cannot be seen is refused where it stands, as a sign or by its number, in
// a value of any kind and in a name.
func TestSignsThatCannotBeSeenAreFaults(t *testing.T) {
	for _, row := range []struct{ line, want string }{
		{"client: \"a\\u202eb\"", "job.yaml:13:9: client: the sign U+202E, which turns the direction of writing, stands here"},
		{"client: \"a\\x07\"", "job.yaml:13:9: client: the control character U+0007 stands here"},
		{"client: \"a\\0b\"", "job.yaml:13:9: client: the control character U+0000 stands here"},
		{"client: a\u2067b", "job.yaml:13:10: the sign U+2067, which turns the direction of writing, stands here"},
		{"# a\u202eb", "job.yaml:13:4: the sign U+202E, which turns the direction of writing, stands here"},
		{"\"cl\\u202eient\": x", "job.yaml:13:1: the sign U+202E, which turns the direction of writing, stands here"},
		{"asked: {utilities: {number: \"\\e]0;x\\a\"}}", "job.yaml:13:29: asked.utilities.number: the control character U+001B stands here"},
		{"dig: {least: \"4\\u2069 in\"}", "job.yaml:13:14: dig.least: the sign U+2069, which turns the direction of writing, stands here"},
	} {
		assert.Contains(t, faultsOf(t, "job.yaml", dozen+row.line+"\n"), row.want+"\n", row.line)
	}
}

// A text that runs from right to left is set apart wherever it goes, and leads to
// the folder that its name alone would lead to.
func TestLeftwardTextIsSetApart(t *testing.T) {
	const name = "\u05d1\u05d9\u05ea 12"
	j := read(t, "job.yaml", strings.Replace(dozen, "Hen house", name, 1))
	assert.Equal(t, "\u2068"+name+"\u2069", j.Name)
	assert.Equal(t, (&job.Job{Name: name}).Slug(), j.Slug())
	entry, _ := j.Entry("name")
	assert.Equal(t, "\u2068"+name+"\u2069", entry.Text)
}
