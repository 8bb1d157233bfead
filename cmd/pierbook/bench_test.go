package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/content"
)

// The measure of these is BenchmarkGoldmarkAlone in content: the same pages
// through the Markdown library with nothing filled in and nothing drawn.

func BenchmarkCheckSample(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		plan, faults := work(content.Sample, content.SampleJob)
		if !faults.Empty() {
			b.Fatal(faults.Err())
		}
		printKeyNumbers(plan, content.SampleJob, io.Discard)
	}
}

// BenchmarkMakeSample is a whole run for one job but for the disk: the pages
// read, the job read and worked, the six files made.
func BenchmarkMakeSample(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		boundFiles(b, "")
	}
}

// BenchmarkEachFurtherJob is what a job costs once the pages are read.
func BenchmarkEachFurtherJob(b *testing.B) {
	pages := newLibrary()
	b.ReportAllocs()
	for b.Loop() {
		plan, faults := work(content.Sample, content.SampleJob)
		if !faults.Empty() {
			b.Fatal(faults.Err())
		}
		if _, faults, err := bind(plan, content.Sample, pages); err != nil || !faults.Empty() {
			b.Fatal(faults.Err(), err)
		}
	}
}

// BenchmarkManyJobs makes different jobs in one run, onto the disk, and reports
// the time for each and the most heap that was in use at once.
func BenchmarkManyJobs(b *testing.B) {
	for _, count := range []int{1, 20, 200} {
		b.Run(fmt.Sprint(count), func(b *testing.B) {
			jobs := differentJobs(b, count)
			b.ReportAllocs()
			var peak uint64
			for b.Loop() {
				peak = max(peak, peakOfMaking(b, jobs))
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N)/float64(count), "ms/job")
			b.ReportMetric(float64(peak)/(1<<20), "peak-MB")
		})
	}
}

// TestMemoryDoesNotGrowWithTheJobs makes five times as many jobs in one run and
// finds the heap less than twice as large: what a job holds is let go
// when its binder is written.
func TestMemoryDoesNotGrowWithTheJobs(t *testing.T) {
	if testing.Short() {
		t.Skip("makes many jobs")
	}
	defer debug.SetGCPercent(debug.SetGCPercent(20)) // so that the heap holds little that nobody needs
	few := peakOfMaking(t, differentJobs(t, 6))
	many := peakOfMaking(t, differentJobs(t, 30))
	t.Logf("6 jobs: %d MB, 30 jobs: %d MB", few>>20, many>>20)
	assert.Less(t, float64(many), 2*float64(few))
}

// differentJobs writes job files that all differ in name, sizes and readings.
func differentJobs(t testing.TB, count int) []string {
	t.Helper()
	folder := t.TempDir()
	names := make([]string, count)
	for i := range names {
		names[i] = filepath.Join(folder, fmt.Sprintf("job-%d.yaml", i))
		text := fmt.Sprintf(`name: Platform %d
platform: {length: %d", width: %d", use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
frame: {joists: {size: 2x8}, piers: {per_line: 5}}
ground:
  sights:
    - [bench_mark: 50", A1: %d", A3: %d", A5: %d", C1: %d", C5: 52", bench_mark: 50"]
`, i+1, 144+i%5*12, 96+i%3*16, 54+i%3, 56+i%5, 58+i%4, 50+i%6)
		require.NoError(t, os.WriteFile(names[i], []byte(text), 0o644))
	}
	return names
}

// peakOfMaking makes jobs in one run and returns the most heap in use at once.
func peakOfMaking(t testing.TB, jobs []string) uint64 {
	t.Helper()
	debug.FreeOSMemory()
	stop, peak := make(chan struct{}), make(chan uint64)
	go func() {
		var most uint64
		for {
			var memory runtime.MemStats
			runtime.ReadMemStats(&memory)
			most = max(most, memory.HeapInuse)
			select {
			case <-stop:
				peak <- most
				return
			case <-time.After(2 * time.Millisecond):
			}
		}
	}()
	m, err := newMaking(jobs, filepath.Join(t.TempDir(), "binders"), nil)
	require.NoError(t, err)
	exit := m.run(io.Discard, io.Discard)
	close(stop)
	most := <-peak
	require.Equal(t, done, exit)
	return most
}
