package job

import (
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Questions are what pages ask of the job file with {when}.
func (j *Job) Questions() []figure.Figure {
	tool := j.Ground.Instrument.Kind
	ticket := j.Asked["utilities"]
	var number measure.Quantity // none prints as a blank
	if ticket.Number != "" {
		number = measure.Word(ticket.Number)
	}
	rock, water := j.found("rock"), j.found("water")
	return []figure.Figure{
		figure.Answer("has.building", "a building stands on the platform", j.Building != nil, "the job file has a part named building, or its use has one"),
		figure.Answer("has.exceptions", "a pier has an exception of its own", len(j.Piers) > 0, "the job file has a part named piers"),
		figure.Answer("has.laser", "heights are read with a laser", strings.Contains(tool, "laser"), "kind of instrument", "ground.instrument.kind"),
		figure.Answer("has.builders_level", "heights are read with a builder's level", tool == "builders_level", "kind of instrument", "ground.instrument.kind"),
		figure.Answer("has.water_level", "heights are read with a water level", tool == "water_level", "kind of instrument", "ground.instrument.kind"),
		figure.Answer("has.string_level", "heights are read with string and level", tool == "string_level", "kind of instrument", "ground.instrument.kind"),
		figure.Answer("has.power", "a power line is near, or nobody knows", j.Site.Power != "no", "anything but no", "site.has.power"),
		figure.Answer("has.septic", "a septic system is near, or nobody knows", j.Site.Septic != "no", "anything but no", "site.has.septic"),
		figure.Answer("has.fill", "the ground is filled, or nobody knows", j.Site.Fill != "no", "anything but no", "site.has.fill"),
		figure.Answer("has.ticket", "the utilities have given a ticket number", ticket.Number != "", "a number is given", "asked.utilities.number"),
		{Key: "asked.utilities.number", Means: "ticket number of the utilities", Value: number, Origin: figure.Given, At: j.At("asked.utilities.number")},
		figure.Answer("has.sheet_parts", "other parts are cut from sheets", len(j.SheetParts) > 0, "the job file has sheet_parts"),
		figure.Answer("has.hours", "hours were written down", len(j.Measured.Hours) > 0, "the job file has hours worked"),
		figure.Answer("has.rock", "the bar found rock", rock, "a probe found rock"),
		figure.Answer("has.water", "the bar found water", water, "a probe found water"),
		figure.Answer("has.posts_cut", "a post was cut", len(j.Measured.PostsCut) > 0, "the job file has posts cut"),
		figure.Answer("has.beams_measured", "a beam was measured", len(j.Measured.Timber.Beams) > 0, "the job file has measured beams"),
		figure.Answer("has.finished", "the finished floor was read", len(j.Measured.Finished) > 0, "the job file has readings on the finished floor"),
	}
}

// found holds when the bar came to something in a probe.
func (j *Job) found(what string) bool {
	for _, probe := range j.Ground.Probes {
		if probe.Found == what {
			return true
		}
	}
	return false
}
