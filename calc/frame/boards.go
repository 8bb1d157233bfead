package frame

import (
	"strconv"

	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// boards lays boards along x, side by side from y = 0 with gaps between them. A
// last board of less than half its width shares the narrowing with the first:
// both are ripped to half of what the two would measure together. Less than one
// gap at the far side stays open.
//
//	boards n: the least with n width + (n − 1) gap ≥ platform width
//	last     = platform width − (n − 1) (width + gap)
func (l *layout) boards() {
	wish := l.job.Platform.Surface
	l.positive("platform.surface.width", wish.BoardWidth)
	if wish.BoardWidth <= 0 {
		return
	}
	odd, even, r, ok := l.boardJoints()
	if !ok {
		return
	}
	widths := boardWidths(l.frame.Width, wish.BoardWidth, wish.Gap)
	y := measure.Length(0)
	for i, width := range widths {
		o := odd
		if i%2 == 1 {
			o = even
		}
		l.frame.Surface.Boards = append(l.frame.Surface.Boards, board(i+1, y, width, width < wish.BoardWidth, r, o))
		y += width + wish.Gap
	}
}

func board(number int, y, width measure.Length, ripped bool, r run, o option) Board {
	b := Board{Number: number, Y: y, Width: width, Ripped: ripped, Pieces: make([]Piece, len(o.joints)+1)}
	for i := range b.Pieces {
		name := "D" + strconv.Itoa(number)
		if len(b.Pieces) > 1 {
			name += "-" + strconv.Itoa(i+1)
		}
		b.Pieces[i] = Piece{Name: name, From: r.at(o, i), To: r.at(o, i+1)}
	}
	return b
}

// boardWidths returns the widths of the boards from y = 0.
func boardWidths(platform, width, gap measure.Length) []measure.Length {
	pitch := width + gap
	whole := int((platform + gap) / pitch)
	widths := make([]measure.Length, whole, whole+1)
	for i := range widths {
		widths[i] = width
	}
	last := platform - measure.Length(whole)*pitch
	if last <= 0 {
		return widths
	}
	widths = append(widths, last)
	if whole > 0 && last < width/2 {
		widths[0] = (width + last) / 2
		widths[whole] = width + last - widths[0]
	}
	return widths
}

// boardJoints returns two ways of joining boards from the yard's lengths, for
// alternate boards: joints over the middle of a joist, every piece over two bays
// or more and joints of neighbours two joists apart where the lengths allow it,
// the fewest pieces, with one more in every second board if the stagger needs it.
func (l *layout) boardJoints() (odd, even option, r run, ok bool) {
	stock := l.boardStock()
	stops := l.innerJoists()
	r = run{to: l.frame.Length, stops: stops, stock: stock}
	if from, to, stuck := r.stuck(); stuck {
		l.wrong("platform.surface", "list longer boards in the yard, or space the joists closer",
			"no board reaches from %s to %s, and boards may be joined only over a joist", l.say(from), l.say(to))
		return
	}
	if inner := r; len(stops) > 2 {
		inner.stops = stops[1 : len(stops)-1]
		if _, _, stuck := inner.stuck(); !stuck && inner.fewest() == r.fewest() {
			r = inner
		}
	}
	few := twoBays(r.options(r.fewest()))
	odd, even = apart(few, few, leastBays)
	if gapOf(odd, even, leastBays) < leastBays {
		if more := twoBays(r.options(r.fewest() + 1)); len(more) > 0 {
			odd, even = apart(few, more, leastBays)
		}
	}
	if gapOf(odd, even, leastBays) < leastBays {
		l.unsettled("platform.surface", "The end joints of neighbouring boards cannot be kept two joists apart with the yard's lengths.")
	}
	return odd, even, r, true
}

// twoBays keeps the options whose joints are two joists or more apart, or all
// when there are none.
func twoBays(options []option) []option {
	var kept []option
	for _, o := range options {
		far := true
		for i := 1; i < len(o.joints); i++ {
			far = far && o.joints[i]-o.joints[i-1] >= leastBays
		}
		if far {
			kept = append(kept, o)
		}
	}
	if kept == nil {
		return options
	}
	return kept
}

// boardStock returns the lengths of board that can be used. The yard lists them
// under "boards" or under the board's size.
func (l *layout) boardStock() []measure.Length {
	wish := l.job.Platform.Surface
	if stock, known := l.stock(job.Section{Size: job.SizeName(wish.Thickness, wish.BoardWidth)}); known {
		return stock
	}
	stock, _ := l.stock(job.Section{Size: "boards"})
	return stock
}
