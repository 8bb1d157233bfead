package main

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/content"
)

// mutated is how many broken jobs one run of the tests makes; a whole run is 5,000.
var mutated = flag.Int("mutated", 150, "how many mutated jobs to work and bind")

var mutationSeed = flag.Uint64("mutation-seed", 1, "of the first mutated job; the next have the next")

const (
	slowest    = 20 * time.Second // that one job may take on a busy machine; a plan of five seconds is the longest by design
	mostMemory = 500 << 20
)

// subjects are the files of jobs that are mutated, with the files they read.
func subjects(t testing.TB) map[string]fstest.MapFS {
	t.Helper()
	all := map[string]fstest.MapFS{}
	copied := fstest.MapFS{}
	require.NoError(t, fs.WalkDir(content.Sample, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(content.Sample, name)
		copied[name] = &fstest.MapFile{Data: data}
		return err
	}))
	all[content.SampleJob] = copied
	names, err := fs.Glob(os.DirFS("../../testdata/jobs"), "*.yaml")
	require.NoError(t, err)
	for _, name := range names {
		data, err := os.ReadFile("../../testdata/jobs/" + name)
		require.NoError(t, err)
		all[name] = fstest.MapFS{name: {Data: data}}
	}
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	_, example, found := strings.Cut(string(readme), "```yaml\n")
	require.True(t, found)
	example, _, _ = strings.Cut(example, "```")
	all["readme.yaml"] = fstest.MapFS{"readme.yaml": {Data: []byte(example)}}
	return all
}

var (
	number = regexp.MustCompile(`\d+(\.\d+)?`)
	word   = regexp.MustCompile(`[A-Za-z_]{3,}`)
)

// mutate changes a text in one to three places as slips, whims and spite would.
func mutate(r *rand.Rand, text string, words []string) string {
	for range 1 + r.IntN(3) {
		lines := strings.Split(text, "\n")
		at := r.IntN(len(lines))
		switch r.IntN(16) {
		default: // most are numbers that a person might write
			text = another(r, text, number, func(old string) string {
				v, _ := strconv.ParseFloat(old, 64)
				return strconv.FormatFloat([]float64{v + 1, max(0, v-1), v / 2, v * 2, v * 1.1, v * 0.8, float64(r.IntN(30))}[r.IntN(7)], 'f', -1, 64)
			})
			continue
		case 0, 1:
			text = another(r, text, number, func(old string) string {
				v, _ := strconv.ParseFloat(old, 64)
				return strconv.FormatFloat([]float64{0, -v, v * 10, v / 10, v * 1000, v + 1, v / 2, v * 2, v * 1.1, 1e9, 0.0001, float64(r.IntN(100))}[r.IntN(12)], 'f', -1, 64)
			})
			continue
		case 2, 3:
			text = another(r, text, word, func(string) string { return words[r.IntN(len(words))] })
			continue
		case 4:
			lines = append(lines[:at], lines[at+1:]...)
		case 5:
			other := r.IntN(len(lines))
			lines[at], lines[other] = lines[other], lines[at]
		case 6:
			units := []string{"'", `"`, " mm", " m", " ft", " in", " psf", " lb", " kg", "", "%"}
			text = another(r, text, regexp.MustCompile(`\d ?(mm|m|ft|in|'|"|psf|lb|kg)`), func(old string) string { return old[:1] + units[r.IntN(len(units))] })
			continue
		}
		text = strings.Join(lines, "\n")
	}
	return text
}

// another puts something else in the place of one match.
func another(r *rand.Rand, text string, of *regexp.Regexp, by func(string) string) string {
	found := of.FindAllStringIndex(text, -1)
	if len(found) == 0 {
		return text
	}
	at := found[r.IntN(len(found))]
	return text[:at[0]] + by(text[at[0]:at[1]]) + text[at[1]:]
}

// mutant returns the n-th mutated job: the seed fixes all of it.
func mutant(seed uint64, names []string, files map[string]fstest.MapFS) (name string, mutated fstest.MapFS) {
	r := rand.New(rand.NewPCG(seed, 20))
	name = names[r.IntN(len(names))]
	var words []string
	for _, one := range names {
		words = append(words, word.FindAllString(string(files[one][one].Data), -1)...)
	}
	mutated = fstest.MapFS{}
	for file, data := range files[name] {
		mutated[file] = data
	}
	victim := name
	if len(files[name]) > 1 && r.IntN(5) == 0 {
		others := slices.DeleteFunc(slices.Sorted(maps.Keys(files[name])), func(file string) bool { return file == name })
		victim = others[r.IntN(len(others))]
	}
	mutated[victim] = &fstest.MapFile{Data: []byte(mutate(r, string(files[name][victim].Data), words))}
	return name, mutated
}

