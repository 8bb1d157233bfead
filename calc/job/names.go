package job

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"pierbook/calc/fault"
)

// The names that stand for stars in the table of keys.
var (
	pierName = regexp.MustCompile(`^[A-HJ-NP-Z][1-9][0-9]?$`)
	lineName = regexp.MustCompile(`^[A-HJ-NP-Z]$`)
	sideName = regexp.MustCompile(`^[A-HJ-NP-Z][1-9][0-9]?-[A-HJ-NP-Z][1-9][0-9]?$`)
	spotName = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_-]{0,23}$`)
	goodName = regexp.MustCompile(`^[a-z0-9][a-z0-9_.-]{0,59}$`)
	stepName = regexp.MustCompile(`^[a-z][a-z0-9_-]{0,39}$`)
)

const (
	benchMark = "bench_mark"
	closing   = "close"
	boards    = "boards" // the yard's stock of boards for the surface
)

// starName returns the name that stands for a star, in its one form, and
// reports a name that cannot be one.
func (r *reader) starName(path string, p pair, kind string) (string, bool) {
	if kind == "size" || kind == "good" {
		if section, ok := ParseSize(p.key); ok {
			return section.Size, true
		}
		if p.key == boards {
			return boards, true
		}
	}
	return p.key, r.name(path, p, kind)
}

// name reports a key that cannot be a name of its kind.
func (r *reader) name(path string, p pair, kind string) bool {
	remedy := ""
	switch kind {
	case "pier":
		if pierName.MatchString(p.key) {
			return true
		}
		remedy = "write a pier by its line and number, such as B3; lines are A, B, C …, without I and O"
	case "line":
		if lineName.MatchString(p.key) {
			return true
		}
		remedy = "write the letter of a beam line: A, B, C …, without I and O"
	case "side":
		if sideName.MatchString(p.key) {
			return true
		}
		remedy = "write two corners by their piers, such as A1-A5"
	case "reading":
		if pierName.MatchString(p.key) || p.key == benchMark || p.key == closing {
			return true
		}
		remedy = r.near(p.key, []string{benchMark, closing}) + "write a pier such as B3, bench_mark, or close for the last sight back to it"
	case "point":
		if spotName.MatchString(p.key) && p.key != closing {
			return true
		}
		remedy = "write bench_mark, a pier such as B3, or the name of a spot"
	case "spot":
		if spotName.MatchString(p.key) && !slices.Contains([]string{benchMark, closing, "unit"}, p.key) {
			return true
		}
		remedy = "name it with a letter first, then letters, digits, hyphens; bench_mark, close and unit are taken"
	case "floor opening":
		if spotName.MatchString(p.key) {
			return true
		}
		remedy = "name it with a letter first, then letters, digits, _ and hyphens, at most 24 of them"
	case "size":
		remedy = r.near(p.key, append(SizeNames(), boards)) + "write a size such as 2x6 or 45x145 mm, or boards"
	case "good":
		if goodName.MatchString(p.key) {
			return true
		}
		remedy = "write a size of timber such as 2x6, or the name that a line of the order has in order.csv, such as block"
	case "part":
		if slices.Contains(Parts(), p.key) {
			return true
		}
		remedy = r.near(p.key, Parts()) + "the parts with a price are: " + strings.Join(Parts(), ", ")
	default:
		if stepName.MatchString(p.key) {
			return true
		}
		remedy = "use small letters, digits and _, such as mark_piers"
	}
	r.wrong(path, p.at, fmt.Sprintf("%q is not the name of a %s", p.key, kind), remedy)
	return false
}

func (r *reader) near(name string, choices []string) string {
	if near := fault.Nearest(name, choices); near != "" {
		return "did you mean " + near + "? Or "
	}
	return ""
}
