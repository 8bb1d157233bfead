package main

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"maps"
	"path"
	"slices"
	"sync"

	"pierbook/calc"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/content"
	"pierbook/layouts"
	"pierbook/layouts/blocks"
	"pierbook/layouts/spreadsheet"
)

// library holds the pages, each set read once and shared by all jobs that use
// it and may read the same.
type library struct {
	mutex sync.Mutex
	books map[shelf]func() (*content.Book, fault.List)
}

// shelf is a folder of pages, and the job's folder that it is read from.
type shelf struct{ folder, from string }

func newLibrary() *library {
	return &library{books: map[shelf]func() (*content.Book, fault.List){}}
}

// book returns the built-in pages with the shop's own laid over them.
func (l *library) book(files fs.FS, folder string) (*content.Book, fault.List) {
	at := shelf{folder: folder}
	if own, ok := files.(reading); ok && folder != "" {
		at.from = path.Dir(own.job)
	}
	l.mutex.Lock()
	read, known := l.books[at]
	if !known {
		read = sync.OnceValues(func() (*content.Book, fault.List) { return readBook(files, folder) })
		l.books[at] = read
	}
	l.mutex.Unlock()
	return read()
}

func readBook(files fs.FS, folder string) (*content.Book, fault.List) {
	if folder == "" {
		return content.Read(content.BuiltIn())
	}
	own, err := fs.Sub(files, folder)
	if err != nil {
		var faults fault.List
		faults.Add(fault.Fault{At: fault.Place{File: folder}, Wrong: err.Error(), Remedy: "name a folder of pages beside the job file"})
		return nil, faults
	}
	return content.Read(content.BuiltIn(), content.Layer{Pages: own, Data: own, Folder: folder})
}

// bookFor returns the pages of a plan's job. It reports answers to questions
// that the pages do not ask, which would be lost without a word.
func (l *library) bookFor(p *calc.Plan, files fs.FS) (*content.Book, fault.List) {
	book, faults := l.book(files, p.Job.Pages)
	if !faults.Empty() {
		return nil, faults
	}
	asked := book.QuestionIDs()
	for _, id := range slices.Sorted(maps.Keys(p.Job.Asked)) {
		if !slices.Contains(asked, id) {
			faults.Add(calc.NotAmong(p.Job, "asked."+id, id, "a question of the binder", asked))
		}
	}
	return book, faults
}

// wrongPages reports what is wrong with the pages of a plan's job and what a
// shop's own ask for that the job does not have. Nothing is drawn for it.
func wrongPages(p *calc.Plan, files fs.FS, pages *library) fault.List {
	book, faults := pages.bookFor(p, files)
	if !faults.Empty() || p.Job.Pages == "" {
		return faults
	}
	made, _ := blocks.Of(p)
	for name, maker := range made {
		maker.Make = func(content.Call) template.HTML { return "" }
		made[name] = maker
	}
	_, faults = book.Bind(p.Figures, p.Style, made)
	_, bad := book.BindClient(p.Figures, p.Style, made)
	faults.Join(bad)
	return faults
}

// work reads a job file and works it through.
func work(files fs.FS, name string) (*calc.Plan, fault.List) {
	j, faults := job.Read(files, name)
	if !faults.Empty() {
		return nil, faults
	}
	plan, faults := calc.Work(j)
	if plan != nil {
		plan.MadeBy(madeBy())
	}
	return plan, faults
}

// bind makes the files of a job's binder.
func bind(p *calc.Plan, from fs.FS, pages *library) (map[string][]byte, fault.List, error) {
	return bindSet(p, from, pages, "")
}