// worked works a job and binds it; a panic comes back as an error.
func worked(files fs.FS, name string, pages *library) (plan *calc.Plan, bound map[string][]byte, err error) {
	var failed error
	err = guarded(name, func() {
		p, faults := work(files, name)
		if !faults.Empty() {
			return
		}
		plan = p
		bound, _, failed = bind(p, files, pages)
	})
	if err == nil {
		err = failed
	}
	return plan, bound, err
}

// wrongLengths lists what the tables of a binder give to be cut at nothing or less.
func wrongLengths(bound map[string][]byte) []string {
	var wrong []string
	for table, columns := range map[string][]string{cutsFile: {"stick mm", "length mm", "width mm", "mark from hook end mm"}, piersFile: {"post mm"}} {
		if bound[table] == nil {
			continue
		}
		rows, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(bound[table], []byte("\ufeff")))).ReadAll()
		if err != nil {
			return append(wrong, err.Error())
		}
		for i, head := range rows[0] {
			for _, column := range columns {
				if !strings.HasPrefix(head, strings.TrimSuffix(column, " mm")) || strings.HasSuffix(head, "mm") != strings.HasSuffix(column, "mm") || head == "stick" {
					continue
				}
				for _, row := range rows[1:] {
					if v, err := strconv.ParseFloat(row[i], 64); err == nil && v <= 0 {
						wrong = append(wrong, fmt.Sprintf("%s: %s is %s in %q", table, head, row[i], row))
					}
				}
			}
		}
	}
	return wrong
}

// TestMutatedJobs mutates the sample, the jobs of testdata and the example of the README:
// whatever comes of them is told as a fault or bound; nothing panics, hangs or takes
// the machine's memory, and nothing that is to be cut has no length.
func TestMutatedJobs(t *testing.T) {
	files := subjects(t)
	names := slices.Sorted(maps.Keys(files))
	pages := newLibrary()
	bindings, slow, memory := 0, time.Duration(0), uint64(0)
	for n := range *mutated {
		seed := *mutationSeed + uint64(n)
		name, job := mutant(seed, names, files)
		type result struct {
			plan  *calc.Plan
			bound map[string][]byte
			err   error
		}
		came := make(chan result, 1)
		began := time.Now()
		go func() {
			plan, bound, err := worked(job, name, pages)
			came <- result{plan, bound, err}
		}()
		watch := time.NewTicker(20 * time.Millisecond)
	waiting:
		for {
			select {
			case r := <-came:
				if r.err != nil {
					t.Errorf("seed %d, %s: %v", seed, name, r.err)
				}
				if r.bound != nil {
					bindings++
				}
				for _, wrong := range wrongLengths(r.bound) {
					t.Errorf("seed %d, %s: %s", seed, name, wrong)
				}
				break waiting
			case <-watch.C:
				var m runtime.MemStats
				runtime.ReadMemStats(&m)
				memory = max(memory, m.HeapAlloc)
				require.Lessf(t, m.HeapAlloc, uint64(mostMemory), "seed %d, %s takes too much memory", seed, name)
				require.Lessf(t, time.Since(began), slowest, "seed %d, %s hangs", seed, name)
			}
		}
		watch.Stop()
		slow = max(slow, time.Since(began))
	}
	t.Logf("%d jobs, of which %d were bound; the slowest took %v; at most %d MB in use", *mutated, bindings, slow.Round(time.Millisecond), memory>>20)
}

// FuzzWork works and binds whatever job a fuzzer comes upon.
func FuzzWork(f *testing.F) {
	for name, files := range subjects(f) {
		f.Add(string(files[name].Data))
	}
	pages := newLibrary()
	sample := subjects(f)[content.SampleJob]
	f.Fuzz(func(t *testing.T, text string) {
		files := fstest.MapFS{"job.yaml": {Data: []byte(text)}}
		for name, data := range sample {
			if name != content.SampleJob {
				files[name] = data
			}
		}
		_, bound, err := worked(files, "job.yaml", pages)
		require.NoError(t, err)
		require.Empty(t, wrongLengths(bound))
	})
}
