package fieldtest

import (
	"fmt"
	"os"
	"path/filepath"

	"gopkg.in/yaml.v3"
)

// Example is one published or worked case with where it comes from.
type Example struct {
	ID, Set, What, Source string
	Tolerance             float64
	Inputs, Result        yaml.Node
	Given                 yaml.Node `yaml:"given_intermediate"`
}

// Into decodes a part of an example.
func Into[V any](t T, node yaml.Node) V {
	var v V
	stopAt(t, node.Decode(&v))
	return v
}

// Examples reads the cases of a set from the published check values; a set that
// is not there stops the test.
func Examples(t T, file, set string) []Example {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", file))
	stopAt(t, err)
	var all struct{ Examples []Example }
	stopAt(t, yaml.Unmarshal(text, &all))
	var list []Example
	for _, e := range all.Examples {
		if e.Set == set {
			list = append(list, e)
		}
	}
	if len(list) == 0 {
		stopAt(t, fmt.Errorf("%s has no set %s", file, set))
	}
	return list
}

// ByID returns one case.
func ByID(t T, file, set, id string) Example {
	for _, e := range Examples(t, file, set) {
		if e.ID == id {
			return e
		}
	}
	stopAt(t, fmt.Errorf("%s has no example %s", file, id))
	return Example{}
}

func stopAt(t T, err error) {
	if err != nil {
		t.Errorf("%v", err)
		t.FailNow()
	}
}
