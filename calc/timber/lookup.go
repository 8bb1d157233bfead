package timber

import (
	"errors"

	"pierbook/calc/fault"
	"pierbook/calc/job"
)

// NewMember looks a section's values up, in the job's timber or in its own, and
// adjusts them. The fault names the choices there are, at what would have to
// change: the species, the grade or the section, whose key is path.
func NewMember(name string, j *job.Job, s job.Section, path string, shared bool) (Member, fault.List) {
	wood, of := j.Timber, "timber"
	if s.Timber != nil {
		wood, path, of = *s.Timber, path+".timber", path+".timber"
	}
	var faults fault.List
	ref, err := LookUp(wood, s)
	var missing lookUpError
	if errors.As(err, &missing) {
		at := path + ".size"
		if missing.path != "" {
			at = of + "." + missing.path
		}
		faults.Add(fault.Fault{At: j.At(at), Path: at, Wrong: missing.wrong, Remedy: missing.remedy})
	}
	service := Service{Wet: wood.Wet, Incised: wood.Incised, Repetitive: shared}
	return Member{Name: name, Section: s, Service: service, Values: Adjust(ref, s, service)}, faults
}
