// Package content holds the words of the binder: the pages in Markdown, the
// order they are bound in, the cautions, and the questions that only an
// authority can answer. [Read] reads all of it once, the shop's own pages laid
// over the built-in ones; [Book.Bind] fills the pages with the figures of one
// job.
//
// Pages are parsed before a job's figures are known and never again, so nothing
// from a job file is ever read as markup. What a page gets wrong (an unknown
// key, block, caution, link, a blank with too few parts) is a fault with the
// page's file, line and column.
//
// The words are information for a builder. What a code official, an engineer
// or a licensed trade must decide is asked here and never answered.
package content

import (
	"embed"
	"io/fs"
)

//go:embed pages cautions.txt questions.txt
var builtIn embed.FS

// Layer is a folder of pages. Later layers replace pages of the same name in
// earlier ones.
type Layer struct {
	Pages  fs.FS  // NAME.md in its top folder; may be nil
	Data   fs.FS  // cautions.txt and questions.txt in its top folder; may be nil
	Folder string // how faults name the folder of pages
}

// BuiltIn returns the pages, cautions and questions that the program brings.
func BuiltIn() Layer {
	pages, err := fs.Sub(builtIn, "pages")
	if err != nil {
		panic("content: " + err.Error())
	}
	return Layer{Pages: pages, Data: builtIn, Folder: "content/pages"}
}
