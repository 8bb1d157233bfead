package frame

import (
	"fmt"
	"math/bits"
	"strconv"

	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// splices makes every beam of pieces that meet over inner piers. Joints of
// neighbouring plies are kept off the same pier, with one joint more in a ply where
// that takes it, for plies that all end over one post are no beam across it. Then
// come the fewest pieces, then the fewest joints that neighbouring lines have over
// piers of one number, then the least timber bought, then the evenest pieces. The
// search is exact within [mostOptions] ways of joining a ply.
func (l *layout) splices() {
	f := l.frame
	perLine := len(f.Piers) / len(f.Lines)
	stock, _ := l.stock(f.Sections.Beam)
	r := run{from: f.Lines[0].Start, to: f.Lines[0].End, stock: stock}
	for _, p := range f.Piers[1 : perLine-1] {
		r.stops = append(r.stops, p.X)
	}
	if from, to, stuck := r.stuck(); stuck {
		l.beamTooShort(r, from, to)
		return
	}
	joints := r.fewest()
	if joints > 0 && !l.spliceBears() {
		return
	}
	options := r.options(joints)
	if f.Sections.Beam.Plies > 1 && leastShared(jointSets(options)) > 0 {
		options = append(options, r.options(joints+1)...)
	}
	chosen := stagger(options, f.Sections.Beam.Plies, len(f.Lines))
	for i := range f.Lines {
		l.join(i, r, options, chosen[i])
	}
	if joints > 0 {
		l.advisePlies()
		l.adviseLines()
	}
}

// beamTooShort faults a stretch between joints that no stock bridges.
func (l *layout) beamTooShort(r run, from, to measure.Length) {
	f := l.frame
	longest := r.stock[len(r.stock)-1]
	perLine := len(f.Piers) / len(f.Lines)
	free := fmt.Sprintf("list a stock length of %s or more in the yard", l.sayUp(to-from+l.job.Yard.EndTrim))
	for n := perLine + 1; n <= mostPiers; n++ {
		if l.reachable(r, n, longest) {
			free += fmt.Sprintf(", or put %d piers under a line", n)
			break
		}
	}
	l.wrong("frame.beams.size", free, "no %s reaches from %s to %s, %s: the longest in the yard gives %s and a beam may be joined only over an inner pier",
		nameOr(f.Sections.Beam, "beam"), l.say(from), l.say(to), l.say(to-from), l.sayDown(longest))
}

// reachable says whether n piers under a line would let the beam be joined.
func (l *layout) reachable(r run, n int, longest measure.Length) bool {
	first := l.frame.Piers[0].X
	last := l.frame.Piers[len(l.frame.Piers)/len(l.frame.Lines)-1].X
	spacing := (last - first).Part(1, n-1)
	if spacing < l.job.Block.Base {
		return false
	}
	r.stops = r.stops[:0:0]
	for i := 1; i < n-1; i++ {
		r.stops = append(r.stops, first+(last-first).Part(i, n-1))
	}
	_, _, stuck := r.stuck()
	return !stuck
}

func nameOr(s job.Section, other string) string {
	if s.Size != "" {
		return s.Size
	}
	return other
}

// spliceBears checks that both pieces at a joint over a post have their bearing.
func (l *layout) spliceBears() bool {
	post := l.frame.Sections.Post.Width
	if post/2 >= l.leastBearing() {
		return true
	}
	l.wrong("frame.posts.size", fmt.Sprintf("take a post at least %s wide along the beam, or beams in one piece", l.sayUp(2*l.leastBearing())),
		"a beam joint over a post %s wide leaves %s under each piece; wood on wood wants %s (%s)",
		l.say(post), l.sayDown(post/2), l.sayUp(l.leastBearing()), trade.BearingLeast.Source())
	return false
}

// join writes the pieces of a line and marks the piers under its joints.
func (l *layout) join(line int, r run, options []option, plies []int) {
	f := l.frame
	perLine := len(f.Piers) / len(f.Lines)
	f.Lines[line].Plies = make([]Ply, len(plies))
	for i, choice := range plies {
		o := options[choice]
		pieces := make([]Piece, len(o.joints)+1)
		for k := range pieces {
			pieces[k] = Piece{Name: pieceName(f.Lines[line].Name, k, i, len(plies)), From: r.at(o, k), To: r.at(o, k+1)}
		}
		for _, stop := range o.joints {
			f.Piers[line*perLine+stop+1].Splice = true
		}
		f.Lines[line].Plies[i].Pieces = pieces
	}
}

// pieceName is "A-1" in a beam of one ply and "A-1a" in a built-up one.
func pieceName(line string, piece, ply, plies int) string {
	name := line + "-" + strconv.Itoa(piece+1)
	if plies > 1 {
		name += string(rune('a' + ply))
	}
	return name
}

// advisePlies says where joints of neighbouring plies could not be kept apart.
func (l *layout) advisePlies() {
	line := l.frame.Lines[0]
	for i := 1; i < len(line.Plies); i++ {
		if shared := l.frame.joints(line.Plies[i-1]) & l.frame.joints(line.Plies[i]); shared != 0 {
			l.unsettled("frame.beams", "Neighbouring plies of every beam have to join over the same pier (%s%d): another stock length or one more pier lets them stagger.",
				line.Name, bits.TrailingZeros64(shared)+1)
			return
		}
	}
}

// adviseLines says where joints of neighbouring lines could not be kept apart.
func (l *layout) adviseLines() {
	under := uint64(0)
	for i, line := range l.frame.Lines {
		before := under
		under = 0
		for _, ply := range line.Plies {
			under |= l.frame.joints(ply)
		}
		if shared := before & under; shared != 0 {
			number := bits.TrailingZeros64(shared) + 1
			l.unsettled("frame.beams", "Neighbouring beams have to join over the piers %s%d and %s%d: another stock length or one more pier lets them stagger.",
				l.frame.Lines[i-1].Name, number, line.Name, number)
			return
		}
	}
}

// joints returns the piers of a line, one bit each, over which a ply is joined.
func (f *Frame) joints(ply Ply) uint64 {
	var set uint64
	for _, piece := range ply.Pieces[1:] {
		for i := range len(f.Piers) / len(f.Lines) {
			if f.Piers[i].X == piece.From {
				set |= 1 << i
			}
		}
	}
	return set
}
