package heights

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Pinch is a limit that the seat of a pier comes nearer to than the seats are set.
type Pinch struct {
	Pier  string
	Up    bool           // the seat may not come out higher; else not lower
	Room  measure.Length // by which it may
	Limit string         // what stands there, in words
	Ways  []string       // what gives the room that is wanted, each tried
}

// seatRoom returns how far the seat of a pier may come out higher and lower than
// expected, and what stops it there.
func (h *Heights) seatRoom(j *job.Job, i int) (up, down measure.Length, below string) {
	post := h.Piers[i].Expected.Post
	up, down, below = post-h.terms.Shortest, h.terms.Longest-post, "longest post"
	for _, limit := range []struct {
		post  measure.Length
		words string
	}{{j.Design.BracedAbove, "post that must be braced"}, {j.Design.NotSizedAbove - j.Block.SeatHeight, "post that an engineer sizes"}} {
		if room := limit.post - post; limit.post > 0 && room >= 0 && room < down {
			down, below = room, limit.words
		}
	}
	return up, down, below
}

// Pinches returns the piers whose seats are not set and have less room than they are
// set to, the least room first: their blocks are set before the others, while the
// floor can still move.
func (h *Heights) Pinches(j *job.Job) []Pinch {
	if h.Floor == nil {
		return nil
	}
	wanted := trade.SeatAccept.In(j.Units)
	var list []Pinch
	for i, p := range h.Piers {
		if h.places[i].seat != nil {
			continue
		}
		up, down, below := h.seatRoom(j, i)
		if up < wanted {
			list = append(list, Pinch{Pier: p.Name, Up: true, Room: up, Limit: "shortest post", Ways: h.moreRoom(j, i, true, wanted-up)})
		}
		if down < wanted {
			list = append(list, Pinch{Pier: p.Name, Room: down, Limit: below, Ways: h.moreRoom(j, i, false, wanted-down)})
		}
	}
	slices.SortStableFunc(list, func(a, b Pinch) int { return cmp.Compare(a.Room, b.Room) })
	return list
}

// moreRoom tries what gives a seat the room it lacks: another height of the floor
// while none is cut to it, and another limit of the post or of the digging.
func (h *Heights) moreRoom(j *job.Job, i int, up bool, lacks measure.Length) []string {
	style, lacks := j.Style(), lacks.RoundUpTo(h.terms.Mark)
	room := func(t terms, k int, floor measure.Length) measure.Length {
		post := t.holeAsDelivered(h.places[k], floor).Post
		if up {
			return post - t.Shortest
		}
		return t.Longest - post
	}
	before := room(h.terms, i, h.Floor.Height)
	serves := func(t terms, floor measure.Length) bool {
		return t.serves(floor, h.places, h.ground.Inside()) && room(t, i, floor) >= before+lacks
	}
	var ways []string
	if floor := h.Floor.Height + lacks; h.Seats == nil && len(j.Measured.PostsCut) == 0 {
		word := "higher"
		if !up {
			floor, word = h.Floor.Height-lacks, "lower"
		}
		if serves(h.terms, floor) && h.pinchesNobody(j, floor) {
			ways = append(ways, fmt.Sprintf("a floor %s %s: platform.floor.height: %s", lacks.Print(style), word, floor.Print(style)))
		}
	}
	for _, l := range levers {
		from := *l.length(&h.terms)
		for _, by := range []measure.Length{lacks, 2 * lacks} { // a lowest floor goes half of the way along
			to := from + by
			if !l.grows {
				to = from - by
			}
			changed := h.terms
			*l.length(&changed) = to
			floor, clash := changed.floor(h.places, h.ground.Inside())
			if to > 0 && clash == nil && serves(changed, floor.Height) {
				ways = append(ways, fmt.Sprintf("%s %s instead of %s: %s", l.means, to.Print(style), from.Print(style), l.path))
				break
			}
		}
	}
	return ways
}

// pinchesNobody holds for a floor under which no other seat has less room than seats
// are set to and than it has now.
func (h *Heights) pinchesNobody(j *job.Job, floor measure.Length) bool {
	wanted := trade.SeatAccept.In(j.Units)
	for i, p := range h.places {
		if p.seat != nil {
			continue
		}
		now, then := h.Piers[i].Expected.Post, h.terms.holeAsDelivered(p, floor).Post
		if then-h.terms.Shortest < min(wanted, now-h.terms.Shortest) || h.terms.Longest-then < min(wanted, h.terms.Longest-now) {
			return false
		}
	}
	return true
}

// Sentence tells where the room is short and what would give more.
func (p Pinch) Sentence(style measure.Style) string {
	way := "lower"
	if p.Up {
		way = "higher"
	}
	text := fmt.Sprintf("Set the block of %s first: its seat may come out %s %s than planned and no more, by the %s", p.Pier, p.Room.Print(style), way, p.Limit)
	if len(p.Ways) > 0 {
		text += ". More room gives " + strings.Join(p.Ways, ", or ")
	}
	return text + "."
}

// pinchSet is the piers with less room than their seats are set to.
func (h *Heights) pinchSet(j *job.Job) figure.Set {
	set := figure.Set{Name: "pinches", Key: "pinch", Fields: []figure.Field{
		{Key: "pier", Means: "pier with little room, %", Formula: "room under what a seat is set to", From: []string{"trade.seat_accept"}},
		{Key: "room", Means: "room of the seat, %", Formula: "expected post against its limits", From: []string{"post.shortest", "post.longest"}},
		{Key: "limit", Means: "limit that is near, %", Formula: "the nearest"},
		{Key: "ways", Means: "what would give more room, %", Formula: "each tried alone"},
	}}
	for i, p := range h.Pinches(j) {
		way := " lower"
		if p.Up {
			way = " higher"
		}
		ways := measure.Quantity(figure.Nothing)
		if len(p.Ways) > 0 {
			ways = measure.Word(strings.Join(p.Ways, "; or "))
		}
		name := fmt.Sprint(i + 1)
		set.Row(name, name, measure.Word(p.Pier), measure.Word(p.Room.Print(j.Style())+way), measure.Word(p.Limit), ways)
	}
	return set
}

// setFirst are the piers whose blocks are set before the others: those with little
// room, and the two that keep the floor from being lower.
func (h *Heights) setFirst(j *job.Job) []string {
	var names []string
	add := func(name string) {
		if i, pier := h.index[name]; pier && h.places[i].seat == nil && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, p := range h.Pinches(j) {
		add(p.Pier)
	}
	if h.Floor != nil {
		add(h.Floor.Governs.Name)
		add(h.Floor.RunnerUp.Name)
	}
	return names
}
