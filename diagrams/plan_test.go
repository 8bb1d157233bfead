package diagrams

func samplePlan(j site) Plan {
	return Plan{
		Grid: j.grid(), Block: 12 * in, Post: 3*in + in/2, Beam: 3*in + in/2, Joist: 3 * in / 2, Joists: j.joists(),
		Door:   &Door{Side: SideNear, From: j.long / 3, Width: 3 * ft},
		Corner: j.words("nearest the gate", "the corner nearest to the old garden gate by the second pear tree"),
	}
}
