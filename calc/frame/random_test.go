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
	return anyImperial(t)
}

func anyImperial(t *rapid.T) *job.Job {
	j := shed()
	j.Platform.Length = anyLength(t, "length", 6*ft, 40*ft, SixtyFourth)
	j.Platform.Width = anyLength(t, "width", 5*ft, 20*ft, SixtyFourth)
	j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, rapid.IntRange(2, 3).Draw(t, "plies")
	j.Frame.Joists.Spacing = rapid.SampledFrom([]Length{12 * in, 16 * in, 96 * in / 5, 24 * in, 18 * in, 32 * in, 40 * in}).Draw(t, "spacing")
	outlines(t, j)
	j.Frame.Piers.PerLine = rapid.IntRange(int(j.Platform.Length/(8*ft))+2, int(j.Platform.Length/(2*ft))+1).Draw(t, "piers")
	j.Platform.Surface.Edge = rapid.SampledFrom([]string{"tongue_and_groove", "square"}).Draw(t, "edge")
	j.Platform.Surface.FaceLength = rapid.SampledFrom([]Length{96 * in, 767 * in / 8}).Draw(t, "face")
	j.Yard.Stock["4x6"] = lengths(rapid.SampledFrom([][]Length{{8}, {8, 12}, {8, 10, 12, 16}, {20}}).Draw(t, "stock")...)
	j.Yard.Stock["2x6"] = lengths(8, 12, 16, 20)
	return j
}

// outlines draws how beams and joists stand to the sides.
func outlines(t *rapid.T, j *job.Job) {
	j.Frame.Joists.Sit = rapid.SampledFrom([]string{"on_beams", "between_beams"}).Draw(t, "sit")
	most := min(2*ft, j.Platform.Width/6)
	insets := []Length{0, j.Frame.Rims.Width, anyLength(t, "inset", j.Frame.Rims.Width, most, Sixteenth)}
	j.Frame.Beams.Inset = rapid.SampledFrom(insets).Draw(t, "which inset")
	j.Frame.Beams.Lines = rapid.IntRange(2, max(2, int(j.Platform.Width/(30*in)))).Draw(t, "lines")
	j.Frame.Piers.First = maybe(t, "first", 18*in)
	j.Frame.Piers.Last = maybe(t, "last", 18*in)
}

func anyLength(t *rapid.T, name string, least, most, step Length) Length {
	return least + step*Length(rapid.IntRange(0, int((most-least)/step)).Draw(t, name))
}

func anyMetric(t *rapid.T) *job.Job {
	j := summerhouse()
	j.Platform.Length = anyLength(t, "length", 1800*mm, 12*Metre, mm)
	j.Platform.Width = anyLength(t, "width", 1500*mm, 6*Metre, mm)
	j.Frame.Joists.Spacing = anyLength(t, "spacing", 300*mm, 600*mm, mm)
	outlines(t, j)
	j.Frame.Piers.Spacing = anyLength(t, "piers", 600*mm, 2400*mm, mm)
	j.Platform.Surface.BoardWidth = anyLength(t, "board", 70*mm, 200*mm, mm)
	j.Platform.Surface.Gap = anyLength(t, "gap", 0, 10*mm, mm)
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