// bindSet makes the files of one set of a job's sheets with the figures of the
// issue; without a set, those of the whole binder.
func bindSet(p *calc.Plan, from fs.FS, pages *library, asked content.Set) (map[string][]byte, fault.List, error) {
	book, faults := pages.bookFor(p, from)
	if !faults.Empty() {
		return nil, faults, nil
	}
	made, trouble := blocks.Of(p)
	sheets, faults := book.Bind(p.Figures, p.Style, made)
	forClient, bad := book.BindClient(p.Figures, p.Style, made)
	faults.Join(bad)
	if !faults.Empty() || trouble.Err != nil {
		return nil, faults, trouble.Err
	}
	sets := deal(p, sheets)
	type file struct {
		name string
		make func() ([]byte, error)
	}
	list := []file{{figuresFile, func() ([]byte, error) { return figuresOf(p, sheets...) }}}
	if asked != "" {
		names, err := chosen(p.Job.Name, asked, sets)
		if err != nil {
			return nil, faults, err
		}
		for _, set := range names {
			list = append(list, file{setFile(set), func() ([]byte, error) { return binderPage(p, sheets, sets, set) }})
		}
	} else {
		list = append(list,
			file{binderFile, func() ([]byte, error) { return binderPage(p, sheets, sets, content.SetAll) }},
			file{clientFile, func() ([]byte, error) { return clientPage(p, forClient) }},
			file{piersFile, func() ([]byte, error) { return spreadsheet.Piers(p) }},
			file{cutsFile, func() ([]byte, error) { return spreadsheet.Cuts(p) }},
			file{orderFile, func() ([]byte, error) { return spreadsheet.Order(p) }})
	}
	files := map[string][]byte{}
	for _, file := range list {
		made, err := file.make()
		if err != nil {
			return nil, faults, fmt.Errorf("making %s: %w", file.name, err)
		}
		files[file.name] = made
	}
	return files, faults, nil
}

func binderPage(p *calc.Plan, sheets []content.Sheet, sets []layouts.PrintSet, only content.Set) ([]byte, error) {
	var b bytes.Buffer
	if only == content.SetAll {
		only = "" // the page offers the others
	}
	err := layouts.WriteBinder(&b, layouts.Binder{Job: heading(p), Sheets: sheets, Banners: banners(p), Sets: sets, Only: only})
	return b.Bytes(), err
}

// clientPage leaves the address out unless the job lets the client's page show it.
func clientPage(p *calc.Plan, sheets []content.Sheet) ([]byte, error) {
	var b bytes.Buffer
	h := heading(p)
	if !p.Job.ClientPage.Address {
		h.Address = ""
	}
	err := layouts.WriteClient(&b, layouts.Binder{Job: h, Sheets: sheets, Banners: banners(p)})
	return b.Bytes(), err
}

func heading(p *calc.Plan) layouts.Job {
	j := p.Job
	return layouts.Job{Name: j.Name, Client: j.Client, Address: j.Address, Revision: j.Revision, Issued: j.Issued, Progress: string(p.Job.Progress())}
}

func banners(p *calc.Plan) []layouts.Banner {
	var list []layouts.Banner
	if why := p.Stop(); why != "" {
		list = append(list, layouts.NotForConstruction(why))
	}
	if p.Job.Asked["utilities"].Number == "" {
		list = append(list, layouts.DoNotDig("No utility ticket number stands in the job file."))
	}
	return list
}

func figuresOf(p *calc.Plan, sheets ...content.Sheet) ([]byte, error) {
	var b bytes.Buffer
	issue := figure.Issue{Job: figure.Heading{Name: p.Job.Name, Revision: p.Job.Revision}, Program: p.Program, Progress: string(p.Job.Progress()), Sheets: blocks.Issued(sheets)}
	issue.Since = p.SinceLast(issue.Sheets)
	err := figure.WriteJSON(&b, issue, p.Figures, p.Style)
	return b.Bytes(), err
}

// entryOf is the line of a job on the front page.
func entryOf(p *calc.Plan) layouts.Entry {
	return layouts.Entry{Folder: p.Job.Slug(), Name: p.Job.Name, Revision: p.Job.Revision, Progress: string(p.Job.Progress()),
		Checks: p.Figures.Text("checks.summary", p.Style), Stop: p.Stop() != "", NextHold: p.Figures.Text("job.next_hold", p.Style)}
}
