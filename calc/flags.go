package calc

import (
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/measure"
	"pierbook/calc/terrain"
	"pierbook/calc/trade"
)

// flags are the questions that pages ask with {when}.
func (p *Plan) flags() []figure.Figure {
	j := p.Job
	tool := j.Ground.Instrument.Kind
	drop := terrain.WorstDrop(p.Heights.Drops)
	ticket := j.Asked["utilities"]
	guarded := trade.GuardHeight.In(j.Units)
	built := p.Frame.Sections.Beam.Plies > 1
	figures := []figure.Figure{
		yes("has.building", "a building stands on the platform", j.Building != nil, "the job file has a part named building"),
		yes("has.panels", "the surface is panels", len(p.Frame.Surface.Panels) > 0, "surface is panels", "platform.surface.kind"),
		yes("has.boards", "the surface is boards", len(p.Frame.Surface.Boards) > 0, "surface is boards", "platform.surface.kind"),
		yes("has.between", "joists sit between the beams", p.Frame.BuildUp.Joist == 0, "joists sit between the beams", "frame.joists.sit"),
		yes("has.blocking", "there is blocking", len(p.Frame.Blocking) > 0, "count of blocking above 0", "blocking.count"),
		yes("has.openings", "the floor has openings", len(p.Frame.Openings) > 0, "openings above 0", "openings.count"),
		yes("has.headers", "an opening cuts a joist, a rim or a beam", slices.ContainsFunc(p.Frame.Openings, frame.Opening.NeedsHeaders), "openings that cut the frame above 0", "openings.cutting"),
		yes("has.built_up", "beams are built up of plies", built, "plies above 1", "beam.plies"),
		yes("has.single_beams", "beams are one piece thick", !built, "plies = 1", "beam.plies"),
		yes("has.joints", "beams have joints", p.hasJoints(), "joints above 0", "beam.joints"),
		yes("has.exceptions", "a pier has an exception of its own", len(j.Piers) > 0, "the job file has a part named piers"),
		yes("has.laser", "heights are read with a laser", strings.Contains(tool, "laser"), "kind of instrument", "ground.instrument.kind"),
		yes("has.builders_level", "heights are read with a builder's level", tool == "builders_level", "kind of instrument", "ground.instrument.kind"),
		yes("has.water_level", "heights are read with a water level", tool == "water_level", "kind of instrument", "ground.instrument.kind"),
		yes("has.string_level", "heights are read with string and level", tool == "string_level", "kind of instrument", "ground.instrument.kind"),
		yes("has.power", "a power line is near, or nobody knows", j.Site.Power != "no", "anything but no", "site.has.power"),
		yes("has.septic", "a septic system is near, or nobody knows", j.Site.Septic != "no", "anything but no", "site.has.septic"),
		yes("has.fill", "the ground is filled, or nobody knows", j.Site.Fill != "no", "anything but no", "site.has.fill"),
		yes("has.ticket", "the utilities have given a ticket number", ticket.Number != "", "a number is given", "asked.utilities.number"),
		yes("has.guard", "the floor stands more than "+guarded.Print(p.Style)+" over the ground beside it", p.Heights.Floor != nil && drop.Drop > guarded, "drop above "+guarded.Print(p.Style), "drop.most", trade.GuardHeight.Key()),
		yes("has.low_floor", "the floor stands nowhere more than "+guarded.Print(p.Style)+" over the ground beside it", p.Heights.Floor != nil && drop.Drop <= guarded, "drop known and not above "+guarded.Print(p.Style), "drop.most", trade.GuardHeight.Key()),
		{Key: "asked.utilities.number", Means: "ticket number of the utilities", Value: wordOrNone(ticket.Number), Origin: figure.Given, At: j.At("asked.utilities.number")},
		yes("has.strings", "the strings were measured", p.SetOut.Strings != nil, "the job file has measured strings"),
		yes("has.frame_measured", "the beams were measured for square", p.SetOut.Sides != nil, "the job file has a measured frame"),
		yes("has.sheet_parts", "other parts are cut from sheets", len(p.Sheets) > 0, "the job file has sheet_parts"),
		yes("has.hours", "hours were written down", len(j.Measured.Hours) > 0, "the job file has hours worked"),
	}
	figures = append(figures, p.lastFigures()...)
	return append(figures, p.groundFlags()...)
}

