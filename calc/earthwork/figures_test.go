package earthwork_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/fieldtest"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// fromFrame are keys of the frame that the ground works from.
var fromFrame = map[string]bool{"build_up": true, "post.shortest": true, "post.longest": true}

// TestEveryFigureCanBeExplained follows the keys that figures name down to the
// readings and the keys of the job.
func TestEveryFigureCanBeExplained(t *testing.T) {
	var paths []string
	for _, key := range job.Keys() {
		paths = append(paths, strings.ReplaceAll(regexp.QuoteMeta(key.Path), `\*`, `[^.]+`))
	}
	known := regexp.MustCompile("^(" + strings.Join(paths, "|") + ")$")
	for name, j := range map[string]*job.Job{"surveyed": fieldtest.SampleJob(), "planned": fieldtest.TermsJob(), "seats read": fieldtest.SeatsRead(t, map[string]float64{"A1": 0.25})} {
		figures := fieldtest.Work(t, j, fieldtest.SampleFrame()).Figures(j)
		keys := map[string]bool{}
		for _, f := range figures {
			assert.False(t, keys[f.Key], "%s: %s twice", name, f.Key)
			keys[f.Key] = true
		}
		for _, f := range figures {
			for _, from := range f.From {
				assert.True(t, keys[from] || strings.HasPrefix(from, "trade.") || fromFrame[from] || known.MatchString(from), "%s: %s comes from %q, which is nothing", name, f.Key, from)
			}
			if f.Value != nil && f.Origin == figure.Computed {
				assert.NotEmpty(t, f.Formula, f.Key)
				assert.NotEmpty(t, f.Working, f.Key)
			}
		}
	}
}

func TestKeysDoNotDependOnProgress(t *testing.T) {
	keys := func(j *job.Job) map[string]bool {
		set := map[string]bool{}
		for _, f := range fieldtest.Work(t, j, fieldtest.SampleFrame()).Figures(j) {
			if !strings.HasPrefix(f.Key, "sight.") && !strings.HasPrefix(f.Key, "setup.") && !strings.HasPrefix(f.Key, "spot.") {
				set[f.Key] = true
			}
		}
		return set
	}
	clash := fieldtest.SampleJob()
	clash.Frame.Posts.Longest = fieldtest.In(8)
	built := fieldtest.SeatsRead(t, nil)
	built.Measured.Finished = map[string]measure.Length{"bench_mark": fieldtest.In(49.5), "A1": fieldtest.In(34), "A5": fieldtest.In(34), "C1": fieldtest.In(34.125)}
	want := keys(fieldtest.TermsJob())
	for _, j := range []*job.Job{fieldtest.SampleJob(), clash, fieldtest.SeatsRead(t, nil), built} {
		assert.Equal(t, want, keys(j))
	}
	assert.Equal(t, job.AsBuilt, fieldtest.Work(t, built, fieldtest.SampleFrame()).Progress)
}

// Sorted faults and figures come out in one order however often they are made.
func TestSameJobSameFigures(t *testing.T) {
	j := fieldtest.SampleJob()
	first := fieldtest.Work(t, j, fieldtest.SampleFrame()).Figures(j)
	for range 5 {
		assert.Equal(t, first, fieldtest.Work(t, fieldtest.SampleJob(), fieldtest.SampleFrame()).Figures(j))
	}
}
