package frame_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	. "pierbook/calc/measure"
)

func TestWhatCannotBeLaidIsAFault(t *testing.T) {
	for name, row := range map[string]struct {
		change              func(*job.Job)
		path, wrong, remedy string
	}{
		"beams overlap": {func(j *job.Job) { j.Platform.Width, j.Frame.Beams.Lines, j.Block.Base = 3*ft, 12, 0 },
			"frame.beams.lines", `12 beams 3 1/2″ wide overlap or touch within 3′`, "fewer lines"},
		"lines closer than the blocks are wide": {func(j *job.Job) { j.Platform.Width, j.Frame.Beams.Lines = 4*ft, 6 },
			"frame.beams.lines", `6 lines stand 8 7/8″ apart`, `12″`},
		"one line": {func(j *job.Job) { j.Frame.Beams.Lines = 1 }, "frame.beams.lines", "1 beam lines", "2 or more"},
		"piers closer than the blocks are wide": {func(j *job.Job) { j.Frame.Piers.PerLine = 20 },
			"frame.piers.per_line", `20 piers stand 9 15/16″ apart`, "write 16 or fewer"},
		"one pier":                    {func(j *job.Job) { j.Frame.Piers.PerLine = 1 }, "frame.piers.per_line", "1 piers", "2 or more"},
		"no piers wished for":         {func(j *job.Job) { j.Frame.Piers = job.PierWish{} }, "frame.piers.per_line", "0 piers", "2 or more, or a spacing"},
		"outer piers past the ends":   {func(j *job.Job) { j.Frame.Piers.First = ptr(-in) }, "frame.piers.first", `past the beam's end`, "inwards"},
		"outer piers past each other": {func(j *job.Job) { j.Frame.Piers.First, j.Frame.Piers.Last = ptr(9*ft), ptr(9*ft) }, "platform.length", "no room for two piers", "longer"},
		"no beam left":                {func(j *job.Job) { j.Frame.Beams.SetBack = 8 * ft }, "frame.beams.set_back", "leaves no beam", "16′"},
		"a joist longer than stock": {func(j *job.Job) { j.Platform.Width = 20 * ft; j.Frame.Beams.Lines = 5 },
			"frame.joists.size", `a joist is 19′ 9″ long and the longest 2x6 in the yard gives 16′`, `19′ 9″ or more`},
		"a beam that no stock reaches along": {func(j *job.Job) { j.Frame.Piers.PerLine = 2; j.Yard.Stock["4x6"] = lengths(8) },
			"frame.beams.size", `no 4x6 reaches from 0″ to 16′`, "put 3 piers under a line"},
		"a joint on a post too narrow": {func(j *job.Job) { j.Frame.Posts.Width = 5 * in / 2; j.Yard.Stock["4x6"] = lengths(8, 12) },
			"frame.posts.size", `leaves 1 1/4″ under each piece`, `3″`},
		"a post wider than the seat": {func(j *job.Job) { j.Frame.Posts.Section = section("6x6", 11*in/2, 11*in/2, 1) },
			"frame.posts.size", `5 1/2″ across does not fit a seat 3 1/2″ wide`, `3 1/2″`},
		"no room for the rim": {func(j *job.Job) { j.Frame.Joists.Sit, j.Frame.Beams.Inset = "between_beams", in },
			"frame.beams.inset", `1″ leaves no room for a rim 1 1/2″ thick`, `write 0`},
		"joists deeper than the beams between them": {func(j *job.Job) { j.Frame.Joists.Sit, j.Frame.Joists.Depth = "between_beams", 29*in/4 },
			"frame.joists.size", `hang below beams`, "on_beams"},
		"joists that miss the beam": {func(j *job.Job) { j.Frame.Beams.Width = 3 * in / 2 }, "frame.beams.inset", "miss the outer beam", `1 1/2″`},
		"end joists with nothing to hang from": {func(j *job.Job) { j.Frame.Joists.Sit, j.Frame.Beams.SetBack = "between_beams", 4*in },
			"frame.beams.set_back", "nothing to hang from", "write 0"},
		"joists that touch":          {func(j *job.Job) { j.Frame.Joists.Spacing = 2 * in }, "frame.joists.spacing", "overlap", `3″`},
		"a spacing left to pick":     {func(j *job.Job) { j.Frame.Joists.Spacing = 0 }, "frame.joists.spacing", "no joist spacing", `16"`},
		"a section left to pick":     {func(j *job.Job) { j.Frame.Beams.Pick = true }, "frame.beams.size", "no size was chosen", "2x6"},
		"no platform":                {func(j *job.Job) { j.Platform.Length = 0 }, "platform.length", "nothing to build with", "above 0"},
		"panels that reach no joist": {func(j *job.Job) { j.Platform.Surface.FaceLength = 12 * in }, "frame.joists.spacing", `no panel 12″ long ends on joists 16″ apart`, `12″`},
		"a surface of neither kind":  {func(j *job.Job) { j.Platform.Surface.Kind = "" }, "platform.surface.kind", `""`, "panels or boards"},
	} {
		t.Run(name, func(t *testing.T) {
			j := shed()
			row.change(j)
			f, faults := frame.Lay(j)
			require.Nil(t, f)
			for _, fault := range faults.Sorted() {
				if fault.Path == row.path {
					assert.Contains(t, plain(fault.Wrong), row.wrong)
					assert.Contains(t, plain(fault.Remedy), row.remedy)
					return
				}
			}
			t.Fatalf("no fault at %s: %v", row.path, faults.Err())
		})
	}
}

