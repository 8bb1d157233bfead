package content

import (
	"fmt"
	"slices"
	"strings"
)

// caution is a warning with its source. Which ones a job calls for is decided
// by its condition.
type caution struct {
	id, stage, word, source, read string
	text                          span
	condition                     condition
}

func (c caution) key() string { return c.id }

// The signal words, by outcome: DANGER will kill or maim, WARNING could,
// CAUTION hurts less, NOTICE is for damage to things alone.
//
// Source: ANSI Z535.4 (2011), definitions, from memory.
var signalWords = []string{"DANGER", "WARNING", "CAUTION", "NOTICE"}

// readCautions reads the file of cautions; a later one takes the place of an
// earlier one with its id.
func (r *recorder) readCautions() {
	for _, rec := range r.readRecords("id", "stage", "word", "text", "source", "read", "when") {
		if !r.need(rec, "id", "stage", "word", "text", "source", "read") {
			continue
		}
		r.pieces(rec.fields["text"]) // so that a slip in it shows even where no page asks for it
		r.oneOf(rec, "word", signalWords...)
		r.oneOf(rec, "read", readLevels...)
		c := caution{
			id: rec.text("id"), stage: rec.text("stage"), word: rec.text("word"),
			source: rec.text("source"), read: rec.text("read"),
			text: rec.fields["text"], condition: r.conditionOf(rec),
		}
		r.book.cautions = layer(r, r.book.cautions, c, rec, "caution")
	}
}

func (r *recorder) oneCaution(b block) {
	c, known := named(r, b.argument, r.book.cautions, "caution")
	if !known {
		return
	}
	r.caution(c)
}

func (r *recorder) cautionsOfStage(b block) {
	found := false
	for _, c := range r.book.cautions {
		if c.stage == b.argument.text() {
			r.caution(c)
			found = true
		}
	}
	if !found {
		r.wrong(b.argument, fmt.Sprintf("no caution is of the stage %q", b.argument.text()),
			didYouMean(b.argument.text(), r.book.stages(), "write the stage of a caution in cautions.txt"))
	}
}

// alert is the triangle of a hazard; a NOTICE has none, since nobody is hurt.
const alert = `<svg class="alert" viewBox="0 0 24 22" width="24" height="22" aria-hidden="true"><path class="triangle" d="M12 1.5 23 20.5 1 20.5 Z"/><path class="bang" d="M12 8 12 14"/><path class="bang" d="M12 16.6 12 17.6"/></svg>`

// caution records one caution. The sheets at the back print the source with
// it; on a step sheet it would stand between the reader and the work.
func (r *recorder) caution(c caution) {
	class := map[string]string{"DANGER": "danger", "WARNING": "warning", "CAUTION": "care", "NOTICE": "notice"}[c.word]
	r.beginWhen(c.condition)
	r.html(`<div class="caution `, class, `" role="note"><p class="word">`)
	if c.word != "NOTICE" {
		r.html(alert)
	}
	r.html(c.word, "</p><p>")
	r.plain(c.text)
	if c.read == "memory" {
		r.add(memoryMark{})
	}
	r.html("</p>")
	if r.page.kind == kindBack {
		r.source(c.source, c.read)
	}
	r.html("</div>\n")
	r.endWhen(c.condition)
}

// source records where a text comes from and how well that was read.
func (r *recorder) source(source, read string) {
	r.html(`<p class="source">`)
	r.escaped(source)
	switch read {
	case "summary":
		r.html(" (read in a summary)")
	case "memory":
		if !strings.HasPrefix(source, "common practice, no source") {
			r.html(" (from memory, unconfirmed)")
		}
	}
	r.html("</p>")
}

func (b *Book) stages() []string {
	var stages []string
	for _, c := range b.cautions {
		if !slices.Contains(stages, c.stage) {
			stages = append(stages, c.stage)
		}
	}
	return stages
}
