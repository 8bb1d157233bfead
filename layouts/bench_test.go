package layouts

import (
	"io"
	"os"
	"testing"

	"pierbook/content"
)

// BenchmarkWriteBinder sets the fixture's six sheets.
func BenchmarkWriteBinder(b *testing.B) {
	binder := fixtureBinder(b, "Kiln field workshop")
	b.ReportAllocs()
	for b.Loop() {
		if err := WriteBinder(io.Discard, binder); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBind fills the fixture's pages, its three tables among them.
func BenchmarkBind(b *testing.B) {
	book, _ := content.Read(content.Layer{Pages: os.DirFS("testdata/pages"), Data: os.DirFS("testdata"), Folder: "testdata/pages"})
	figures, blocks := fixtureFigures("Kiln field workshop"), fixtureBlocks("Kiln field workshop")
	b.ReportAllocs()
	for b.Loop() {
		book.Bind(figures, imperial(), blocks)
	}
}
