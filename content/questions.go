package content

// question is something that only an authority, a licensed trade, a utility or
// a neighbour can answer. The binder asks and records; it never answers.
type question struct {
	id        string
	fields    map[string]span
	condition condition
}

func (q question) key() string { return q.id }

// readQuestions reads the file of questions for the authorities.
func (r *recorder) readQuestions() {
	for _, rec := range r.readRecords("id", "ask", "whom", "why", "default", "source", "read", "when") {
		if !r.need(rec, "id", "ask", "whom", "why") {
			continue
		}
		q := question{id: rec.text("id"), fields: rec.fields, condition: r.conditionOf(rec)}
		for _, word := range []string{"ask", "whom", "why"} {
			r.pieces(rec.fields[word]) // so that a slip in it shows even where no page asks for it
		}
		if _, usual := rec.fields["default"]; usual && r.need(rec, "source", "read") {
			r.oneOf(rec, "read", readLevels...)
		}
		r.book.questions = layer(r, r.book.questions, q, rec, "question")
	}
}

func (r *recorder) oneQuestion(b block) {
	q, known := named(r, b.argument, r.book.questions, "question")
	if !known {
		return
	}
	r.page.asks = append(r.page.asks, q.id)
	r.question(q)
}

// allQuestions records all questions, or those that no block of the book names,
// which are known once all pages are read.
func (r *recorder) allQuestions(b block) {
	for _, q := range r.book.questions {
		if b.argument.empty() {
			r.question(q)
			continue
		}
		r.begin()
		r.question(q)
		r.add(unlessAsked{id: q.id, body: r.end()})
	}
}

// unlessAsked is a question that is left out when a block of the book names it.
type unlessAsked struct {
	id   string
	body []piece
}

func (p unlessAsked) fill(f *filler) {
	if !f.binder.book.asked[p.id] {
		f.fillAll(p.body)
	}
}

// question records one question with the blanks for its answer. What the job
// file already answers stands in the figures asked.ID.answer, .by, .number and
// .date.
func (r *recorder) question(q question) {
	r.beginWhen(q.condition)
	r.html(`<div class="question"><p class="ask">`, tickBox)
	r.plain(q.fields["ask"])
	r.html(`</p><p class="whom"><b>Ask</b> `)
	r.plain(q.fields["whom"])
	r.html(`</p><p class="why">`)
	r.plain(q.fields["why"])
	if usual, given := q.fields["default"]; given {
		r.html(`</p><p class="usual">`)
		r.plain(usual)
		if q.fields["read"].text() == "memory" {
			r.add(memoryMark{})
		}
		r.html("</p>")
		r.source(q.fields["source"].text(), q.fields["read"].text())
	} else {
		r.html("</p>")
	}
	r.html(`<dl class="answer">`)
	for _, blank := range []struct{ word, label string }{
		{"answer", "Answer"}, {"by", "Given by"}, {"number", "Permit or licence no."}, {"date", "Date"},
	} {
		r.html("<div><dt>", blank.label, "</dt><dd>")
		r.add(answer{key: "asked." + q.id + "." + blank.word, label: blank.label})
		r.html("</dd></div>")
	}
	r.html("</dl></div>\n")
	r.endWhen(q.condition)
}

// QuestionIDs returns the ids of all questions, which are the keys that a
// job's answers go by.
func (b *Book) QuestionIDs() []string {
	return ids(b.questions)
}
