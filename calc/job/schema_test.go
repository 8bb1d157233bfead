package job_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
)

// misfits checks a value against the few words of JSON Schema that the schema
// uses, in the plainest way, and names the places that do not fit.
func misfits(schema map[string]any, value any, at string) []string {
	var bad []string
	if either, ok := schema["anyOf"].([]any); ok {
		for _, one := range either {
			if len(misfits(one.(map[string]any), value, at)) == 0 {
				return nil
			}
		}
		return []string{at}
	}
	if choices, ok := schema["enum"].([]any); ok && !slices.Contains(choices, value) {
		bad = append(bad, at)
	}
	for _, bound := range []struct {
		name string
		sign float64
	}{{"minimum", -1}, {"maximum", 1}} {
		limit, bounded := schema[bound.name].(float64)
		if number, ok := value.(float64); ok && bounded && (number-limit)*bound.sign > 0 {
			bad = append(bad, at)
		}
	}
	if types := fmt.Sprint(schema["type"]); schema["type"] != nil && !strings.Contains(types, typeOf(value)) && !(typeOf(value) == "integer" && strings.Contains(types, "number")) {
		bad = append(bad, at)
	}
	if pattern, ok := schema["pattern"].(string); ok && typeOf(value) == "string" && !regexp.MustCompile(pattern).MatchString(fmt.Sprint(value)) {
		bad = append(bad, at)
	}
	table, _ := value.(map[string]any)
	properties, _ := schema["properties"].(map[string]any)
	patterns, _ := schema["patternProperties"].(map[string]any)
	for key, inner := range table {
		next, known := properties[key].(map[string]any)
		for pattern, one := range patterns {
			if !known && regexp.MustCompile(pattern).MatchString(key) {
				next, known = one.(map[string]any), true
			}
		}
		switch {
		case known:
			bad = append(bad, misfits(next, inner, at+"."+key)...)
		case schema["additionalProperties"] == false:
			bad = append(bad, at+"."+key)
		}
	}
	return bad
}

func typeOf(value any) string {
	switch v := value.(type) {
	case map[string]any:
		return "object"
	case []any:
		return "array"
	case float64:
		if v == math.Trunc(v) {
			return "integer"
		}
		return "number"
	case bool:
		return "boolean"
	}
	return "string"
}

// checkAgainstSchema takes a job written as JSON, which is a job file too.
func checkAgainstSchema(t *testing.T, text string) []string {
	t.Helper()
	var schema, value map[string]any
	require.NoError(t, json.Unmarshal(job.Schema(), &schema))
	require.NoError(t, json.Unmarshal([]byte(text), &value), text)
	return misfits(schema, value, "")
}

const dozenJSON = `{"name": "Hen house", "platform": {"length": "10'", "width": "8'", "use": "hen_house"}, "timber": {"species": "hem_fir", "grade": "No.2"}, "site": {"soil": {"class": "silty_sand"}}`

func TestSchemaFitsTheJobsThatCanBeRead(t *testing.T) {
	for _, more := range []string{
		"",
		`, "shop": {"client": "us"}, "building": "none", "units": "none", "frame": {"beams": {"lines": "pick"}, "piers": {"per_line": 3}}`,
		`, "asked": {"frost": "no", "permit": {"by": "office", "date": "2027-04-02"}}, "issued": "2027-05-01", "client_page": {"money": true}`,
		`, "ground": {"unit": "mm", "spots": {"TP1": "turning_point", "E1": {"x": 5, "y": 0}}, "sights": [[{"bench_mark": 1200}, {"A1": 1300}], {"A1": 1100, "TP1": 900}]}`,
		`, "measured": {"seats": {"bench_mark": "4'", "A1": "5'"}, "strings": {"A1-A4": "10'"}, "stock": {"4x4": ["8'"]}, "hours": {"dig": 2.5}}`,
		`, "yard": {"stock": {"2x6": {"8'": 7.2, "12'": {"price": 11.8, "sticks": 12}, "14'": {"sticks": 3}}, "45x145 mm": ["3 m"]}, "prices": {"panel": 40, "cap": "none"}}, "stone": {"waste": "8%", "loose": 1.3}, "piers": {"A1": {"bed": "2\""}}`,
	} {
		assert.Empty(t, checkAgainstSchema(t, dozenJSON+more+"}"), more)
		read(t, "job.yaml", strings.ReplaceAll(dozenJSON+more+"}", `"none"`, "none"))
	}
}

func TestSchemaFindsWhatTheReaderFinds(t *testing.T) {
	for _, row := range []struct{ more, at string }{
		{`"colour": "red"`, ".colour"},
		{`"stone": {"leest": "6 in"}`, ".stone.leest"},
		{`"units": "metrical"`, ".units"},
		{`"frame": {"beams": {"lines": "many"}}`, ".frame.beams.lines"},
		{`"frame": {"beams": {"lines": 40}}`, ".frame.beams.lines"},
		{`"ground": {"probes": {"I1": {"depth": "9 in", "found": "firm"}}}`, ".ground.probes.I1"},
		{`"yard": {"stock": {"2x6": {"8'": {"price": 4, "stick": 2}}}}`, ".yard.stock.2x6.8'.stick"},
		{`"yard": {"stock": {"2x6": {"8'": {"sticks": 0}}}}`, ".yard.stock.2x6.8'.sticks"},
		{`"yard": {"prices": {"pannel": 4}}`, ".yard.prices.pannel"},
		{`"dig": 6`, ".dig"},
		{`"issued": "May"`, ".issued"},
	} {
		text := dozenJSON + ", " + row.more + "}"
		assert.Equal(t, []string{row.at}, checkAgainstSchema(t, text))
		faultsOf(t, "job.yaml", text)
	}
}

func TestSchemaHasEveryKey(t *testing.T) {
	text := string(job.Schema())
	for _, k := range job.Keys() {
		means, err := json.Marshal(k.Means)
		require.NoError(t, err)
		assert.Contains(t, text, string(means), k.Path)
	}
	assert.Equal(t, text, string(job.Schema()), "the same bytes each time")
}

func TestManyJobsAreReadAtOnce(t *testing.T) {
	var group sync.WaitGroup
	for range 16 {
		group.Go(func() {
			j, faults := job.Read(os.DirFS("testdata"), "full.yaml")
			if !faults.Empty() || j.Slug() != "orchard-potting-shed" {
				t.Error("a job was read differently beside others")
			}
		})
	}
	group.Wait()
}
