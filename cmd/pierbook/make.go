package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"

	"pierbook/calc"
	"pierbook/calc/check"
	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/content"
	"pierbook/layouts"
)

func runMake(args []string, stdout, stderr io.Writer) int {
	options := flag.NewFlagSet("make", flag.ContinueOnError)
	out := options.String("o", "binders", "folder for the binders")
	typed := options.String("set", "", "one set of sheets only")
	folders := addAlso(options)
	jobs, exit, stop := parse(options, args, stdout, stderr)
	if stop {
		return exit
	}
	if *out == "" {
		fmt.Fprintln(stderr, "pierbook make: the folder after -o has no name\n  pierbook make JOB... -o DIR")
		return wrongUsage
	}
	if info, err := os.Stat(*out); err == nil && !info.IsDir() {
		fmt.Fprintf(stderr, "pierbook make: %s is a file, so no binder can go into it\n  name a folder after -o\n", *out)
		return faulty
	}
	var set content.Set
	if given(options, "set") {
		var known bool
		if set, known = setAsked(*typed); !known {
			fmt.Fprintf(stderr, "pierbook make: there is no set %q\n  write one of %s\n", *typed, listOfSets())
			return wrongUsage
		}
	}
	m, err := newMaking(jobs, *out, *folders)
	if err != nil {
		fmt.Fprintln(stderr, "pierbook make:", err)
		return faulty
	}
	m.set = set
	return m.run(stdout, stderr)
}

// making is one run of the make command.
type making struct {
	files  func(job string) fs.FS
	show   func(fault.List) fault.List // names files as the person typed them
	shown  func(string) string         // likewise for one name
	path   func(string) string         // of a job file; empty for the built-in sample
	names  []string                    // of the jobs among the files
	out    string
	set    content.Set // the one set that is made, empty for whole binders
	pages  *library
	claims map[string]int // folder to the first job that asked for it
	twice  map[int]string // jobs whose folder another job has, to that job as typed
}

// outcome is what came of one job.
type outcome struct {
	job    string // as typed, when the program is at fault
	folder string
	made   []string // the files to open
	sheets string
	faults fault.List
	err    error
	bug    error    // what the program got wrong itself
	failed []string // failing checks, in words
	odd    []string // values out of the usual, in words
	open   []check.Remark
	since  string // that another version of the program made the issue before
	entry  layouts.Entry
	done   bool
}

func newMaking(jobs []string, out string, folders also) (*making, error) {
	m := &making{out: out, claims: map[string]int{}, twice: map[int]string{}}
	if len(jobs) == 0 {
		m.files, m.names, m.show = func(string) fs.FS { return content.Sample }, []string{content.SampleJob}, func(l fault.List) fault.List { return l }
		m.shown = func(string) string { return "the built-in sample" }
		m.path = func(string) string { return "" }
	} else {
		d, err := newDisk(folders)
		if err != nil {
			return nil, err
		}
		m.files, m.show, m.shown, m.path = d.files, d.relabelled, d.shown, d.path
		for _, typed := range jobs {
			name, err := d.name(typed)
			if err != nil {
				return nil, err
			}
			if !slices.Contains(m.names, name) { // a job given twice is made once
				m.names = append(m.names, name)
			}
		}
	}
	m.pages = newLibrary()
	return m, nil
}

// run makes all jobs, several at a time, and reports them in the order given.
// A job's plan is dropped as soon as its binder is written, so that memory does
// not grow with the number of jobs.
func (m *making) run(stdout, stderr io.Writer) int {
	leave, err := occupy(m.out, stderr)
	if err == nil {
		defer leave()
		err = tidyAll(m.out)
	}
	if err != nil {
		fmt.Fprintln(stderr, "pierbook make:", err)
		return faulty
	}
	if len(m.names) > 1 {
		m.claimFolders()
	}
	go m.readAhead()
	results := make([]chan outcome, len(m.names))
	for i := range results {
		results[i] = make(chan outcome, 1)
	}
	queue := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(m.names)) {
		workers.Go(func() {
			for i := range queue {
				results[i] <- m.one(i)
			}
		})
	}
	go func() {
		for i := range m.names {
			queue <- i
		}
		close(queue)
	}()
	exit := done
	entries := map[string]layouts.Entry{}
	for i := range results {
		r := <-results[i]
		if !m.report(r, stdout, stderr) {
			exit = faulty
		}
		if r.done {
			entries[r.folder] = r.entry
		}
	}
	workers.Wait()
	if len(entries) == 0 || m.set != "" {
		return exit
	}
	if err := writeFrontPage(m.out, entries, stdout); err != nil {
		fmt.Fprintln(stderr, "pierbook make: front page:", err)
		exit = faulty
	}
	return exit
}

