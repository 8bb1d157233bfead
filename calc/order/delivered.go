package order

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Name is what a job file calls the line: its key without what all keys have.
func (l Line) Name() string {
	return strings.TrimPrefix(strings.TrimPrefix(l.Key, "order."), "fastener.")
}

// DeliveredAs is the name under which a job file says that the line has come: the
// size for sticks.
func (l Line) DeliveredAs() string {
	if l.Long != nil {
		size, _, _ := strings.Cut(l.What, ",")
		return size
	}
	return l.Name()
}

// receive takes what has come off the lines; those of which all has come leave the
// list. Sticks have left the cutting plan before.
func (o *Order) receive(delivered map[string]job.Delivery, style measure.Style) {
	o.Needed = o.Lines
	if len(delivered) == 0 {
		return
	}
	o.Lines = nil
	var came []string
	for _, l := range o.Needed {
		if d, ok := delivered[l.Name()]; ok && d.Count > 0 {
			came = append(came, fmt.Sprintf("%d %s of %s", d.Count, unitsOf(d.Count, l.Unit), l.Short()))
			l.Working += fmt.Sprintf("; less %d that have come", d.Count)
			l.Count = max(0, l.Count-d.Count)
		}
		if l.Count > 0 {
			o.Lines = append(o.Lines, l)
		} else {
			o.gone = append(o.gone, l)
		}
	}
	for _, size := range slices.Sorted(maps.Keys(delivered)) {
		sticks := map[measure.Length]int{}
		for _, long := range delivered[size].Sticks {
			sticks[long]++
		}
		for _, long := range slices.Sorted(maps.Keys(sticks)) {
			came = append(came, fmt.Sprintf("%d %s of %s, %s", sticks[long], unitsOf(sticks[long], "sticks"), size, long.Print(style)))
		}
	}
	o.came = strings.Join(came, "; ")
}

// stoneNames are lines that come and go with what is known of the ground.
var stoneNames = []string{"stone", "stone_on_cloth"}

// UnknownGoods reports what has come and stands on no line of the order, nor is
// timber of the frame.
func (o *Order) UnknownGoods(j *job.Job, f *frame.Frame) fault.List {
	var faults fault.List
	names := slices.Clone(stoneNames)
	for _, l := range o.Needed {
		if l.Long == nil && !slices.Contains(names, l.Name()) && l.Key != "order.delivery" {
			names = append(names, l.Name())
		}
	}
	for _, s := range []job.Section{f.Sections.Joist, f.Sections.Rim, f.Sections.Beam, f.Sections.Post} {
		if !slices.Contains(names, s.Size) {
			names = append(names, s.Size)
		}
	}
	for _, good := range slices.Sorted(maps.Keys(j.Measured.Delivered)) {
		if slices.Contains(names, good) {
			continue
		}
		path, remedy := "measured.delivered."+good, "the order is of "+strings.Join(names, ", ")
		if near := fault.Nearest(good, names); near != "" {
			remedy = "did you mean " + near + "? T" + remedy[1:]
		}
		faults.Add(fault.Fault{At: j.NameAt(path), Path: path, Wrong: fmt.Sprintf("%q is nothing that this job orders", good), Remedy: remedy})
	}
	return faults
}
