package trade

import (
	"embed"
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/measure"
)

//go:embed tables/*.txt
var embedded embed.FS

// row is one line of a file, by column.
type row struct {
	at    string // the file and line, for a slip in it
	cells map[string]string
	under []row // the indented rows after it
}

// readTable returns the rows of a table's text. A row of another length than its
// heading panics: the tables are part of the program.
func readTable(name, text string) []row {
	var rows []row
	var heads [2][]string // of rows, and of rows under them
	number := 0
	for line := range strings.Lines(text) {
		number++
		at := fmt.Sprintf("trade: tables/%s.txt:%d: ", name, number)
		level := 0
		if strings.TrimLeft(line, " ") != line {
			level = 1
		}
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		cells := strings.Split(line, " | ")
		if heads[level] == nil {
			heads[level] = cells
			continue
		}
		if len(cells) != len(heads[level]) {
			panic(fmt.Sprintf("%s%d cells under %d headings", at, len(cells), len(heads[level])))
		}
		r := row{at: at, cells: make(map[string]string, len(cells))}
		for i, heading := range heads[level] {
			if cells[i] != "-" {
				r.cells[heading] = cells[i]
			}
		}
		if level == 0 {
			rows = append(rows, r)
			continue
		}
		if len(rows) == 0 {
			panic(at + "indented under no row")
		}
		last := &rows[len(rows)-1]
		last.under = append(last.under, r)
	}
	return rows
}

// text returns a cell, "" for an empty one.
func (r row) text(column string) string { return r.cells[column] }

// yes reads a cell that is yes or no.
func (r row) yes(column string) bool {
	switch r.cells[column] {
	case "yes":
		return true
	case "no":
		return false
	}
	panic(fmt.Sprintf("%s%s is %q, not yes or no", r.at, column, r.cells[column]))
}

// whole reads a whole number, 0 for an empty cell.
func (r row) whole(column string) int { return read(r, column, strconv.Atoi) }

func (r row) length(column string) measure.Length { return read(r, column, measure.ParseLength) }
func (r row) stress(column string) measure.Stress { return read(r, column, measure.ParseStress) }
func (r row) ratio(column string) measure.Ratio   { return read(r, column, measure.ParseRatio) }

// both reads a cell and the one of the other system, headed metric.
func (r row) both(column string) Both { return Both{r.text(column), r.text("metric")} }

// read reads a cell, zero for an empty one.
func read[T any](r row, column string, parse func(string) (T, error)) T {
	var value T
	text := r.cells[column]
	if text == "" {
		return value
	}
	value, err := parse(text)
	if err != nil {
		panic(r.at + column + ": " + err.Error())
	}
	return value
}

// Both is a value as a job file would write it in either system; empty when
// there is none.
type Both struct{ Imperial, Metric string }
