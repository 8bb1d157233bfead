package strength

// all makes every check.
func (c *checker) all() {
	c.surfaceChecks()
	c.joists = c.joistChecks()
	c.joistToenails()
	for _, subjects := range c.beamChecks() {
		c.beams = append(c.beams, subjects...)
	}
	c.piers = c.pierLoads()
	c.pierChecks(c.piers)
	c.windChecks(c.piers)
	c.joinPiers(c.piers)
	c.openings()
}

// result gathers what was worked out.
func (c *checker) result() *Strength {
	c.notes()
	s := &Strength{
		Loads: c.loads.items, Combinations: relevant(c.loads.present, true), First: c.firstLoads(c.piers), Piers: c.piers,
		Conventions: c.conventions(), Balance: c.balances(), Wind: c.wind, Ties: c.ties, Rules: c.rules,
		Timber: []Member{c.joist, c.beam, c.post}, Unchecked: c.unchecked, style: c.words.style, job: c.job,
		Joist: c.curves(c.governing(c.joists)), Beam: c.curves(c.governing(c.beams)),
	}
	worst := c.worstPier(c.piers)
	s.WorstPier, s.Path = worst.Name, c.path(worst)
	s.Checks = c.checks
	sortChecks(s.Checks)
	c.sortTies()
	return s
}

// notes says what was left unchecked.
func (c *checker) notes() {
	if c.job.Block.RatedLoad <= 0 {
		c.unchecked = append(c.unchecked, "The block itself: no rated load was given; ask its maker.")
	}
	if len(c.in.Heights) == 0 {
		c.unchecked = append(c.unchecked, "Bracing and the height of block and post: the ground is not known yet; posts are checked at the longest allowed.")
	}
	if _, ok := soilClass(c.job.Site.Soil.Class); !ok {
		c.unchecked = append(c.unchecked, "The kind of soil is not in the presumptive table; its bearing is taken as given.")
	}
	if c.between() {
		c.unchecked = append(c.unchecked, "Hangers: by their maker's table, for the reaction in the check of the joists' bearing.")
	}
	if c.wind != nil {
		c.unchecked = append(c.unchecked, "Wind on joists and beams: it is taken at the piers and at the joints of joists and beams, shared evenly.")
	}
	if len(c.frame.Openings) > 0 {
		c.unchecked = append(c.unchecked, "Openings in the floor: members are checked as if it were whole. Headers, trimmers, covers, and whatever stands in an opening are not.")
	}
	c.unchecked = append(c.unchecked, "Posts that lean: without bracing they are held upright by cap and seat, as the makers of these state.")
	c.unchecked = append(c.unchecked, "Earthquake, flood, the building on the platform, and the capacity of connectors and anchors.")
}
