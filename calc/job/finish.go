package job

import (
	"slices"

	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// finish fills in what hangs on several keys at once: the names of sections
// given by width and depth, timber of members, stock for the sizes in use.
func (r *reader) finish() {
	j := r.job
	for _, m := range j.members() {
		if m.section.Width > 0 && m.section.Depth > 0 {
			m.section.Size = SizeName(m.section.Width, m.section.Depth)
		}
		if own := m.section.Timber; own != nil && own.Values == nil && own.Species == "" {
			own.Values = j.Timber.Values
		}
	}
	r.reaches()
	for _, size := range j.sizesInUse() {
		r.stock(size)
	}
}

// member is one kind of member with the path of its keys.
type member struct {
	path    string
	section *Section
}

func (j *Job) members() []member {
	f := &j.Frame
	return []member{{"frame.joists", &f.Joists.Section}, {"frame.rims", &f.Rims}, {"frame.beams", &f.Beams.Section}, {"frame.posts", &f.Posts.Section}}
}

// sizesInUse returns the sizes that the frame and the surface are made of, each
// once; a size still to be picked is not among them.
func (j *Job) sizesInUse() []string {
	var sizes []string
	for _, m := range j.members() {
		if m.section.Size != "" {
			sizes = append(sizes, m.section.Size)
		}
	}
	if j.Platform.Surface.Kind == boards {
		sizes = append(sizes, boards)
	}
	slices.Sort(sizes)
	return slices.Compact(sizes)
}

// stock assumes the common stock lengths of a size that the yard does not list.
func (r *reader) stock(size string) {
	if _, listed := r.job.Yard.Stock[size]; listed {
		return
	}
	lengths := CommonLengths(r.job.Units)
	r.job.Yard.Stock = with(r.job.Yard.Stock, size, lengths)
	text := `[8', 10', 12', 14', 16']`
	if r.job.Units == measure.Metric {
		text = "[2.4 m, 3.0 m, 3.6 m, 4.2 m, 4.8 m, 5.4 m, 6.0 m]"
	}
	r.entries["yard.stock.*"] = append(r.entries["yard.stock.*"], Entry{Path: "yard.stock." + size, Text: text, Means: "stock lengths of this size", Origin: figure.Assumed,
		Source: practice + ": ask the yard"})
}

// CommonLengths returns the stock lengths that yards commonly hold: 8 to 16 ft
// by 2 ft, or 2.4 to 6.0 m by 0.6 m, without prices. Common practice, no source.
func CommonLengths(system measure.System) []StockLength {
	from, to, step := 8*measure.Foot, 16*measure.Foot, 2*measure.Foot
	if system == measure.Metric {
		from, to, step = 2400*measure.Millimetre, 6*measure.Metre, 600*measure.Millimetre
	}
	var lengths []StockLength
	for length := from; length <= to; length += step {
		lengths = append(lengths, StockLength{Length: length})
	}
	return lengths
}

// StockOf returns the stock lengths of a size: the yard's, or the common ones.
func (j *Job) StockOf(size string) []StockLength {
	if listed, ok := j.Yard.Stock[size]; ok {
		return listed
	}
	return CommonLengths(j.Units)
}
