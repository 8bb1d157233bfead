package sizing

import (
	"cmp"
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Choice is one frame that a search may choose.
type Choice struct {
	Joist   job.Section
	Spacing measure.Length
	Beam    job.Section
	Lines   int
	PerLine int
	Cost    Cost
	Worst   measure.Ratio // greatest ratio of its checks, 0 before it was checked
	Governs string        // id of that check
}

// bounded lists what each open value of a job may become.
type bounded struct {
	joists, beams []job.Section
	spacings      []measure.Length
	lines, piers  []int
}

// Usual spacings of joists, by system: common practice, no source.
var (
	imperialSpacings = []measure.Length{12 * measure.Inch, 16 * measure.Inch, 96 * measure.Inch / 5, 24 * measure.Inch}
	metricSpacings   = []measure.Length{300 * measure.Millimetre, 400 * measure.Millimetre, 450 * measure.Millimetre, 600 * measure.Millimetre}
)

const (
	closest   = 2 * measure.Foot // of lines, and of piers under a line: closer is never chosen
	mostLines = 8
	mostPiers = 16
	mostPlies = 3
)

// bounds returns the choices that a job leaves open; a given value is the only one.
func bounds(j *job.Job) bounded {
	w := j.Frame
	b := bounded{joists: []job.Section{w.Joists.Section}, beams: []job.Section{w.Beams.Section}, spacings: []measure.Length{w.Joists.Spacing},
		lines: []int{w.Beams.Lines}, piers: []int{w.Piers.PerLine}}
	sizes := openSizes(j)
	if w.Joists.Pick {
		b.joists = slices.DeleteFunc(slices.Clone(sizes), func(s job.Section) bool { return s.Width > 3*measure.Inch || s.Depth < 2*s.Width })
	}
	if w.Beams.Pick {
		b.beams = beamSizes(sizes)
	}
	if w.Joists.Spacing == 0 {
		b.spacings = openSpacings(j)
	}
	lines, perLine := j.NamedPiers()
	if w.Beams.Lines == 0 {
		most := min(mostLines, int(j.Platform.Width/closest)+1)
		b.lines = counts(max(2, min(lines, most)), most)
	}
	if w.Piers.PerLine == 0 && w.Piers.Spacing == 0 {
		most := min(mostPiers, int(j.Platform.Length/closest)+1)
		b.piers = counts(max(2, min(perLine, most)), most)
	}
	return b
}

// openSpacings returns the usual spacings, under panels only those that divide a
// panel, so that end joints meet on joists; all of them when none does.
func openSpacings(j *job.Job) []measure.Length {
	usual := imperialSpacings
	if j.Units == measure.Metric {
		usual = metricSpacings
	}
	face, gap := j.Platform.Surface.FaceLength, j.Platform.Surface.Gap
	if j.Platform.Surface.Kind != "panels" || face <= 0 {
		return usual
	}
	var fit []measure.Length
	for _, spacing := range usual {
		if face%spacing == 0 || (face+gap)%spacing == 0 {
			fit = append(fit, spacing)
		}
	}
	if len(fit) == 0 {
		return usual
	}
	return fit
}

func counts(from, to int) []int {
	var all []int
	for n := from; n <= max(from, to); n++ {
		all = append(all, n)
	}
	return all
}

// openSizes returns the sizes to choose from, thin and shallow ones first: those
// the yard lists, else the usual ones.
func openSizes(j *job.Job) []job.Section {
	var sizes []job.Section
	for size := range j.Yard.Stock {
		e, known := j.Entry("yard.stock." + size)
		if known && e.Origin != figure.Given && e.Origin != figure.Shop {
			continue
		}
		if s, ok := SectionOf(size, 1); ok {
			sizes = append(sizes, s)
		}
	}
	if !slices.ContainsFunc(sizes, func(s job.Section) bool { return s.Depth >= 2*s.Width }) {
		sizes = usualSizes(j.Units)
	}
	slices.SortFunc(sizes, func(a, b job.Section) int {
		return cmp.Or(cmp.Compare(a.Width, b.Width), cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Size, b.Size))
	})
	return sizes
}

// usualSizes are the sizes that yards keep: common practice, no source.
func usualSizes(system measure.System) []job.Section {
	names := []string{"2x6", "2x8", "2x10", "2x12", "4x6", "4x8", "4x10", "4x12", "6x6"}
	if system == measure.Metric {
		names = []string{"45x145 mm", "45x170 mm", "45x195 mm", "45x220 mm", "95x145 mm", "95x195 mm"}
	}
	var sizes []job.Section
	for _, name := range names {
		if s, ok := SectionOf(name, 1); ok {
			sizes = append(sizes, s)
		}
	}
	return sizes
}

// beamSizes returns solid beams, and planks nailed together up to three deep.
func beamSizes(sizes []job.Section) []job.Section {
	var beams []job.Section
	for _, s := range sizes {
		switch {
		case s.Depth < s.Width || s.Depth < 4*measure.Inch && s.Depth < 95*measure.Millimetre:
			continue
		case s.Width > 3*measure.Inch:
			beams = append(beams, s)
			continue
		}
		for plies := 1; plies <= mostPlies; plies++ {
			s.Plies = plies
			beams = append(beams, s)
		}
	}
	return beams
}

// with returns a copy of the job with the choice written in.
func (c Choice) with(j *job.Job) *job.Job {
	copied := *j
	w := &copied.Frame
	joist, beam := c.Joist, c.Beam
	joist.Timber, beam.Timber = w.Joists.Timber, w.Beams.Timber
	w.Joists.Section, w.Joists.Spacing = joist, c.Spacing
	w.Beams.Section, w.Beams.Lines = beam, c.Lines
	w.Piers.PerLine = c.PerLine
	if w.Rims.Pick {
		timber := w.Rims.Timber
		w.Rims = joist
		w.Rims.Timber, w.Rims.Plies = timber, 1
	}
	return &copied
}
