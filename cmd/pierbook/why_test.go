package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/figure"
	"pierbook/content"
)

// explained holds jobs of every kind: metric and imperial, with and without a
// building, sizes left to the program, heavy things, walls, failing checks.
const explained = "testdata/explained"

func plansToExplain(t *testing.T) map[string]*calc.Plan {
	t.Helper()
	plans := map[string]*calc.Plan{}
	read := func(files fs.FS, name string) {
		plan, faults := work(files, name)
		require.NoError(t, faults.Err(), name)
		plans[name] = plan
	}
	read(content.Sample, content.SampleJob)
	for _, folder := range []string{jobsFolder, explained} {
		paths, err := filepath.Glob(filepath.Join(folder, "*.yaml"))
		require.NoError(t, err)
		require.NotEmpty(t, paths, folder)
		for _, path := range paths {
			read(os.DirFS(folder), filepath.Base(path))
		}
	}
	return plans
}

// TestEveryFigureSaysWhereItComesFrom walks all figures of all jobs: a figure
// that was worked out has its rule, an assumed one its source, a given one its
// place, every figure that it names is there, and why can be asked of each.
func TestEveryFigureSaysWhereItComesFrom(t *testing.T) {
	for name, plan := range plansToExplain(t) {
		for _, f := range plan.Figures.All() {
			at := name + ": " + f.Key
			assert.NotEmpty(t, f.Means, at)
			switch {
			case f.Origin == figure.Computed:
				assert.NotEmpty(t, f.Formula, at)
			case f.Origin == figure.Assumed:
				assert.NotEmpty(t, f.Source, at)
			case f.Value != nil:
				assert.True(t, f.At.Known(), at)
			}
			for _, key := range f.From {
				_, there := plan.Figures.Get(key)
				assert.True(t, there, "%s comes from %s, which is no figure", at, key)
			}
			var out bytes.Buffer // the answer comes to an end and names the figure and what it is
			require.True(t, plan.Figures.Explain(&out, f.Key, plan.Style), at)
			assert.Contains(t, out.String(), f.Key+" = ", at)
			assert.Contains(t, out.String(), f.Means, at)
			assert.NotContains(t, out.String(), "%!", at)
		}
	}
}
