package strength

import (
	"cmp"
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// BuildingNotice says that no building is counted, or that the usual one of the
// use was taken because the job says nothing of its own. It is empty where the
// job describes a building, and for a use whose floor lies open.
func BuildingNotice(j *job.Job) string {
	b, use := j.Building, j.Platform.Use
	_, stands := trade.BuildingOf(use)
	switch {
	case b != nil && b.Assumed:
		style := j.Style()
		return fmt.Sprintf("The building's own weight and shape, which the job does not give. In their place stands what is usual for the use %s: %s at its lightest, %s at its heaviest, walls %s high, a %s roof. "+
			"Write building with its own, or building: none.", use, b.WeightLeast.Print(style), b.WeightMost.Print(style), b.WallHeight.Print(style), b.Roof.Shape)
	case b != nil || !stands:
		return ""
	case use == "" && j.NoBuilding:
		return "No building is counted, as the job asks. What is checked is a bare floor."
	case use == "":
		return "No building is counted, for the job names neither a use nor a building: no walls, no roof, no snow on it and no wind. What is checked is a bare floor."
	}
	return fmt.Sprintf("No building is counted, as the job asks, though the use %s has one: no walls, no roof, no snow on it and no wind. What is checked is a bare floor.", use)
}

// buildingCounted puts the notice first among what the checks do not settle.
func (t *Trial) buildingCounted() {
	if words := BuildingNotice(t.job); words != "" {
		t.remarks = append([]check.Remark{{Standing: check.NotCounted, Words: words}}, t.remarks...)
	}
}

func (s *Strength) buildingFigure() figure.Figure {
	words := cmp.Or(BuildingNotice(s.job), "none")
	return figure.Figure{Key: "building.notice", Means: "what of the building is not counted", Value: measure.Word(words), Origin: figure.Computed,
		Formula: "by the use and the part named building", Working: words, From: []string{"platform.use"}}
}
