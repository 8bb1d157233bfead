package diagrams

import (
	"strconv"

	"pierbook/calc/measure"
)

const (
	ft = measure.Foot
	in = measure.Inch
	mm = measure.Millimetre
)

var (
	imperial = measure.Style{System: measure.Imperial, Fraction: measure.Sixteenth}
	metric   = measure.Style{System: measure.Metric}
)

// site is a made-up job that every sample drawing is taken from.
type site struct {
	name     string
	style    measure.Style
	long     measure.Length
	wide     measure.Length
	lines    int
	perLine  int
	left     bool
	planned  bool
	longName bool
}

// sites are the usual one, a small metric one, and extremes.
var sites = []site{
	{"shed", imperial, 16 * ft, 12 * ft, 3, 5, true, false, false},
	{"planned", imperial, 16 * ft, 12 * ft, 3, 5, true, true, true},
	{"small", metric, 3600 * mm, 2400 * mm, 2, 3, false, false, false},
	{"least", imperial, 6 * ft, 4 * ft, 2, 2, false, false, true},
	{"long", imperial, 40*ft + 7*in/16, 8*ft + 3*in/16, 2, 9, true, false, true},
	{"wide", metric, 4801 * mm, 7193 * mm, 5, 4, true, false, true},
	{"many", imperial, 24 * ft, 20*ft + 11*in + 15*in/16, 5, 9, false, false, true},
}

func (j site) inset() measure.Length { return 2*in + 3*in/4 }

func (j site) grid() Grid {
	g := Grid{Length: j.long, Width: j.wide, LinesGoLeft: j.left}
	for i := range j.lines {
		y := j.inset() + (j.wide-2*j.inset()).Part(i, j.lines-1)
		name := string(rune('A' + i))
		g.Lines = append(g.Lines, GridLine{Name: name, Y: y, End: j.long})
		for k := range j.perLine {
			x := j.inset() + (j.long-2*j.inset()).Part(k, j.perLine-1)
			g.Piers = append(g.Piers, GridPier{Name: name + strconv.Itoa(k+1), Line: i, X: x, Y: y})
		}
	}
	return g
}

// joists returns the centres of the joists, 16 in apart, the last at the end.
func (j site) joists() []measure.Length {
	half := 3 * in / 4
	list := []measure.Length{half}
	for x := 16 * in; x < j.long-2*half; x += 16 * in {
		list = append(list, x)
	}
	return append(list, j.long-half)
}

// ground is a made-up slope with a hump, in height over the bench mark.
func (j site) ground(x, y measure.Length) measure.Length {
	return -x.Part(1, 24) - y.Part(1, 60) + (x-j.long/2).Abs().Part(-1, 30) + 3*in
}

func (j site) words(short, long string) string {
	if j.longName {
		return long
	}
	return short
}
