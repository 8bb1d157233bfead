package content

// What the blocks become. The look is the business of the style sheet in
// layouts; here stands only what things are.

const (
	// tickBox is a box to tick: with a pen on paper, with a thumb on a phone.
	tickBox = `<span class="tick" aria-hidden="true"></span>`
	// blankStart and blankEnd stand around what is to be written into a blank.
	blankStart = `<span class="blank" role="img" aria-label="blank: `
	blankEnd   = `"></span>`
	// scroll lets a wide table move sideways on a phone, by keyboard too.
	scrollStart = `<div class="scroll" role="region" tabindex="0" aria-label="`
)

// each records every line under its own condition.
func (r *recorder) each(b block, record func(parts []span)) {
	for _, line := range b.lines {
		r.beginWhen(line.condition)
		record(line.parts)
		r.endWhen(line.condition)
	}
}

// blank records a ruled blank for what the span says.
func (r *recorder) blank(label string) {
	r.html(blankStart)
	r.escaped(label)
	r.html(blankEnd)
}

func (r *recorder) big(b block)      { r.pairs(b, "big") }
func (r *recorder) glossary(b block) { r.pairs(b, "glossary") }

// pairs records a list of names and what they stand for.
func (r *recorder) pairs(b block, class string) {
	r.grouped(`<dl class="`+class+`">`, func() {
		r.each(b, func(parts []span) {
			r.html("<div><dt>")
			r.plain(parts[0])
			r.html("</dt><dd>")
			r.plain(parts[1])
			r.html("</dd></div>")
		})
	}, "</dl>\n")
}

func (r *recorder) done(b block) {
	r.grouped(`<div class="done"><p class="label">Done looks like this</p><ul>`, func() {
		r.each(b, func(parts []span) {
			r.html("<li>", tickBox)
			r.plain(parts[0])
			r.html("</li>")
		})
	}, "</ul></div>\n")
}

func (r *recorder) hold(b block) {
	r.grouped(`<div class="hold" role="note"><p class="label">Hold point</p><p>Go on only when every line is true.</p><ul>`, func() {
		r.each(b, func(parts []span) {
			r.html("<li>", tickBox)
			r.plain(parts[0])
			r.html("</li>")
		})
	}, `</ul><p class="sign"><span>Initials `+blankStart+"initials"+blankEnd+"</span> <span>Time "+blankStart+"time"+blankEnd+"</span></p></div>\n")
}

// row records the cells of a table row, the first as its heading.
func (r *recorder) row(parts []span, classes ...string) {
	r.html("<tr>")
	for i, part := range parts {
		name, scope := "td", ""
		if i == 0 {
			name, scope = "th", ` scope="row"`
		}
		r.html("<", name, scope, ` class="`, classes[i], `">`)
		r.plain(part)
		r.html("</", name, ">")
	}
	r.html("</tr>")
}

func heads(texts ...string) string {
	row := "<thead><tr>"
	for _, text := range texts {
		row += `<th scope="col">` + text + "</th>"
	}
	return row + "</tr></thead><tbody>"
}

func (r *recorder) targets(b block) {
	r.grouped(scrollStart+`targets"><table class="targets">`+heads("Target", "Wanted", "Do", "Accept", "Otherwise"), func() {
		r.each(b, func(parts []span) { r.row(parts, "what", "wanted", "do", "accept", "otherwise") })
	}, "</tbody></table></div>\n")
}

func (r *recorder) troubles(b block) {
	r.grouped(scrollStart+`what goes wrong"><table class="wrong">`+heads("What goes wrong", "The way out"), func() {
		r.each(b, func(parts []span) { r.row(parts, "what", "out") })
	}, "</tbody></table></div>\n")
}

// blanks records a table of readings to take; columns that no line fills are
// left out.
func (r *recorder) blanks(b block) {
	columns := 2
	for _, line := range b.lines {
		columns = max(columns, len(line.parts))
	}
	names := []string{"Write down", "Reading", "Expected", "Accept", "Otherwise"}
	classes := []string{"what", "reading", "wanted", "accept", "otherwise"}
	r.grouped(scrollStart+`readings to write down"><table class="blanks">`+heads(names[:columns]...), func() {
		r.each(b, func(parts []span) {
			r.html(`<tr><th scope="row" class="what">`)
			r.plain(parts[0])
			r.html(`</th><td class="reading">`)
			r.blank(parts[0].bare())
			r.html(" ")
			r.plain(parts[1])
			r.html("</td>")
			for i := 2; i < columns; i++ {
				r.html(`<td class="`, classes[i], `">`)
				if i < len(parts) {
					r.plain(parts[i])
				}
				r.html("</td>")
			}
			r.html("</tr>")
		})
	}, "</tbody></table></div>\n")
}
