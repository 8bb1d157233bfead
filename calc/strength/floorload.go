package strength

import (
	"cmp"
	"fmt"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// loadOfUse returns the floor load that the use of the job asks for, and whether
// it asks for one.
func loadOfUse(j *job.Job) (measure.Stress, bool) {
	use, known := trade.FindUse(j.Platform.Use)
	if !known {
		return 0, false
	}
	text := use.Load.Imperial
	if j.Units == measure.Metric {
		text = use.Load.Metric
	}
	load, err := measure.ParseStress(text)
	return load, err == nil
}

// belowTheUse says that the floor load given is less than that of the use, empty
// when it is not.
func belowTheUse(j *job.Job) string {
	usual, known := loadOfUse(j)
	if given := j.Platform.FloorLoad; known && given*allButAsGiven < usual {
		style := j.Style()
		return fmt.Sprintf("Floor load: %s as given, less than the %s of the use %s. The checks hold for what was given, not for the use.", given.Print(style), usual.Print(style), j.Platform.Use)
	}
	return ""
}

// floorLoadFigures say whether the floor load is that of the use, so that no page
// calls one so that is not.
func (s *Strength) floorLoadFigures() []figure.Figure {
	usual, known := loadOfUse(s.job)
	given := s.job.Platform.FloorLoad
	same := measure.Word("no")
	if known && given*allButAsGiven >= usual && given <= usual*allButAsGiven {
		same = "yes"
	}
	below := cmp.Or(belowTheUse(s.job), "none")
	from := []string{"platform.floor_load", "platform.use"}
	return []figure.Figure{
		{Key: "floor_load.of_use", Means: "the floor load is that of the use", Value: same, Origin: figure.Computed, Formula: "floor load = that of the use", Working: string(same), From: from},
		{Key: "floor_load.below_use", Means: "what of the use's floor load is not counted", Value: measure.Word(below), Origin: figure.Computed, Formula: "floor load < that of the use", Working: below, From: from},
	}
}
