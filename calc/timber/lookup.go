package timber

import (
	"fmt"

	"pierbook/calc/fault"
	"pierbook/calc/job"
	"pierbook/calc/loads"
	"pierbook/calc/trade"
)

// NewMember looks a section's values up and adjusts them. The error names the
// choices there are, see [TimberFault].
func NewMember(name string, timber job.Timber, s job.Section, repetitive bool) (Member, error) {
	ref, err := LookUp(timber, s)
	service := Service{Wet: timber.Wet, Incised: timber.Incised, Repetitive: repetitive}
	return Member{Name: name, Section: s, Service: service, Values: Adjust(ref, s, service)}, err
}

// TimberFault points at what would have to change: the species, the grade or the
// section, of the job's timber or of the member's own.
func TimberFault(j *job.Job, path string, own bool, err error) fault.Fault {
	e := err.(lookUpError)
	at := path + ".size"
	if e.path != "" {
		at = "timber." + e.path
		if own {
			at = path + "." + e.path
		}
	}
	return fault.Fault{At: j.At(at), Path: at, Wrong: e.wrong, Remedy: e.remedy}
}

// WeightOf returns what the frame's timber weighs: as given, or by the specific
// gravity of the species at 15 per cent moisture dry and 19 wet.
func WeightOf(j *job.Job) loads.TimberWeight {
	timber := j.Timber
	if timber.Density > 0 {
		return loads.TimberWeight{Density: timber.Density, Source: j.Basis("timber.density")}
	}
	moisture := 15.0
	if timber.Wet {
		moisture = 19
	}
	s, ok := trade.FindSpecies(timber.Species)
	if !ok {
		return loads.TimberWeight{}
	}
	return loads.TimberWeight{Density: s.DensityAt(moisture), Source: fmt.Sprintf("G %.2f at %.0f%% moisture, %s", float64(s.Gravity), moisture, s.Source)}
}
