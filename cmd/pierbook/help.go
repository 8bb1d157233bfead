package main

import (
	"fmt"
	"io"
	"slices"

	"pierbook/calc/job"
)

const aboutText = `pierbook turns a job file into a printable field manual (a binder) for building
a dead-level timber platform on pier blocks.

`

const exitText = `
Exit status: 0 done, 1 faults in a job or failing checks, 2 wrong usage.
`

var helpTexts = map[string]string{
	"make": `pierbook make [JOB...] [-o DIR] [-set NAME] [-also DIR]...

Writes the binder of each job file into DIR/NAME, where NAME is made from the
job's name: index.html (the binder, to print or to open on a phone),
client.html (for the client), figures.json, piers.csv, cuts.csv, order.csv.
Without a job it writes the binder of the built-in sample. With several
binders in DIR it also writes the front page DIR/index.html.

A binder appears whole or not at all. A faulty job does not spoil the others.
A job that fails a check is bound with NOT FOR CONSTRUCTION on every sheet.

A hyphen in the place of a job reads it from standard input.

  -o DIR     where the binders go (binders)
  -set NAME  write just one set of the sheets, as DIR/NAME/set-NAME.html: crew,
             day (or day-1, day-2 …), saw-and-yard, office, drawings, changes,
             all. The page index.html offers the same sets for print.
  -also DIR  a further folder that jobs may read files from; a job reads from
             its own folder and below, and no link leads out of these
`,
	"check": `pierbook check JOB... [-also DIR]...

Reads and calculates each job, prints what is wrong or failing and the key
numbers. Writes nothing. A hyphen reads the job from standard input.

  -also DIR  a further folder that jobs may read files from; a job reads from
             its own folder and below, and no link leads out of these
`,
	"why": `pierbook why JOB KEY [-also DIR]...

Says where a figure comes from: the line of the job file, the default and its
source, or the sum with its numbers, down to the readings. The keys are in
figures.json of every binder: floor.height, pier.A1.post, joist.count, …

Of a thing, all its figures are listed: a pier (A1), a beam line (A), a sheet by
its number or title (sheet 7), a stick or a piece (4x4 no. 1, J7).

  -also DIR  a further folder that jobs may read files from; a job reads from
             its own folder and below, and no link leads out of these
`,
	"measured": `What was read on site goes under the key measured, and the binder is made
again from the same file. Write what the forms of the binder ask for, as it
comes: sides and diagonals of the strings, holes as dug, the rod on the seats
with the reading on the bench mark of that day, beams as measured, posts cut,
sticks counted, the finished floor. Posts are then cut to what was read, a post
that is cut is never issued again, and the cover says which sheets to replace.
What has come leaves the order: under measured.delivered, sticks by their size
(4x4: {8': 2}), all else by the name that order.csv has for it (block: 15).

`,
	"version": `pierbook version

Says which program this is: its version, the source it was built from where the
build kept a record of it, and what it was built with. figures.json and the
assumptions sheet of every binder carry the version.
`,
	"job": `The job file is YAML: a map of keys, listed here with what they mean. A dot
goes one map deeper (platform.length is the key length in the map platform);
a star stands for a name of yours, such as a pier's (piers.C1.bed), or for each
item of a list.

Keys marked * are required. Inside a part that a job may leave out (a door, a
wall, a probe, design values of timber) they are required only where that part
is written, and a required key with a default from another key may be left out
where that other is given: platform.use sets platform.floor_load. A job also
needs timber.species with timber.grade, or timber.values. All other keys have
a default, or stay blank; the assumptions sheet shows each default and its source.

shop: FILE lays a shop's file of the same keys under the job, map under map;
yard: FILE names a file with the keys of yard; none takes away what the shop set.
Both lie in the folder of the job or below, unless the command names another
folder to read from with -also.

`,
}

func printUsage(w io.Writer) {
	fmt.Fprint(w, aboutText)
	for _, c := range commands() {
		fmt.Fprintf(w, "  pierbook %-7s %s\n", c.name, c.summary)
	}
	fmt.Fprint(w, "\n  pierbook help COMMAND   tells more about a command\n  pierbook help job       lists the keys of the job file\n  pierbook help job KEY   tells of one key, with an example and where it prints\n  pierbook help measured  tells how readings are written back\n  pierbook help schema    prints a JSON Schema of it, for editors\n", exitText)
}

func printCommandHelp(w io.Writer, name string) {
	fmt.Fprint(w, helpTexts[name], exitText)
}

func runHelp(args []string, stdout, stderr io.Writer) int {
	switch {
	case len(args) == 0:
		printUsage(stdout)
	case len(args) == 2 && args[0] == "job":
		if !printKeyHelp(stdout, stderr, args[1]) {
			return wrongUsage
		}
	case len(args) > 1:
		fmt.Fprintln(stderr, "pierbook help: one command at a time\n  pierbook help COMMAND")
		return wrongUsage
	case args[0] == "job":
		printJobHelp(stdout)
	case args[0] == "measured":
		fmt.Fprint(stdout, helpTexts["measured"])
		printKeyHelp(stdout, stderr, "measured")
	case args[0] == "schema":
		fmt.Fprintf(stdout, "%s", job.Schema())
	case slices.ContainsFunc(commands(), func(c command) bool { return c.name == args[0] }):
		printCommandHelp(stdout, args[0])
	default:
		return unknownCommand(args[0], append(commands(), topics...), stderr)
	}
	return done
}

// topics are what help tells of besides the commands.
var topics = []command{{name: "help job"}, {name: "help measured"}, {name: "help schema"}, {name: "job"}, {name: "measured"}, {name: "schema"}}
