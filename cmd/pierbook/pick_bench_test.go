package main

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/job"
	"pierbook/content"
)

// opened returns a job file with every size, spacing and count left to the program.
func opened(t testing.TB, files fs.FS, name string, changes ...string) fstest.MapFS {
	t.Helper()
	text, err := fs.ReadFile(files, name)
	require.NoError(t, err)
	changed := string(text)
	for i := 0; i < len(changes); i += 2 {
		require.Contains(t, changed, changes[i])
		changed = strings.Replace(changed, changes[i], changes[i+1], 1)
	}
	all := fstest.MapFS{name: {Data: []byte(changed)}}
	for _, beside := range []string{"shop.yaml", "yard.yaml"} {
		if data, err := fs.ReadFile(files, "sample/"+beside); err == nil {
			all["sample/"+beside] = &fstest.MapFile{Data: data}
		}
	}
	return all
}

// BenchmarkCheckWithAllSizesOpen sets the check of a job with pick everywhere
// beside the check of the same job with the sizes that were picked: the first
// stays within ten times the second.
func BenchmarkCheckWithAllSizesOpen(b *testing.B) {
	const pick = "joists: {size: pick, spacing: pick, sit: on_beams}\n  rims: {size: pick}\n  beams: {size: pick, lines: 3, inset: 0, set_back: 0}"
	const given = "joists: {size: 2x8, spacing: 16\", sit: on_beams}\n  rims: {size: 2x8}\n  beams: {size: 4x6, lines: 3, inset: 0, set_back: 0}"
	const all = "frame: {joists: {size: pick, spacing: pick}, rims: {size: pick}, beams: {size: pick, lines: pick}, piers: {per_line: pick}}"
	sample := opened(b, content.Sample, content.SampleJob, given, pick)
	// The readings name the sample's piers, so lines and piers stay as they are there.
	hall := fstest.MapFS{"hall.yaml": {Data: []byte(strings.Join([]string{
		"name: Reading hall", "units: metric", "platform: {length: 9000 mm, width: 6000 mm, use: workshop}",
		"building: {weight: {least: 30 kN, most: 60 kN}}", "site: {soil: {class: sandy_gravel}, ground_snow: 1.0 kPa}",
		"timber: {species: spruce_pine_fir, grade: No.2}", "block: {rated_load: 25 kN}",
		all}, "\n"))}}
	room := fstest.MapFS{"room.yaml": {Data: []byte(strings.Join([]string{
		"name: Garden room", "platform: {length: 16', width: 12', use: garden_room}", "building: {weight: {least: 2200 lb, most: 4000 lb}}",
		"site: {soil: {class: silty_sand}, ground_snow: 30 psf, wind: {speed: 110 mph, exposure: B}}",
		"timber: {species: hem_fir, grade: No.2}", "block: {rated_load: 3000 lb}", all}, "\n"))}}
	for _, c := range []struct {
		name  string
		files fs.FS
		job   string
	}{{"sample", sample, content.SampleJob}, {"room", room, "room.yaml"}, {"metric hall", hall, "hall.yaml"}} {
		plan, faults := work(c.files, c.job)
		require.NoError(b, faults.Err())
		require.NotNil(b, plan.Picked)
		b.Run(c.name+"/open", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, faults := work(c.files, c.job); !faults.Empty() {
					b.Fatal(faults.Err())
				}
			}
		})
		b.Run(c.name+"/given", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				job.Read(c.files, c.job)
				if _, faults := calc.Work(plan.Job); !faults.Empty() {
					b.Fatal(faults.Err())
				}
			}
		})
	}
}
