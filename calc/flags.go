package calc

import (
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/ground"
	"pierbook/calc/measure"
)

// Heights that change what the binder says.
const (
	bracedAbove = 24 * measure.Inch // post; braced both ways above it
	noSizing    = 36 * measure.Inch // block and post together; an engineer's above it
	deepHole    = 24 * measure.Inch
)

// flags are the questions that pages ask with {when}.
func (p *Plan) flags() []figure.Figure {
	j := p.Job
	tool := j.Ground.Instrument.Kind
	drop := ground.WorstDrop(p.Ground.Drops(p.Frame))
	ticket := j.Asked["utilities"]
	built := p.Frame.Sections.Beam.Plies > 1
	figures := []figure.Figure{
		yes("has.building", "a building stands on the platform", j.Building != nil),
		yes("has.panels", "the surface is panels", len(p.Frame.Surface.Panels) > 0),
		yes("has.boards", "the surface is boards", len(p.Frame.Surface.Boards) > 0),
		yes("has.between", "joists sit between the beams", p.Frame.BuildUp.Joist == 0),
		yes("has.blocking", "there is blocking", len(p.Frame.Blocking) > 0),
		yes("has.built_up", "beams are built up of plies", built),
		yes("has.single_beams", "beams are one piece thick", !built),
		yes("has.joints", "beams have joints", p.hasJoints()),
		yes("has.exceptions", "a pier has an exception of its own", len(j.Piers) > 0),
		yes("has.laser", "heights are read with a laser", strings.Contains(tool, "laser")),
		yes("has.builders_level", "heights are read with a builder's level", tool == "builders_level"),
		yes("has.water_level", "heights are read with a water level", tool == "water_level"),
		yes("has.string_level", "heights are read with string and level", tool == "string_level"),
		yes("has.power", "a power line is near, or nobody knows", j.Site.Power != "no"),
		yes("has.septic", "a septic system is near, or nobody knows", j.Site.Septic != "no"),
		yes("has.fill", "the ground is filled, or nobody knows", j.Site.Fill != "no"),
		yes("has.ticket", "the utilities have given a ticket number", ticket.Number != ""),
		yes("has.guard", "the floor stands more than 30 in over the ground beside it", p.Ground.Floor != nil && drop.Drop > ground.GuardDrop),
		yes("has.low_floor", "the floor stands nowhere more than 30 in over the ground beside it", p.Ground.Floor != nil && drop.Drop <= ground.GuardDrop),
		{Key: "asked.utilities.number", Means: "ticket number of the utilities", Value: wordOrNone(ticket.Number), Origin: figure.Given, At: j.At("asked.utilities.number")},
		yes("checks.first_only", "only the first load check was made", false),
		yes("strength.first_only", "only the first load check was made", false),
		yes("has.strings", "the strings were measured", p.SetOut.Strings != nil),
		yes("has.frame_measured", "the beams were measured for square", p.SetOut.Sides != nil),
		yes("has.hours", "hours were written down", len(j.Measured.Hours) > 0),
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
	return slices.ContainsFunc(p.Ground.Posts, func(post ground.Post) bool { return len(post.Ways) > 0 })
}

// groundFlags ask about what was read and what it came to.
func (p *Plan) groundFlags() []figure.Figure {
	var rock, water, estimated, tall, beyond, deep, reach bool
	for _, probe := range p.Job.Ground.Probes {
		rock = rock || probe.Found == "rock"
		water = water || probe.Found == "water"
	}
	for _, pier := range p.Ground.Piers {
		estimated = estimated || pier.Level != nil && !pier.Level.Read
		if h := pier.Hole; h != nil {
			tall = tall || h.Post > bracedAbove
			beyond = beyond || h.Post+p.Job.Block.SeatHeight > noSizing
			deep = deep || h.Dig > deepHole
			reach = reach || p.Job.Site.FrostDepth > h.Dig
		}
	}
	return []figure.Figure{
		yes("has.readings", "heights were read", p.Ground.Book != nil),
		yes("has.estimated", "the ground at a pier is estimated", estimated),
		yes("has.rock", "the bar found rock", rock),
		yes("has.water", "the bar found water", water),
		yes("has.clash", "the heights cannot be met", p.Ground.Clash != nil),
		yes("has.tall_posts", "a post is taller than 24 in", tall),
		yes("has.no_sizing", "a block and its post are taller than 36 in", beyond),
		yes("has.deep_holes", "a hole is deeper than 24 in", deep),
		yes("has.frost_reach", "frost reaches below a bed", reach),
		yes("has.seats", "a seat was read", p.Ground.Seats != nil && len(p.Ground.Seats.Read) > 0),
		yes("has.posts_cut", "a post was cut", len(p.Job.Measured.PostsCut) > 0),
		yes("has.beams_measured", "a beam was measured", len(p.Job.Measured.Timber.Beams) > 0),
		yes("has.ways_out", "a post was cut short, or its seat does not allow it", p.wantsWayOut()),
		yes("has.finished", "the finished floor was read", len(p.Job.Measured.Finished) > 0),
	}
}
