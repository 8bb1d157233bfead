package ground_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
)

// example is one published or worked case with where it comes from.
type example struct {
	ID, Set, What, Source string
	Tolerance             float64
	Inputs, Result        yaml.Node
	Given                 yaml.Node `yaml:"given_intermediate"`
}

// into decodes a part of an example.
func into[T any](t testing.TB, node yaml.Node) T {
	t.Helper()
	var v T
	require.NoError(t, node.Decode(&v))
	return v
}

// examples reads the cases of a set from the published check values.
func examples(t testing.TB, file, set string) []example {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "published", file))
	require.NoError(t, err)
	var all struct{ Examples []example }
	require.NoError(t, yaml.Unmarshal(text, &all))
	var list []example
	for _, e := range all.Examples {
		if e.Set == set {
			list = append(list, e)
		}
	}
	require.NotEmpty(t, list, "%s has no set %s", file, set)
	return list
}

// byID returns one case.
func byID(t testing.TB, file, set, id string) example {
	t.Helper()
	for _, e := range examples(t, file, set) {
		if e.ID == id {
			return e
		}
	}
	require.Fail(t, "no example "+id)
	return example{}
}
