package job_test

import (
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"pierbook/calc/fault"
	"pierbook/calc/job"
)

// FuzzRead feeds broken job files: reading never panics, a job comes without
// faults or not at all, and every fault stands inside its file.
func FuzzRead(f *testing.F) {
	full, err := os.ReadFile("testdata/full.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(full))
	f.Add(dozen)
	for _, line := range []string{"a: &a [*a]\n", "<<: *b\n", "x: '5' 6\"\n", "\ty: 1\n", "a: [b, {c: d}\n", "--- \n...\n", "client: #2\n", "? {a: b}\n: c\n", "a: |\n  text\nb:1\n",
		"ground: {sights: [[], {}, [a: b, c], [[x]]]}\n", "yard: {stock: {2x6: {8': none, x: [1]}}}\n", "shop: job.yaml\n", "\u2028a: b\u0085c: @\n", "platform: none\n",
		"frame: {joists: {timber: {values: {}}}}\n", "measured: {seats: {unit: [1], A1: 1}}\n", "piers: {A1: none}\n", "%YAML 9.9\n---\na: b\n", "\"a\\\n  b\": 'c''\n"} {
		f.Add(line)
		f.Add(dozen + line)
	}
	f.Fuzz(func(t *testing.T, text string) {
		j, faults := job.Read(files("job.yaml", text), "job.yaml")
		if (j != nil) != faults.Empty() {
			t.Fatalf("a job and %d faults", faults.Len())
		}
		if j != nil && j.Slug() == "" {
			t.Fatal("a job without a folder")
		}
		for _, at := range faults.Sorted() {
			inside(t, text, at)
		}
	})
}

func inside(t *testing.T, text string, f fault.Fault) {
	if f.At.File != "job.yaml" || f.Wrong == "" || f.Remedy == "" {
		t.Fatalf("a fault without file, wrong or remedy: %+v", f)
	}
	if !f.At.Known() {
		return
	}
	lines := 1 + strings.Count(text, "\n") + strings.Count(text, "\r") + strings.Count(text, "\u0085") + strings.Count(text, "\u2028") + strings.Count(text, "\u2029")
	if f.At.Text == "" { // of a file that is not one of ours no line is shown
		return
	}
	width := utf8.RuneCountInString(f.At.Text)
	if f.At.Line > lines || f.At.Column < 1 || f.At.Column > width+1 || f.At.Length < 1 || f.At.Column+f.At.Length > width+2 {
		t.Fatalf("a fault outside the file: %+v", f)
	}
}

func BenchmarkRead(b *testing.B) {
	fsys := os.DirFS("testdata")
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := job.Read(fsys, "full.yaml"); !faults.Empty() {
			b.Fatal(faults.Err())
		}
	}
}

func BenchmarkReadDozenLines(b *testing.B) {
	fsys := files("job.yaml", dozen)
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := job.Read(fsys, "job.yaml"); !faults.Empty() {
			b.Fatal(faults.Err())
		}
	}
}
