package strength

import (
	"encoding/binary"
	"math"
)

// gauges keeps prepared runs by their layout: lines, plies and candidates of one
// layout share them.
type gauges struct {
	known map[string]*gauge
	slab  slab
}

func newGauges() *gauges { return &gauges{known: map[string]*gauge{}} }

// of returns the gauge of a run, prepared once.
func (g *gauges) of(r run, marks []float64) (*gauge, error) {
	key := binary.LittleEndian.AppendUint16(make([]byte, 0, 16*(len(r.supports)+len(marks)+2)), uint16(len(r.supports)))
	add := func(v float64) { key = binary.LittleEndian.AppendUint64(key, math.Float64bits(v)) }
	add(r.start)
	add(r.end)
	for i, s := range r.supports {
		add(s)
		if r.hinges[i] {
			key = append(key, 1)
		} else {
			key = append(key, 0)
		}
	}
	for _, m := range marks {
		add(m)
	}
	if known, ok := g.known[string(key)]; ok {
		return known, nil
	}
	made, err := measureRun(r, marks, &g.slab)
	if err == nil {
		g.known[string(key)] = made
	}
	return made, err
}

func mustField(g *gauge, loads []push) field {
	f, err := g.field(loads)
	if err != nil {
		panic(err.Error()) // the run was solved when it was prepared
	}
	return f
}
