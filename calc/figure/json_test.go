package figure_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// file is figures.json as a reader outside the project would take it in.
type file struct {
	Schema   int
	Job      struct{ Name, Revision string }
	Progress string
	Sheets   []figure.Sheet
	Since    *figure.Since
	Figures  map[string]struct {
		Value            any
		Unit, Text, From string
	}
}

// readBack writes the figures and reads them with the library, numbers left as
// they are written.
func readBack(t require.TestingT, issue figure.Issue, figures ...figure.Figure) (file, string) {
	var r figure.Registry
	r.Add(figures...)
	var b bytes.Buffer
	require.NoError(t, figure.WriteJSON(&b, issue, &r, measure.Style{System: measure.Metric}))
	written := b.String()
	var read file
	d := json.NewDecoder(&b)
	d.UseNumber()
	require.NoError(t, d.Decode(&read), written)
	return read, written
}

func TestFileHoldsValueUnitTextAndOrigin(t *testing.T) {
	read, written := readBack(t, figure.Issue{Job: figure.Heading{Name: "Hut", Revision: "B"}, Progress: "surveyed"},
		figure.Figure{Key: "b.word", Value: measure.Word("C1"), Origin: figure.Computed},
		figure.Figure{Key: "a.length", Value: 3*measure.Inch + measure.Inch/64, Origin: figure.Given},
		figure.Figure{Key: "d.none", Origin: figure.Measured},
		figure.Figure{Key: "c.count", Value: measure.Count(12), Origin: figure.Assumed},
		figure.Figure{Key: "e.below", Value: -measure.Millimetre / 4, Origin: figure.Shop},
	)
	assert.Equal(t, 1, read.Schema)
	assert.Equal(t, "Hut", read.Job.Name)
	assert.Equal(t, "B", read.Job.Revision)
	assert.Equal(t, "surveyed", read.Progress)
	assert.Nil(t, read.Since)

	assert.Equal(t, json.Number("76.596875"), read.Figures["a.length"].Value, "3 1/64 in is 76.596875 mm exactly")
	assert.Equal(t, "mm", read.Figures["a.length"].Unit)
	assert.Equal(t, "given", read.Figures["a.length"].From)
	assert.Equal(t, json.Number("-0.25"), read.Figures["e.below"].Value)
	assert.Equal(t, "C1", read.Figures["b.word"].Value)
	assert.Equal(t, "C1", read.Figures["b.word"].Text)
	assert.Equal(t, json.Number("12"), read.Figures["c.count"].Value)
	assert.Nil(t, read.Figures["d.none"].Value, "not read yet")
	assert.Empty(t, read.Figures["d.none"].Text)

	rising := []int{}
	for _, key := range []string{"a.length", "b.word", "c.count", "d.none", "e.below"} {
		rising = append(rising, bytes.Index([]byte(written), []byte(strconv.Quote(key))))
	}
	assert.IsIncreasing(t, rising, "keys rise whatever the order they were worked out in")
}

// No digit of a length is lost on the way through the file, and no text of a job
// breaks it or ends a script element that holds it.
func TestEveryLengthAndTextComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := measure.Length(rapid.Int64Range(-1e15, 1e15).Draw(t, "nanometres"))
		name := rapid.String().Draw(t, "name")
		read, written := readBack(t, figure.Issue{Job: figure.Heading{Name: name + "</script>"}},
			figure.Figure{Key: "length", Value: length}, figure.Figure{Key: "word", Value: measure.Word(name)})
		text := string(read.Figures["length"].Value.(json.Number))
		whole, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		assert.Equal(t, int64(length), int64(math.Round(whole*1e6)), text)
		assert.Equal(t, name+"</script>", read.Job.Name)
		assert.Equal(t, name, read.Figures["word"].Value)
		assert.NotContains(t, written, "</script")
	})
}

func TestValuesThatAreNotFiniteAreRefused(t *testing.T) {
	for _, value := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		var r figure.Registry
		r.Add(figure.Figure{Key: "check.beam.ratio", Value: measure.Ratio(value)})
		err := figure.WriteJSON(&bytes.Buffer{}, figure.Issue{}, &r, measure.Style{})
		require.ErrorContains(t, err, "check.beam.ratio")
	}
}

func TestSheetsAndChangesComeBack(t *testing.T) {
	issue := figure.Issue{
		Sheets: []figure.Sheet{{Name: "dig", Number: 9, Title: "Dig", Mark: "4f"}, {Name: "posts", Number: 12, Title: "Posts"}},
		Since: &figure.Since{Revision: "A", Progress: "planned", Unrecorded: true,
			Changes: []figure.Change{{Key: "floor.height", Means: "top of the floor", Was: "540 mm", Is: "545 mm"}},
			Sheets:  []figure.SheetChange{{Title: "Dig", Was: 8, Is: 9}}},
	}
	read, _ := readBack(t, issue)
	assert.Equal(t, issue.Sheets, read.Sheets)
	assert.Equal(t, issue.Since, read.Since)
	assert.Empty(t, read.Figures)
}
