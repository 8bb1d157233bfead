package calc_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
)

// large is a job with eight lines of 25 piers and two readings on each of them,
// taken from eight places and closed on the bench mark.
func large() string {
	var b strings.Builder
	b.WriteString(`name: Long byre floor
platform: {length: 96', width: 42', use: light_storage, surface: {kind: boards, thickness: 1 1/2", width: 5 1/2", gap: 1/4"}}
site: {soil: {class: gravel}}
timber: {species: douglas_fir_larch, grade: No.2}
frame: {joists: {size: 2x8, spacing: 16", sit: between_beams}, beams: {size: 4x8, lines: 8}, piers: {per_line: 25}}
ground:
  bench_mark: {where: corner of the byre}
  close_to: 1/4"
  spots: {T1: turning_point, T2: turning_point, T3: turning_point, T4: turning_point, T5: turning_point, T6: turning_point, T7: turning_point}
  sights:
`)
	height := func(line, pier int) int { return 2*line + pier%7 + (line*pier)%3 } // sixteenths under the bench mark's height
	for line := range 8 {
		from, to := fmt.Sprintf("T%d", line), fmt.Sprintf("T%d", line+1)
		if line == 0 {
			from = "bench_mark"
		}
		if line == 7 {
			to = "bench_mark"
		}
		fmt.Fprintf(&b, "    - [%s: 4' 0\"", from)
		for range 2 {
			for pier := range 25 {
				fmt.Fprintf(&b, ", %c%d: 4' %d/16\"", "ABCDEFGH"[line], pier+1, height(line, pier)+1)
			}
		}
		fmt.Fprintf(&b, ", %s: 4' 0\"]\n", to)
	}
	return b.String()
}

func BenchmarkWork(b *testing.B) {
	sample, faults := job.Read(content.Sample, content.SampleJob)
	require.Empty(b, faults.Sorted())
	many, faults := job.Read(fstest.MapFS{"job.yaml": {Data: []byte(large())}}, "job.yaml")
	require.Empty(b, faults.Sorted())
	for _, row := range []struct {
		name string
		job  *job.Job
	}{{"sample", sample}, {"200 piers, 400 readings", many}} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, faults := calc.Work(row.job); !faults.Empty() {
					b.Fatal(faults.Sorted())
				}
			}
		})
	}
}
