package trade

import "pierbook/calc/measure"

// Joint is a row of the fastening schedule: which nail a kind of joint takes, by
// the thickness of the piece it goes through, how many and how far apart.
type Joint struct {
	Of          string         // "panel", "joist to beam"
	UpTo        measure.Length // thickness of the piece, 0 for any
	Nail        Nail
	Each        int // at each place, 0 when they stand at a spacing
	Source      string
	Memory      bool
	edge, field spaced
}

// spaced is a spacing in both systems: at panel edges, or of a row.
type spaced struct{ imperial, metric measure.Length }

func (s spaced) in(system measure.System) measure.Length {
	if system == measure.Metric {
		return s.metric
	}
	return s.imperial
}

// Edge returns the spacing along panel edges that lie on framing, or of a row.
func (j Joint) Edge(system measure.System) measure.Length { return j.edge.in(system) }

// Field returns the spacing on framing between the edges of a panel.
func (j Joint) Field(system measure.System) measure.Length { return j.field.in(system) }

func readJoints(rows []row, nails []Nail) []Joint {
	list := make([]Joint, len(rows))
	for i, r := range rows {
		nail, known := findNail(nails, r.text("nail"))
		if !known {
			panic(r.at + "nails.txt has no " + r.text("nail"))
		}
		list[i] = Joint{Of: r.text("joint"), UpTo: r.length("up to"), Nail: nail, Each: r.whole("each"), Source: r.text("source"), Memory: r.yes("memory"),
			edge: spaced{r.length("edge"), r.length("edge metric")}, field: spaced{r.length("field"), r.length("field metric")}}
	}
	return list
}

// JointFor returns the row of the schedule for a kind of joint through a piece of
// a thickness: the first that goes so far.
func JointFor(of string, thickness measure.Length) Joint {
	j, ok := find(facts().joints, func(j Joint) bool { return j.Of == of && (j.UpTo == 0 || thickness <= j.UpTo) })
	if !ok {
		panic("trade: tables/joints.txt has no row for " + of)
	}
	return j
}