// claimFolders finds jobs whose names lead to one folder before anything is
// written: neither of them may replace the other.
func (m *making) claimFolders() {
	folders := make([]string, len(m.names))
	var group sync.WaitGroup
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, name := range m.names {
		group.Go(func() {
			slots <- struct{}{}
			defer func() { <-slots }()
			// What goes wrong here goes wrong again, and is told, when the job is made.
			_ = guarded(name, func() {
				if j, faults := job.Read(m.files(name), name); faults.Empty() {
					folders[i] = j.Slug()
				}
			})
		})
	}
	group.Wait()
	for i, folder := range folders {
		if folder == "" {
			continue
		}
		if first, taken := m.claims[folder]; taken {
			m.twice[i], m.twice[first] = m.shown(m.names[first]), m.shown(m.names[i])
			continue
		}
		m.claims[folder] = i
	}
}

// readAhead reads the built-in pages, which nearly every job wants.
func (m *making) readAhead() {
	_ = guarded("", func() { m.pages.book(nil, "") }) // whoever asks for them next is told what went wrong
}

// one makes the binder of one job, whatever becomes of it.
func (m *making) one(i int) (r outcome) {
	if err := guarded(m.names[i], func() { r = m.bind(i) }); err != nil {
		return outcome{job: m.shown(m.names[i]), bug: err}
	}
	return r
}

func (m *making) bind(i int) (r outcome) {
	files := m.files(m.names[i])
	plan, faults := work(files, m.names[i])
	if !faults.Empty() {
		return outcome{faults: m.show(faults)}
	}
	if other, twice := m.twice[i]; twice {
		var list fault.List
		list.Add(fault.Fault{At: plan.Job.At("name"), Path: "name",
			Wrong: fmt.Sprintf("%q leads to the folder %s, and so does the name in %s", plan.Job.Name, plan.Job.Slug(), other), Remedy: "give each job a name of its own"})
		return outcome{faults: m.show(list)}
	}
	own := markOf(plan.Job, m.path(m.names[i]), m.out)
	holder, found, err := holderOf(filepath.Join(m.out, plan.Job.Slug()))
	if err != nil {
		return outcome{err: err}
	}
	if found && !own.same(holder) {
		return outcome{faults: m.show(m.taken(plan.Job, holder))}
	}
	if last, ok := lastIssue(m.out, plan.Job.Slug()); ok {
		plan.CompareWith(last)
	}
	bound, faults, err := bindSet(plan, files, m.pages, m.set)
	if !faults.Empty() || err != nil {
		return outcome{faults: m.show(faults), err: err}
	}
	if bound[markFile], err = own.text(); err != nil {
		return outcome{err: err}
	}
	made := pagesAmong(bound, m.set)
	if err := carryOver(m.out, plan.Job.Slug(), bound); err != nil {
		return outcome{err: err}
	}
	r = outcome{folder: plan.Job.Slug(), made: made, entry: entryOf(plan), failed: failing(plan), odd: oddities(plan, m.shown), open: plan.Strength.Remarks, sheets: string(plan.Job.Progress())}
	if before, by, other := plan.OtherProgram(); other {
		r.since = fmt.Sprintf("%d figures changed since the issue before, which was made by version %s of this program; this one is %s: what changed may come from the program and not from the job", len(plan.Since.Changes), before, by)
	}
	if r.err = writeFolder(m.out, r.folder, bound); r.err == nil {
		r.done = true
	}
	return r
}

