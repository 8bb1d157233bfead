package frame

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

func (l *ledger) beams() {
	f := l.frame
	line := f.Lines[0]
	pieces, joints := 0, 0
	for _, line := range f.Lines {
		for _, ply := range line.Plies {
			pieces += len(ply.Pieces)
			joints += len(ply.Pieces) - 1
		}
	}
	l.given("beam.section", "frame.beams.size", "section of a beam's ply", l.section(f.Sections.Beam))
	l.given("beam.plies", "frame.beams.plies", "plies side by side in a beam", measure.Count(f.Sections.Beam.Plies))
	l.computed("beam.length", "length of a beam", line.End-line.Start, "length − 2 × set back",
		fmt.Sprintf("%s − 2 × %s", l.say(f.Length), l.say(line.Start)), "frame.length", "frame.set_back")
	l.computed("beam.pieces", "pieces that the beams are made of", measure.Count(pieces),
		"the fewest that meet over inner piers, staggered from ply to ply and line to line", "", "beam.length", "beam.plies", "frame.lines", "frame.per_line")
	l.computed("beam.joints", "joints in the beams, each over a pier", measure.Count(joints), "pieces − lines × plies",
		fmt.Sprintf("%d − %d × %d", pieces, len(f.Lines), f.Sections.Beam.Plies), "beam.pieces")
	bearing := f.Sections.Post.Width / 2
	l.computed("beam.joint_bearing", "bearing of each piece at a joint", bearing, "half the post", l.say(f.Sections.Post.Width)+" / 2", "post.section")
	l.figures[len(l.figures)-1].Rounding = measure.Down
	l.source(fmt.Sprintf("%s: at least %s on wood or metal", trade.BearingLeast.Source(), l.say(trade.BearingLeast.In(l.job.Units))))
	l.given("post.section", "frame.posts.size", "section of a post", l.section(f.Sections.Post))
	l.given("post.shortest", "frame.posts.shortest", "shortest post", l.job.Frame.Posts.Shortest)
	l.given("post.longest", "frame.posts.longest", "longest post", l.job.Frame.Posts.Longest)
	l.given("post.cap", "frame.posts.cap", "what the cap adds between post and beam", measure.Exact(l.job.Frame.Posts.Cap))
}

func (l *ledger) joists() {
	f, wish := l.frame, l.job.Frame.Joists
	count, short := 0, 0
	var long, shortLong measure.Length
	for _, j := range f.Joists {
		if j.Overhang {
			short, shortLong = short+1, j.Long()
			continue
		}
		count, long = count+1, j.Long()
	}
	positions := f.positions()
	l.given("joist.section", "frame.joists.size", "section of a joist", l.section(f.Sections.Joist))
	l.given("joist.spacing", "frame.joists.spacing", "spacing of the joists by centre", wish.Spacing)
	l.given("joist.sit", "frame.joists.sit", "where the joists sit", measure.Word(strings.ReplaceAll(wish.Sit, "_", " ")))
	l.computed("joist.positions", "joists side by side along the length", measure.Count(positions),
		"one at each end, and one at every spacing from the frame end that leaves half an inch clear before the last", "", "frame.length", "joist.spacing", "joist.section")
	l.computed("joist.bays", "bays that joists reach across", measure.Count(count/positions), "one on the beams; one fewer than the lines between them", "", "joist.sit", "frame.lines")
	l.computed("joist.count", "joists", measure.Count(count), "positions × bays", fmt.Sprintf("%d × %d", positions, count/positions), "joist.positions", "joist.bays")
	l.joistLength(long)
	l.computed("joist.overhang.count", "short joists from the rims to outer beams that stand in", measure.Count(short), "positions at each side where joists between beams end short of the rims", "", "joist.positions", "frame.inset")
	l.computed("joist.overhang.length", "length of the short joists", shortLong, "inset − rim", "", "frame.inset", "rim.section")
	l.computed("joist.widest", "greatest distance of neighbouring joists by centre", f.WidestBay, "greatest difference of neighbouring marks", "", "joist.spacing", "frame.length")
	l.marks()
}

func (l *ledger) joistLength(long measure.Length) {
	f := l.frame
	if l.job.Frame.Joists.Sit == "between_beams" {
		l.computed("joist.length", "length of a joist", long, "line spacing − beam width",
			fmt.Sprintf("%s − %s", l.say(f.Lines[1].Y-f.Lines[0].Y), l.say(f.Sections.Beam.Across())), "lines.spacing", "beam.section", "beam.plies")
		return
	}
	l.computed("joist.length", "length of a joist", long, "width − 2 × rim",
		fmt.Sprintf("%s − 2 × %s", l.say(f.Width), l.say(f.Sections.Rim.Width)), "frame.width", "rim.section")
}

// marks enters the running marks of the near faces.
func (l *ledger) marks() {
	f := l.frame
	thick := f.Sections.Joist.Width
	marks := f.marks()
	l.computed("joist.first_mark", "mark of the near face of the second joist, the first spacing", marks[1], "spacing − thickness / 2",
		l.mark(1), "joist.spacing", "joist.section")
	l.computed("joist.mark_side", "side of the mark on which a joist stands", measure.Word(f.Joists[0].MarkSide), "marks are of the face nearer to the tape's hook", "")
	for i, mark := range marks {
		key, means := "joist."+strconv.Itoa(i+1)+".mark", "mark of the near face of joist "+strconv.Itoa(i+1)
		switch i {
		case 0:
			l.computed(key, means, mark, "the frame end", "", "frame.length")
		case len(marks) - 1:
			l.computed(key, means, mark, "length − thickness", l.say(f.Length)+" − "+l.say(thick), "frame.length", "joist.section")
		default:
			l.computed(key, means, mark, "k × spacing − thickness / 2", l.mark(i), "joist.spacing", "joist.section")
		}
	}
}

func (l *ledger) mark(k int) string {
	return fmt.Sprintf("%d × %s − %s / 2", k, l.say(l.job.Frame.Joists.Spacing), l.say(l.frame.Sections.Joist.Width))
}

func (l *ledger) rims() {
	f := l.frame
	if len(f.Rims) == 0 {
		why := "the outer beams are the sides"
		l.missing("rim.section", "section of a rim", why)
		l.missing("rim.length", "length of a rim", why)
		l.computed("rim.count", "rims", measure.Count(0), why, "", "joist.sit", "frame.inset")
		l.computed("rim.pieces", "pieces that the rims are made of", measure.Count(0), why, "", "rim.count")
		return
	}
	pieces := 0
	for _, r := range f.Rims {
		pieces += len(r.Pieces)
	}
	if l.job.Frame.Rims.Pick {
		l.computed("rim.section", "section of a rim", l.section(f.Sections.Rim), "as the joists that end at it", "", "joist.section")
	} else {
		l.given("rim.section", "frame.rims.size", "section of a rim", l.section(f.Sections.Rim))
	}
	l.computed("rim.length", "length of a rim", f.Length, "the frame's length", "", "frame.length")
	l.computed("rim.count", "rims", measure.Count(len(f.Rims)), "one along each long side", "", "joist.sit")
	l.computed("rim.pieces", "pieces that the rims are made of", measure.Count(pieces), "the fewest that meet at joists", "", "rim.length")
}
