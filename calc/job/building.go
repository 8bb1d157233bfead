package job

import (
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// buildingOfUse lets the usual building of a use stand on the platform when the
// job says nothing of one. A floor that lies open has none, nor has one of which
// only the load is known.
func (r *reader) buildingOfUse() {
	use := r.job.Platform.Use
	if r.job.Building != nil || r.job.NoBuilding || use == "" {
		return
	}
	if _, stands := trade.BuildingOf(use); !stands {
		return
	}
	r.job.Building = &Building{Assumed: true}
	r.tables["building"] = r.at("platform.use")
}

func leastWeight(j *Job) Default {
	return weightOf(j, func(b trade.Building) measure.Stress { return b.Least })
}

func mostWeight(j *Job) Default {
	return weightOf(j, func(b trade.Building) measure.Stress { return b.Most })
}

// weightOf returns a weight of the building of the job's use, by floor area.
func weightOf(j *Job, byArea func(trade.Building) measure.Stress) Default {
	area := j.Platform.Length.Times(j.Platform.Width)
	b, stands := trade.BuildingOf(j.Platform.Use)
	if !stands { // the job lets one stand where none is usual
		b, _ = trade.BuildingOf("")
	}
	weight := byArea(b).On(area)
	if weight <= 0 {
		return Default{}
	}
	return Default{Imperial: rounded(float64(weight/measure.PoundForce), 0) + " lb", Metric: rounded(float64(weight/measure.Kilonewton), 1) + " kN", Source: b.Source}
}

// checkWalls sees that one of the walls given carries the roof: else its weight,
// and the snow on it, would stand nowhere.
func (j *Job) checkWalls(r *reader) {
	const path = "building.walls"
	b := j.Building
	if b == nil || len(b.Walls) == 0 || b.Roof.Shape == "hip" || r.spoilt(path) {
		return
	}
	for name, wall := range b.Walls {
		if wall.Roof || r.spoilt(path+"."+name+".roof") {
			return
		}
	}
	r.wrong(path, r.at(path), "none of the walls carries the roof, so its weight and its snow would stand nowhere", "write roof: yes in the walls that carry it, most often those under the eaves")
}
