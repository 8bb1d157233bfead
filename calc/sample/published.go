package sample

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
)

// Row is a line of a file of published values, by column heading.
type Row map[string]string

// Number returns the value in a column, 0 for one without a number.
func (r Row) Number(column string) float64 {
	v, _ := strconv.ParseFloat(r[column], 64)
	return v
}

// Positive fails for a column without a number above 0.
func (r Row) Positive(column string) error {
	text, there := r[column]
	if !there {
		return fmt.Errorf("no column %s", column)
	}
	if v, err := strconv.ParseFloat(text, 64); err != nil || !(v > 0) || math.IsInf(v, 1) {
		return fmt.Errorf("%s is %q, not a number above 0", column, text)
	}
	return nil
}

// Published reads a file of published values.
func Published(name string) ([]Row, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(lines) < 2 {
		return nil, fmt.Errorf("no rows in %s", name)
	}
	rows := make([]Row, len(lines)-1)
	for i, line := range lines[1:] {
		rows[i] = Row{}
		for k, heading := range lines[0] {
			rows[i][heading] = line[k]
		}
	}
	return rows, nil
}