// plain turns the binder's unbreakable blanks into common ones.
func plain(s string) string { return strings.ReplaceAll(s, "\u00a0", " ") }

func TestAdvice(t *testing.T) {
	for name, row := range map[string]struct {
		change func(*job.Job)
		says   string
	}{
		"a beam wider than its post": {func(j *job.Job) { j.Frame.Beams.Width, j.Frame.Beams.Plies = 3*in/2, 3 },
			`The beam is 4 1/2″ wide and the post under it 3 1/2″`},
		"a joist left out":            {func(j *job.Job) { j.Platform.Length = 16*ft + 2*in }, `The last two joists stand 17 1/4″ apart`},
		"sheets that miss the joists": {func(j *job.Job) { j.Frame.Joists.Spacing = 18 * in }, `A spacing of 16″ brings the ends of whole panels onto joists`},
		"joists from shorter sticks":  {func(j *job.Job) { j.Platform.Width = 12*ft + 5*in }, `A width of 12′ 3″ would let every joist be cut from 12′ 0″ sticks instead of 16′ 0″`},
		"beams in one piece":          {func(j *job.Job) { j.Platform.Length = 16*ft + 4*in }, `A length of 16′ 0″ would make every beam one piece`},
	} {
		t.Run(name, func(t *testing.T) {
			j := shed()
			row.change(j)
			assert.Contains(t, sayings(lay(t, j)), row.says)
			assert.NotContains(t, sayings(lay(t, shed())), row.says)
		})
	}
}

// A sound job gives no advice but on its size.
func TestSoundFrameIsLeftAlone(t *testing.T) {
	j := shed()
	j.Platform.Width = 142*in + 3*in/4
	assert.Empty(t, sayings(lay(t, j)))
}

func TestLineNamesSkipIAndO(t *testing.T) {
	j := shed()
	j.Platform.Width, j.Frame.Beams.Lines, j.Block.Base = 16*ft, 30, 0
	var names []string
	for _, line := range lay(t, j).Lines {
		names = append(names, line.Name)
	}
	assert.Equal(t, []string{"H", "J"}, names[7:9])
	assert.Equal(t, []string{"N", "P"}, names[12:14])
	assert.Equal(t, []string{"Z", "AA", "AB"}, names[23:26])
}

func TestShortJoistsReachToRimsBesideInsetBeams(t *testing.T) {
	j := shed()
	j.Frame.Joists.Sit, j.Frame.Beams.Inset = "between_beams", ft
	f := lay(t, j)
	short := 0
	for _, joist := range f.Joists {
		if joist.Overhang {
			short++
			assert.Equal(t, ft-3*in/2, joist.Long(), joist.Name)
		}
	}
	assert.Equal(t, 2*13, short)
	assert.Equal(t, "J1/0", f.Joists[0].Name)
	assert.Equal(t, "J13/3", f.Joists[len(f.Joists)-1].Name)
	assert.Zero(t, f.BuildUp.Joist)
	assert.Equal(t, 46*SixtyFourth+11*in/2+in/16, f.BuildUp.Total())
}

func TestNoRimsWhereBeamsAreTheSides(t *testing.T) {
	j := shed()
	j.Frame.Joists.Sit = "between_beams"
	f := lay(t, j)
	assert.Empty(t, f.Rims)
	assert.Len(t, f.Joists, 2*13)
	// Between centres at 1 3/4 and 72 in lie 70 1/4, less a beam of 3 1/2.
	assert.Equal(t, 66*in+3*in/4, f.Joists[0].Long())
}
