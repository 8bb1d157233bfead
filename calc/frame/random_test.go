package frame_test

import (
	"slices"

	"pgregory.net/rapid"

	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

// anyJob draws a job that a builder might ask for, imperial or metric. Lay may
// still refuse it.
func anyJob(t *rapid.T) *job.Job {
	if rapid.Bool().Draw(t, "metric") {
		return anyMetric(t)
	}
	j := shed()
	j.Platform.Length = Length(rapid.IntRange(6*64*12, 40*64*12).Draw(t, "length")) * SixtyFourth
	j.Platform.Width = Length(rapid.IntRange(4*64*12, 20*64*12).Draw(t, "width")) * SixtyFourth
	j.Frame.Beams.Lines = rapid.IntRange(2, 6).Draw(t, "lines")
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, rapid.IntRange(2, 3).Draw(t, "plies")
	j.Frame.Beams.Inset = Length(rapid.IntRange(0, 24).Draw(t, "inset")) * in
	j.Frame.Joists.Spacing = rapid.SampledFrom([]Length{12 * in, 16 * in, 96 * in / 5, 24 * in, 18 * in}).Draw(t, "spacing")
	j.Frame.Joists.Sit = rapid.SampledFrom([]string{"on_beams", "between_beams"}).Draw(t, "sit")
	j.Frame.Piers.PerLine = rapid.IntRange(2, 12).Draw(t, "piers")
	j.Frame.Piers.First = maybe(t, "first", 36*in)
	j.Frame.Piers.Last = maybe(t, "last", 36*in)
	j.Platform.Surface.Edge = rapid.SampledFrom([]string{"tongue_and_groove", "square"}).Draw(t, "edge")
	j.Platform.Surface.FaceLength = rapid.SampledFrom([]Length{96 * in, 767 * in / 8}).Draw(t, "face")
	j.Yard.Stock["4x6"] = lengths(rapid.SampledFrom([][]Length{{8}, {8, 12}, {8, 10, 12, 16}, {20}}).Draw(t, "stock")...)
	j.Yard.Stock["2x6"] = lengths(8, 12, 16, 20)
	return j
}

func anyMetric(t *rapid.T) *job.Job {
	j := summerhouse()
	j.Platform.Length = Length(rapid.IntRange(1800, 12000).Draw(t, "length")) * mm
	j.Platform.Width = Length(rapid.IntRange(1200, 6000).Draw(t, "width")) * mm
	j.Frame.Beams.Lines = rapid.IntRange(2, 6).Draw(t, "lines")
	j.Frame.Beams.Inset = Length(rapid.IntRange(0, 600).Draw(t, "inset")) * mm
	j.Frame.Joists.Spacing = Length(rapid.IntRange(300, 600).Draw(t, "spacing")) * mm
	j.Frame.Joists.Sit = rapid.SampledFrom([]string{"on_beams", "between_beams"}).Draw(t, "sit")
	j.Frame.Piers.Spacing = Length(rapid.IntRange(600, 3000).Draw(t, "piers")) * mm
	j.Frame.Piers.First = maybe(t, "first", 600*mm)
	j.Platform.Surface.BoardWidth = Length(rapid.IntRange(70, 200).Draw(t, "board")) * mm
	j.Platform.Surface.Gap = Length(rapid.IntRange(0, 10).Draw(t, "gap")) * mm
	return j
}

func maybe(t *rapid.T, name string, most Length) *Length {
	if rapid.Bool().Draw(t, name+" left out") {
		return nil
	}
	return ptr(Length(rapid.Int64Range(0, int64(most/Millimetre)).Draw(t, name)) * mm)
}

// pieceLengths returns the lengths of all beam pieces, rising.
func sorted(all []Length) []Length { slices.Sort(all); return all }