// taken reports that another job's binder stands where this one's would go.
func (m *making) taken(j *job.Job, holder mark) (list fault.List) {
	from := ""
	if holder.File != "" {
		from = ", made from " + holder.File
	}
	list.Add(fault.Fault{At: j.At("name"), Path: "name",
		Wrong:  fmt.Sprintf("%q leads to the folder %s, where the binder of another job stands: %q%s", j.Name, filepath.ToSlash(filepath.Join(m.out, j.Slug())), holder.Job, from),
		Remedy: "give each job a name of its own; if this is that job all the same, move its old binder away"})
	return list
}

// lastIssue reads the figures of the binder that this one will replace. One
// that cannot be read is as good as none.
func lastIssue(out, folder string) (calc.Issue, bool) {
	file, err := readPlain(filepath.Join(out, folder, figuresFile), mostFigures)
	if err != nil {
		return calc.Issue{}, false
	}
	issue, err := calc.ReadIssue(file)
	return issue, err == nil
}

// report prints what came of a job and says whether all is well.
func (m *making) report(r outcome, stdout, stderr io.Writer) bool {
	r.faults.Print(stderr)
	if r.err != nil {
		fmt.Fprintln(stderr, "pierbook make:", r.err)
	}
	if r.bug != nil {
		blame(stderr, r.job, r.bug)
	}
	if !r.done {
		return false
	}
	for _, file := range r.made {
		fmt.Fprintf(stdout, "%s  %s; %s\n", filepath.ToSlash(filepath.Join(m.out, r.folder, file)), r.entry.Progress, r.entry.Checks)
	}
	if r.since != "" {
		fmt.Fprintf(stdout, "%s: %s\n", r.folder, r.since)
	}
	for _, line := range r.failed {
		fmt.Fprintf(stderr, "%s: FAILS %s\n", r.folder, line)
	}
	for _, line := range r.odd {
		fmt.Fprintf(stderr, "%s: odd: %s\n", r.folder, line)
	}
	for _, remark := range r.open {
		if remark.Standing != check.Fails {
			fmt.Fprintf(stdout, "  %s: %s\n", remark.Standing, remark.Words)
		}
	}
	return len(r.failed) == 0
}

// writeFrontPage writes the page over all binders in the folder, when there is
// more than one; binders of earlier runs are taken from their figures.
func writeFrontPage(out string, entries map[string]layouts.Entry, stdout io.Writer) error {
	found, err := os.ReadDir(out)
	if err != nil {
		if os.IsNotExist(err) {
			return nil
		}
		return err
	}
	var list []layouts.Entry
	for _, folder := range found {
		name := folder.Name()
		if !folder.IsDir() || strings.HasPrefix(name, ".") {
			continue
		}
		if entry, ok := entries[name]; ok {
			list = append(list, entry)
		} else if entry, ok := earlier(out, name); ok {
			list = append(list, entry)
		}
	}
	if len(list) < 2 {
		return nil
	}
	path := filepath.Join(out, binderFile)
	if err := replaceFrontPage(path, func(w io.Writer) error { return layouts.WriteFrontPage(w, list) }); err != nil {
		return err
	}
	fmt.Fprintf(stdout, "%s  front page of %d binders\n", filepath.ToSlash(path), len(list))
	return nil
}

// earlier reads what the front page says about a binder of an earlier run.
func earlier(out, name string) (layouts.Entry, bool) {
	text, err := readPlain(filepath.Join(out, name, figuresFile), mostFigures)
	if err != nil {
		return layouts.Entry{}, false
	}
	var saved struct {
		Job      struct{ Name, Revision string }
		Progress string
		Figures  map[string]struct{ Text string }
	}
	if json.Unmarshal(text, &saved) != nil || saved.Job.Name == "" {
		return layouts.Entry{}, false
	}
	return layouts.Entry{Folder: name, Name: saved.Job.Name, Revision: saved.Job.Revision, Progress: saved.Progress,
		Checks: saved.Figures["checks.summary"].Text, Stop: saved.Figures["checks.stop"].Text == "yes", NextHold: saved.Figures["job.next_hold"].Text}, true
}
