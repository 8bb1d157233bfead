package job

// Progress says how far the job has come, by what its file holds.
type Progress string

// The four stages. Their words are printed on every sheet.
const (
	Planned   Progress = "planned"
	Surveyed  Progress = "surveyed"
	SeatsRead Progress = "seats read"
	AsBuilt   Progress = "as built"
)

// Progress reads the stage off what the job holds. The bench mark alone is no
// reading of a seat.
func (j *Job) Progress() Progress {
	switch {
	case len(j.Measured.Finished) > 0:
		return AsBuilt
	case j.anySeat():
		return SeatsRead
	case j.AnySights():
		return Surveyed
	}
	return Planned
}

func (j *Job) anySeat() bool {
	for name := range j.Measured.Seats {
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
