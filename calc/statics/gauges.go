package statics

import (
	"encoding/binary"
	"math"
	"slices"
)

// Gauges keeps prepared runs by their layout: lines, plies and candidates of one
// layout share them.
type Gauges struct {
	known map[string]*Gauge
	slab  slab
}

func NewGauges() *Gauges { return &Gauges{known: map[string]*Gauge{}} }

// Of returns the gauge of a run, prepared once. Marks are places where point loads
// will stand, borders those where spread ones begin or end.
func (g *Gauges) Of(r Run, marks []float64, borders ...float64) (*Gauge, error) {
	key := binary.LittleEndian.AppendUint16(make([]byte, 0, 16*(len(r.Supports)+len(marks)+len(borders)+2)), uint16(len(r.Supports)))
	add := func(v float64) { key = binary.LittleEndian.AppendUint64(key, math.Float64bits(v)) }
	add(r.Start)
	add(r.End)
	for i, s := range r.Supports {
		add(s)
		if r.Hinges[i] {
			key = append(key, 1)
		} else {
			key = append(key, 0)
		}
	}
	key = binary.LittleEndian.AppendUint16(key, uint16(len(marks)))
	for _, m := range append(slices.Clip(marks), borders...) {
		add(m)
	}
	if known, ok := g.known[string(key)]; ok {
		return known, nil
	}
	made, err := measureRun(r, marks, borders, &g.slab)
	if err == nil {
		g.known[string(key)] = made
	}
	return made, err
}

// Reset takes the room of all effects back that were handed out for one candidate
// of a search; none of them is good any more.
func (g *Gauges) Reset() { g.slab.reset() }

// placedAt returns what one newton per metre from one place to another, or one
// newton at a place, does to the run. It is worked once for each layout.
func (g *Gauge) placedAt(from, to float64) Effect {
	key := [2]float64{from, to}
	if known, ok := g.placed[key]; ok {
		return known
	}
	f := newEffect(len(g.Stations), len(g.Run.Supports))
	if err := g.read(f, g.Run.Inside(Push{from, to, 1})); err != nil {
		panic(err.Error()) // the run was solved when it was prepared
	}
	g.placed[key] = f
	return f
}
