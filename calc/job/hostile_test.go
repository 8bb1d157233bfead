package job_test

import (
	"fmt"
	"io/fs"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
)

// Files made to choke a reader are refused at once, with their place, and cost
// next to nothing.
func TestFilesMadeToChokeAReaderAreRefusedAtOnce(t *testing.T) {
	const half = 500_000
	bomb := "name: Hen house\nclient: &a0 x\n"
	for i := range 60 {
		bomb += fmt.Sprintf("k%d: &a%d [%s]\n", i, i+1, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*a%d, ", i), 10), ", "))
	}
	stairs := "name: x\n"
	for i := range 600 {
		stairs += strings.Repeat(" ", i) + "a:\n"
	}
	const nested = "more than 32 maps and lists stand in one another here"
	for _, row := range []struct{ name, text, want string }{
		{"brackets of lists", dozen + "ground: {sights: " + strings.Repeat("[", half), "job.yaml:13:48: " + nested},
		{"brackets of maps", dozen + "x: " + strings.Repeat("{a: ", half/4), "job.yaml:13:128: " + nested},
		{"closed again", dozen + "x: " + strings.Repeat("[", 1000) + strings.Repeat("]", 1000), "job.yaml:13:35: " + nested},
		{"dashes in one line", dozen + "x:\n" + strings.Repeat("- ", half), "job.yaml:14:1: " + nested},
		{"questions in one line", dozen + strings.Repeat("? ", half), "job.yaml:13:1: " + nested},
		{"stairs", stairs, "job.yaml:34:1: " + nested},
		{"aliases of aliases", bomb, "the alias *a0 stands for text elsewhere"},
		{"too large", dozen + "client: " + strings.Repeat("x", 1<<20), "job.yaml: the file is over 1 MB"},
	} {
		t.Run(row.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			j, faults := job.Read(files("job.yaml", row.text), "job.yaml")
			took := time.Since(start)
			runtime.ReadMemStats(&after)
			assert.Nil(t, j)
			assert.Contains(t, printed(faults), row.want)
			assert.Less(t, took, time.Second)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(64<<20))
		})
	}
}

// Real files are nowhere near the limit, however they are laid out.
func TestOrdinaryNestingIsRead(t *testing.T) {
	read(t, "job.yaml", strings.Replace(dozen, "crew: {people: 1}", `ground: {sights: [[{bench_mark: 4' 2"}, {A1: 4' 9"}, {C4: 4' 7"}, {bench_mark: 4' 2"}]]}`, 1))
	read(t, "job.yaml", dozen+"client: \"((( [[[ {{{\"\naddress: \"[[[[ {{{{\"\n")
}

// A job may name any file of its folder. Of one that is not of our kind nothing
// is shown, be it a list of passwords or the settings of another program.
func TestOfFilesThatAreNotOursNothingIsShown(t *testing.T) {
	for _, text := range []string{
		"root:$6$hunter2:19000:0:99999:7:::\n", "password: hunter2\n", "TOKEN=hunter2\n", "{password: hunter2\n", "- hunter2\n", "hunter2: [\n", "\thunter2\x1b\n",
		"name: web\nservices:\n  db: {password: hunter2}\nvolumes: [hunter2]\n", "  key: hunter2\n  other: \"hunter2\n", "hunter2",
	} {
		for _, key := range []string{"shop", "yard"} {
			got := faultsOf(t, "job.yaml", dozen+key+": secret.yaml\n", "secret.yaml", text)
			assert.Contains(t, got, "secret.yaml: this is not a file of this kind", text)
			assert.NotContains(t, got, "hunter2", text)
		}
		assert.NotContains(t, faultsOf(t, "job.yaml", text), " | ", "no line of it is shown when a person named it either: %q", text)
	}
	for _, text := range []string{"blok: {rated_load: 3000 lb}\n", "Block: {rated_load: 3000}\n", "# ours\n\n  block: {rated_load: 3000}\n", "{block: {rated_load: 3000}}\n"} {
		assert.Contains(t, faultsOf(t, "job.yaml", dozen+"shop: shop.yaml\n", "shop.yaml", text), "| "+strings.TrimRight(text[strings.LastIndex(text[:len(text)-1], "\n")+1:], "\n"), "a slip in a file of ours is shown")
	}
}

// bounded holds more than may be read: all that is not in the folder jobs.
type bounded struct{ fs.FS }

func (bounded) Outside(name string) bool { return !strings.HasPrefix(name, "jobs/") }

func TestFilesOutsideTheBoundsAreRefused(t *testing.T) {
	for _, row := range []struct{ line, want string }{
		{"shop: ../shop.yaml", `jobs/job.yaml:13:7: shop: "../shop.yaml" leads out of the folder of the job`},
		{"yard: /yard.yaml", `jobs/job.yaml:13:7: yard: "/yard.yaml" leads out of the folder of the job`},
		{"yard: /nowhere.yaml", `jobs/job.yaml:13:7: yard: "/nowhere.yaml" leads out of the folder of the job`},
		{"pages: ../pages", `jobs/job.yaml:13:8: pages: "../pages" leads out of the folder of the job`},
		{"pages: /pages", `jobs/job.yaml:13:8: pages: "/pages" leads out of the folder of the job`},
		{"pages: C:/pages", `jobs/job.yaml:13:8: pages: "C:/pages" leads out of the folder of the job`},
	} {
		_, faults := job.Read(bounded{files("jobs/job.yaml", dozen+row.line+"\n", "shop.yaml", "crew: {people: 2}\n", "yard.yaml", "kerf: 1/8\"\n")}, "jobs/job.yaml")
		assert.Contains(t, printed(faults), row.want+"\n")
		assert.Contains(t, printed(faults), "-also DIR")
	}
	j, faults := job.Read(bounded{files("jobs/job.yaml", dozen+"shop: /jobs/shop.yaml\npages: ../jobs/pages\n", "jobs/shop.yaml", "revision: Q\n")}, "jobs/job.yaml")
	require.True(t, faults.Empty(), printed(faults))
	assert.Equal(t, "Q", j.Revision)
	assert.Equal(t, "jobs/pages", j.Pages)
}
