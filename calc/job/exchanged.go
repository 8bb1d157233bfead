package job

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
)

// exchangedSides reports that all names of piers would fit a frame whose length
// and width are exchanged: of two numbers that is the slip most often made.
func (j *Job) exchangedSides() fault.List {
	var faults fault.List
	turned := j.turned()
	names := turned.pierNames()
	if j.Platform.Length == j.Platform.Width || names == nil {
		return faults
	}
	if fits := turned.CheckPiers(names); !fits.Empty() {
		return faults
	}
	faults.Add(fault.Fault{At: j.At("platform.length"), Path: "platform.length",
		Wrong: fmt.Sprintf("length and width look exchanged: with %s by %s the piers would run from %s to %s, and all that are named would be there",
			turned.Platform.Length.Print(j.Style()), turned.Platform.Width.Print(j.Style()), names[0], names[len(names)-1]),
		Remedy: "write the length along the beams and the width across them"})
	return faults
}

// turned returns the job with length and width exchanged, and with the numbers of
// lines and piers that follow from them where the job leaves them out.
func (j *Job) turned() *Job {
	turned := *j
	turned.Platform.Length, turned.Platform.Width = j.Platform.Width, j.Platform.Length
	keys := Keys()
	for i := range keys {
		key := &keys[i]
		if key.Path != "frame.beams.lines" && key.Path != "frame.piers.per_line" {
			continue
		}
		if e, there := j.Entry(key.Path); !there || e.Origin != figure.Assumed {
			continue
		}
		var v value
		if d, ok := key.defaultFor(&turned); ok && key.readScalar(&v, d.text(turned.Units)) == nil {
			key.put(&turned, v)
		}
	}
	return &turned
}
