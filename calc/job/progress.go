package job

// Progress says how far the job has come, by what its file holds.
type Progress string

// The stages in the order of the work. Their words are printed on every sheet.
const (
	Planned       Progress = "planned"
	Surveyed      Progress = "surveyed"
	HolesDug      Progress = "holes dug"
	SeatsRead     Progress = "seats read"
	PostsCut      Progress = "posts cut"
	FrameMeasured Progress = "frame measured"
	AsBuilt       Progress = "as built"
)

// Progress reads the stage off what the job holds: the last one of which
// anything was read. The bench mark alone is no reading of a seat or a floor.
func (j *Job) Progress() Progress {
	switch m := j.Measured; {
	case anyPlace(m.Finished):
		return AsBuilt
	case len(m.FrameSides) > 0:
		return FrameMeasured
	case len(m.PostsCut) > 0:
		return PostsCut
	case anyPlace(m.Seats):
		return SeatsRead
	case len(m.Holes) > 0:
		return HolesDug
	case j.AnySights():
		return Surveyed
	}
	return Planned
}

// anyPlace tells readings at piers from those on the bench mark.
func anyPlace[V any](readings map[string]V) bool {
	for name := range readings {
		if name != benchMark && name != closing {
			return true
		}
	}
	return false
}

// AnySights tells a job whose ground was read from one that is only planned.
func (j *Job) AnySights() bool {
	for _, sights := range j.Ground.SetUps {
		if len(sights) > 0 {
			return true
		}
	}
	return false
}