func wordOrNone(word string) measure.Quantity {
	if word == "" {
		return nil
	}
	return measure.Word(word)
}

func (p *Plan) hasJoints() bool {
	for _, pier := range p.Frame.Piers {
		if pier.Splice {
			return true
		}
	}
	return false
}

func (p *Plan) wantsWayOut() bool {
	return slices.ContainsFunc(p.Heights.Posts, func(post heights.Post) bool { return len(post.Ways) > 0 })
}

// groundFlags ask about what was read and what it came to.
func (p *Plan) groundFlags() []figure.Figure {
	cavesIn := trade.DeepHole.In(p.Job.Units)
	var rock, water, estimated, tall, beyond, deep, reach bool
	for _, probe := range p.Job.Ground.Probes {
		rock = rock || probe.Found == "rock"
		water = water || probe.Found == "water"
	}
	for _, pier := range p.Heights.Piers {
		estimated = estimated || pier.Level != nil && !pier.Level.Read
		if h := pier.Hole; h != nil {
			tall = tall || h.Post > p.Job.Design.BracedAbove
			beyond = beyond || h.Post+p.Job.Block.SeatHeight > p.Job.Design.NotSizedAbove
			deep = deep || h.Dig > cavesIn
			reach = reach || p.Job.Site.FrostDepth > h.Dig
		}
	}
	return []figure.Figure{
		yes("has.readings", "heights were read", p.Book != nil, "the job file has sights"),
		yes("has.open_book", "the level book does not come back to the bench mark", p.Book != nil && !p.Book.Closed(), "a run of set-ups ends elsewhere", "ground.setups"),
		yes("has.routes", "points were read from more than one set-up", p.Book != nil && p.Book.Network != nil, "sights beyond those needed", "ground.spare_sights"),
		yes("has.estimated", "the ground at a pier is estimated", estimated, "some pier was not read", "ground.estimated"),
		yes("has.rock", "the bar found rock", rock, "a probe found rock"),
		yes("has.water", "the bar found water", water, "a probe found water"),
		yes("has.clash", "the heights cannot be met", p.Heights.Clash != nil, "something clashes", "clash.kind"),
		yes("has.tall_posts", "a post is tall enough to be braced", tall, "longest post above the limit", "design.braced_above"),
		yes("has.no_sizing", "a block and its post are too tall to be sized here", beyond, "block and post above the limit", "design.not_sized_above"),
		yes("has.deep_holes", "a hole is deeper than "+cavesIn.Print(p.Style), deep, "deepest hole above "+cavesIn.Print(p.Style), "hole.deepest", trade.DeepHole.Key()),
		yes("has.frost_reach", "frost reaches below a bed", reach, "frost deeper than a hole", "site.frost_depth"),
		yes("has.seats", "a seat was read", p.Heights.Seats != nil && len(p.Heights.Seats.Read) > 0, "the job file has readings on seats"),
		yes("has.posts_cut", "a post was cut", len(p.Job.Measured.PostsCut) > 0, "the job file has posts cut"),
		yes("has.beams_measured", "a beam was measured", len(p.Job.Measured.Timber.Beams) > 0, "the job file has measured beams"),
		yes("has.ways_out", "a post was cut short, or its seat does not allow it", p.wantsWayOut(), "a cut post or a seat that does not fit its plan"),
		yes("has.finished", "the finished floor was read", len(p.Job.Measured.Finished) > 0, "the job file has readings on the finished floor"),
	}
}
