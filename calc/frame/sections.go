package frame

import (
	"fmt"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// sections takes the cross-sections over, works out the build-up, and refuses
// what cannot be laid out at all.
func (l *layout) sections() {
	wish := &l.job.Frame
	rims := wish.Rims
	if rims.Pick {
		rims = wish.Joists.Section // a rim as deep as the joists that end at it
	}
	l.frame.Sections = Sections{
		Joist: l.resolved("frame.joists.size", wish.Joists.Section),
		Rim:   l.resolved("frame.rims.size", rims),
		Beam:  l.resolved("frame.beams.size", wish.Beams.Section),
		Post:  l.resolved("frame.posts.size", wish.Posts.Section),
	}
	l.positive("platform.length", l.frame.Length)
	l.positive("platform.width", l.frame.Width)
	if wish.Joists.Spacing <= 0 {
		l.wrong("frame.joists.spacing", "write a spacing such as 16\" or 400 mm", "no joist spacing was chosen")
	}
	if wish.Beams.Inset < 0 || wish.Beams.SetBack < 0 {
		l.wrong("frame.beams", "write 0 or more", "a beam cannot stand outside the frame")
	}
	if !l.faults.Empty() {
		return
	}
	l.buildUp()
	l.fits()
}

func (l *layout) resolved(path string, s job.Section) job.Section {
	s.Plies = max(1, s.Plies)
	if s.Pick || s.Width <= 0 || s.Depth <= 0 {
		l.wrong(path, "write a size, such as 2x6 or 45 x 145 mm", "no size was chosen")
	}
	return s
}

func (l *layout) positive(path string, length measure.Length) {
	if length <= 0 {
		l.wrong(path, "write a length above 0", "%s is nothing to build with", l.say(length))
	}
}

// buildUp stacks what lies between the post tops and the top of the surface:
//
//	t = surface + joist + beam + cap, without the joist between beams
func (l *layout) buildUp() {
	s := l.frame.Sections
	l.frame.BuildUp = BuildUp{
		Surface: l.job.Platform.Surface.Thickness,
		Joist:   s.Joist.Depth,
		Beam:    s.Beam.Depth,
		Cap:     l.job.Frame.Posts.Cap,
	}
	if !l.between() {
		return
	}
	l.frame.BuildUp.Joist = 0
	if s.Joist.Depth > s.Beam.Depth {
		l.wrong("frame.joists.size", "take a beam at least as deep as the joists, or let the joists sit on_beams",
			"joists %s deep hang below beams %s deep between which they sit", l.say(s.Joist.Depth), l.say(s.Beam.Depth))
	}
}

// fits checks what the sections ask of one another. A post's width lies along
// the beam and its depth across it.
func (l *layout) fits() {
	s, beams := l.frame.Sections, l.job.Frame.Beams
	if l.between() && beams.Inset > 0 && beams.Inset < s.Rim.Width {
		l.wrong("frame.beams.inset", fmt.Sprintf("write 0 (the beams are the sides) or %s (the rims lie on the beams as fascia)", l.say(s.Rim.Width)),
			"%s leaves no room for a rim %s thick outside the beam", l.say(beams.Inset), l.say(s.Rim.Width))
	}
	if seat := l.job.Block.SeatWidth; seat > 0 && max(s.Post.Width, s.Post.Depth) > seat {
		l.wrong("frame.posts.size", fmt.Sprintf("take a post of %s, or a block with a wider seat", l.sayDown(seat)),
			"a post %s across does not fit a seat %s wide", l.say(max(s.Post.Width, s.Post.Depth)), l.say(seat))
	}
	if s.Beam.Across() > s.Post.Depth {
		l.others("frame.beams.plies", "The beam is %s wide and the post under it %s: the outer plies hang over. Take a wider post or a cap that carries the whole beam.",
			l.say(s.Beam.Across()), l.say(s.Post.Depth))
	}
}
