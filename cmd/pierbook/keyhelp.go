package main

import (
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/content"
)

// printKeyHelp tells of one key with an example and where it prints, or lists
// the keys of a map. It says whether there is such a key.
func printKeyHelp(w, trouble io.Writer, path string) bool {
	var below []job.Key
	names := []string{}
	for _, key := range job.Keys() {
		if key.Path == path {
			printOneKey(w, key)
			return true
		}
		if strings.HasPrefix(key.Path, path+".") {
			below = append(below, key)
		}
		names = append(names, key.Path)
		for i, sign := range key.Path {
			if sign == '.' && !slices.Contains(names, key.Path[:i]) {
				names = append(names, key.Path[:i])
			}
		}
	}
	for _, key := range below {
		printKey(w, key)
	}
	if len(below) > 0 {
		return true
	}
	fmt.Fprintf(trouble, "pierbook help: the job file has no key %q\n", path)
	if near := fault.Nearest(path, names); near != "" {
		fmt.Fprintf(trouble, "  did you mean: pierbook help job %s\n", near)
	} else if ends := endingWith(path, names); len(ends) > 0 {
		fmt.Fprintf(trouble, "  did you mean one of: %s\n", strings.Join(ends, ", "))
	} else {
		fmt.Fprintln(trouble, "  pierbook help job lists them all; a star stands for a name of yours, such as piers.*.bed")
	}
	return false
}

// endingWith returns the keys whose last name is the one asked for.
func endingWith(name string, keys []string) []string {
	var ends []string
	for _, key := range keys {
		if strings.HasSuffix(key, "."+name) && len(ends) < 8 {
			ends = append(ends, key)
		}
	}
	return ends
}

func printOneKey(w io.Writer, key job.Key) {
	printKey(w, key)
	fmt.Fprintf(w, "\n  written so:\n\n%s\n", indented(exampleOf(key)))
	if sheets := sheetsShowing(key.Path); len(sheets) > 0 {
		fmt.Fprintf(w, "  prints in the sample, itself or in what is worked out from it, on: %s\n", strings.Join(sheets, ", "))
	}
	if defaultWords(key) != "" {
		fmt.Fprintln(w, "  left out, its default and where that comes from stand on the sheet Assumptions")
	}
	fmt.Fprintln(w, "  pierbook why JOB KEY follows a figure of your own job down to its keys")
}

// starNames are names that may stand for the stars of a path.
var starNames = map[string]string{"pier": "A1", "line": "A", "side": "A1-A5", "reading": "A1", "point": "A1", "size": "2x6", "part": "panel", "question": "utilities", "step": "dig", "spot": "tank"}

// exampleOf returns a key as it is written in a file, a line for each map.
func exampleOf(key job.Key) string {
	value := key.Kind.Example
	if len(key.Choices) > 0 && value == "" {
		value = key.Choices[0]
	}
	if d := key.Default.Imperial; d != "" {
		value = d
	}
	if strings.ContainsAny(value, "#%") || strings.HasPrefix(value, "$") {
		value = `"` + value + `"`
	}
	var b strings.Builder
	names, star := strings.Split(key.Path, "."), 0
	for depth, name := range names {
		if name == "*" {
			kind := key.Stars[star]
			star++
			if name = starNames[kind]; name == "" {
				name = strings.ReplaceAll(kind, " ", "_") + "_1"
			}
		}
		b.WriteString(strings.Repeat("  ", depth) + name + ":")
		if depth == len(names)-1 {
			b.WriteString(" " + value)
		}
		b.WriteString("\n")
	}
	return b.String()
}

func indented(text string) string {
	return "    " + strings.ReplaceAll(strings.TrimRight(text, "\n"), "\n", "\n    ") + "\n"
}

// mostSheets is how many sheets are named; a length of the frame is on nearly all.
const mostSheets = 10

// sheetsShowing returns the titles of the built-in pages that print a key of the
// sample job, or a figure worked out from it.
func sheetsShowing(path string) []string {
	plan, faults := work(content.Sample, content.SampleJob)
	if !faults.Empty() {
		return nil
	}
	keys := map[string]bool{path: true}
	for _, f := range plan.Figures.All() { // each stands after those it comes from
		if slices.ContainsFunc(f.From, func(from string) bool { return keys[from] }) {
			keys[f.Key] = true
		}
	}
	pages := content.BuiltIn().Pages
	files, _ := fs.Glob(pages, "*.md")
	var titles []string
	for _, file := range files {
		text, err := fs.ReadFile(pages, file)
		if err != nil || !printsAny(string(text), keys) {
			continue
		}
		if len(titles) == mostSheets {
			return append(titles, "…")
		}
		titles = append(titles, titleOf(string(text)))
	}
	return titles
}

// printsAny says whether a page holds one of the keys in braces.
func printsAny(page string, keys map[string]bool) bool {
	for _, part := range strings.Split(page, "{")[1:] {
		key, _, _ := strings.Cut(part, "}")
		key, _, _ = strings.Cut(key, ":")
		if keys[key] {
			return true
		}
	}
	return false
}

func titleOf(page string) string {
	for line := range strings.Lines(page) {
		if title, ok := strings.CutPrefix(line, "title "); ok {
			return strings.TrimSpace(title)
		}
	}
	return ""
}
