package timber

import (
	"embed"
	"encoding/csv"
	"strconv"
)

// The tables keep the units of their source in the heading of each column, and
// each row names its source.
//
//go:embed tables/*.csv
var tables embed.FS

// row is one line of a table, by column heading.
type row map[string]string

// number returns the value in a column; 0 for an empty one. The tables are part
// of the program, so a word that is no number is a slip of ours.
func (r row) number(column string) float64 {
	if r[column] == "" {
		return 0
	}
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic("strength: " + column + " of a table: " + err.Error())
	}
	return v
}

// readTable returns the lines of an embedded table in their order.
func readTable(name string) []row {
	file, err := tables.Open("tables/" + name)
	if err != nil {
		panic("strength: " + err.Error())
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic("strength: " + name + ": " + err.Error())
	}
	rows := make([]row, 0, len(lines)-1)
	for _, line := range lines[1:] {
		r := row{}
		for i, heading := range lines[0] {
			r[heading] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}
