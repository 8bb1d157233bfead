package content

import (
	"fmt"
	"html/template"
	"slices"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sheet is one page filled for a job.
type Sheet struct {
	Name                           string // of the page; the sheet's id
	Number                         int    // in the binder, from 1
	Title                          string // plain text
	Kind                           Kind
	Wide                           bool          // printed on paper turned sideways
	People, Time, Tools, Overnight template.HTML // of a step, or empty
	Needs, Feeds                   []Reference
	Leaves                         []Leaf   // at least one
	Figures                        []string // keys of those in its text and its tables of rows, as they come
}

// Leaf is one side of a sheet; it may run over more than one side of paper.
type Leaf struct {
	Back    bool          // the back of a step's sheet
	Sets    []Set         // that it is printed with
	HTML    template.HTML //
	Assumed bool          // a figure on it carries the mark of an assumption
	Memory  bool          // a figure on it carries the mark of something known from memory
}

// Reference is another sheet of the binder, or words when it leads nowhere.
type Reference struct {
	Page   string        // its id; empty for words
	Number int           // 0 when it is not bound for this job
	Text   template.HTML // its title, or the words
}

// Call is a page's wish for a block that is made from the job's plan.
type Call struct {
	Block    string        // drawing, table, parts or form
	Argument string        // which one
	Page     string        // that asks; a prefix for ids
	Number   string        // such as 7.2, the second table on sheet 7
	Caption  template.HTML // from the page
	Words    string        // the caption as plain words
	Front    bool          // on the front of a step's sheet, where room is short
	Back     bool          // on its back
	Height   int           // that the page has for a drawing, in mm; 0 when it does not say
	Sheets   []Sheet       // of the binder; those not filled yet have no leaves
}

// Maker makes the blocks of one name.
type Maker struct {
	Names []string                 // the arguments it knows, for the fault that names near ones
	Make  func(Call) template.HTML // "" leaves the block out of this job
	Last  []string                 // the arguments that show something of all other sheets: a page with one is filled after them
}

func (m Maker) knows(argument string) bool { return slices.Contains(m.Names, argument) }

// Blocks holds the makers by block: drawing, table, parts, form.
type Blocks map[string]Maker

// binder is one job being bound.
type binder struct {
	book    *Book
	figures *figure.Registry
	style   measure.Style
	blocks  Blocks
	faults  fault.List
	sheets  []Sheet
	numbers map[string]int // of every page of the book; 0 for one not bound
	spare   []byte         // one sheet's memory serves the next
}

// Bind fills the binder's pages for one job, in binding order and numbered, and
// reports what they ask for that the job does not have.
func (b *Book) Bind(figures *figure.Registry, style measure.Style, blocks Blocks) ([]Sheet, fault.List) {
	return b.bind(figures, style, blocks, func(p *page) bool { return p.kind != kindClient })
}

// BindClient fills the client's pages in the same way.
func (b *Book) BindClient(figures *figure.Registry, style measure.Style, blocks Blocks) ([]Sheet, fault.List) {
	return b.bind(figures, style, blocks, func(p *page) bool { return slices.Contains(clientBinding, p.name) })
}

func (b *Book) bind(figures *figure.Registry, style measure.Style, blocks Blocks, wanted func(*page) bool) ([]Sheet, fault.List) {
	job := &binder{book: b, figures: figures, style: style, blocks: blocks, numbers: map[string]int{}}
	var bound []*page
	for _, p := range b.pages {
		job.numbers[p.name] = 0
		switch {
		case !wanted(p):
		case job.holds(p.condition):
			bound = append(bound, p)
			job.numbers[p.name] = len(bound)
		default:
			job.leftOutPage(p)
		}
	}
	if len(bound) > 0 && bound[len(bound)-1].kind == kindClient { // the client's own page leads
		bound = append(bound[len(bound)-1:], bound[:len(bound)-1]...)
	}
	for i, p := range bound {
		job.numbers[p.name] = i + 1
		f := filler{binder: job, page: p}
		job.sheets = append(job.sheets, Sheet{Name: p.name, Number: i + 1, Title: f.plain(p.title), Kind: p.kind, Wide: p.wide})
	}
	for _, late := range []bool{false, true} {
		for i, p := range bound {
			if blocks.late(p) == late {
				job.fill(&job.sheets[i], p)
			}
		}
	}
	return job.sheets, job.faults
}

// fill fills one sheet.
func (b *binder) fill(s *Sheet, p *page) {
	f := filler{binder: b, page: p, out: b.spare}
	s.People, s.Time, s.Tools, s.Overnight = f.markup(p.people), f.markup(p.time), f.markup(p.tools), f.markup(p.overnight)
	s.Needs, s.Feeds = b.references(p.needs, &f), b.references(p.feeds, &f)
	marks := f.leaf // facts are printed with the last leaf, and so is the key to their marks
	f.leaf = Leaf{}
	f.fillAll(p.body)
	f.endLeaf()
	if len(f.leaves) == 0 {
		f.leaves = []Leaf{{}}
	}
	last := &f.leaves[len(f.leaves)-1]
	last.Assumed, last.Memory = last.Assumed || marks.Assumed, last.Memory || marks.Memory
	s.Leaves, b.spare, s.Figures = f.leaves, f.out[:0], f.printed
}

func (b *binder) references(list []reference, f *filler) []Reference {
	var filled []Reference
	for _, r := range list {
		if r.page == "" {
			filled = append(filled, Reference{Text: f.markup(r.text)})
			continue
		}
		filled = append(filled, Reference{Page: r.page, Number: b.numbers[r.page], Text: template.HTML(template.HTMLEscapeString(b.titleOf(r.page)))})
	}
	return filled
}

// titleOf returns the title of any page of the book, bound or not.
func (b *binder) titleOf(name string) string {
	for _, p := range b.book.pages {
		if p.name == name {
			f := filler{binder: b, page: p}
			return f.plain(p.title)
		}
	}
	return name
}

// holds says whether what depends on a condition is bound.
func (b *binder) holds(c condition) bool {
	if !c.given() {
		return true
	}
	fig, ok := b.figure(c.key, c.at)
	return ok && c.met(fig, b.style)
}

// figure returns the figure with the key, or reports that there is none, with
// the nearest keys that there are.
func (b *binder) figure(key string, at span) (figure.Figure, bool) {
	fig, ok := b.figures.Get(key)
	if !ok {
		var known []string
		for _, f := range b.figures.All() {
			known = append(known, f.Key)
		}
		b.wrong(at, fmt.Sprintf("there is no figure %q", key), didYouMean(key, known, "figures.json of any binder lists the keys"))
	}
	return fig, ok
}

func (b *binder) wrong(at span, wrong, remedy string) {
	b.faults.Add(fault.Fault{At: at.place(), Wrong: wrong, Remedy: remedy})
}
