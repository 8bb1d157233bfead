package heights

import (
	"fmt"
	"strconv"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// priceSet is what the floor height costs at each of its break points.
func (h *Heights) priceSet(j *job.Job) figure.Set {
	set := figure.Set{Name: "floor-prices", Key: "price", Fields: []figure.Field{
		{Key: "floor", Means: "height of the floor at break point %", Formula: "where a hole begins or ends to grow with the floor"},
		{Key: "dig", Means: "dig of all holes at break point %", Formula: "Σ dig"},
		{Key: "stone", Means: "stone of all beds at break point %", Formula: "Σ stone"},
		{Key: "posts", Means: "length of all posts at break point %", Formula: "Σ posts"},
		{Key: "more", Means: "what every step adds from break point % to the next", Formula: "difference to the next break point ÷ steps between", From: []string{".dig", ".stone", ".posts"}},
	}}
	points := h.Price()
	for i, point := range points {
		more := figure.Nothing
		if i+1 < len(points) {
			more = stepMore(j, point, points[i+1])
		}
		name := strconv.Itoa(i + 1)
		set.Row(name, name, point.Floor, point.Dig, point.Stone, point.Posts, more)
	}
	return set
}

// stepMore says what a step of floor adds between two break points.
func stepMore(j *job.Job, a, b PricePoint) measure.Word {
	step, style := trade.FloorStep.In(j.Units), j.Style()
	dig, stone, posts := Per(step, a, b)
	return measure.Word(step.Print(style) + " more: dig " + dig.Print(style) + ", stone " + stone.Print(style) + ", posts " + posts.Print(style))
}

// readNextTold is how many piers to read next are told.
const readNextTold = 4

// nextSet names the piers to read next, and what that may change.
func (h *Heights) nextSet() figure.Set {
	set := figure.Set{Name: "next-readings", Key: "next", Fields: []figure.Field{
		{Key: "error", Means: "what the estimate at % may be off by", Formula: "standard error of the surface there"},
		{Key: "floor", Means: "how far reading % may move the floor", Formula: "expected move", From: []string{"floor.height"}},
		{Key: "hole", Means: "how far reading % may move its hole", Formula: "expected move"},
	}}
	for i, n := range h.ReadNext() {
		if i == readNextTold {
			break
		}
		set.Row(n.Pier, n.Pier, figure.Said{Quantity: n.Error, From: []string{"pier." + n.Pier + ".ground_error"}}, measure.Small(n.Moves), measure.Small(n.Digs))
	}
	return set
}

// hardlyEver is a chance that is not worth a row.
const hardlyEver = measure.Percent(0.001)

// chanceSet says how likely a post comes out too short where the ground is
// estimated. A floor over the highest that the other piers allow makes nothing
// safe and has a mark.
func (h *Heights) chanceSet() figure.Set {
	set := figure.Set{Name: "chances", Key: "chance", Fields: []figure.Field{
		{Key: "planned", Means: "chance that the post at % is too short as planned", Formula: "P(ground higher than the hole allows)", From: []string{"post.shortest"}},
		{Key: "at_all", Means: "chance that the post at % is too short with all means", Formula: "P(ground higher than any hole allows)", From: []string{"post.shortest"}},
		{Key: "safe", Means: "floor that is safe at % nine times in ten", Formula: fmt.Sprintf("the floor raised by %.2f × error", trade.OftenDeviate)},
		{Key: "beyond", Means: "mark of a floor beyond the highest at %", Formula: "safe floor over the highest floor", From: []string{".safe", "floor.highest"}},
	}}
	for _, chance := range h.ShortChances() {
		if chance.AsPlanned < hardlyEver {
			continue
		}
		mark := figure.Nothing
		if chance.Safe > h.Floor.Highest {
			mark = "‡"
		}
		set.Row(chance.Pier, chance.Pier, chance.AsPlanned, chance.AtAll, chance.Safe, mark)
	}
	return set
}

// NotNamed counts the estimated piers whose chance is not worth a row, and says
// whether a floor that would be safe is beyond the highest.
func (h *Heights) NotNamed() (sure int, beyond bool) {
	for _, chance := range h.ShortChances() {
		if chance.AsPlanned < hardlyEver {
			sure++
		} else {
			beyond = beyond || chance.Safe > h.Floor.Highest
		}
	}
	return sure, beyond
}

// freedomTold is how many ways of laying the platform otherwise are told.
const freedomTold = 6

// freedomSet says what laying the platform otherwise would save, as long as
// nothing stands that it would move.
func (h *Heights) freedomSet(j *job.Job) figure.Set {
	set := figure.Set{Name: "freedom", Key: "freedom", Fields: []figure.Field{
		{Key: "lowest", Means: "lowest floor: %", Formula: "as the floor, with the platform laid so"},
		{Key: "saves", Means: "lower by: %", Formula: "lowest floor − lowest floor so", From: []string{"floor.lowest"}},
	}}
	if h.Seats != nil || len(j.Measured.PostsCut) > 0 || h.AsBuilt != nil {
		return set
	}
	for i, move := range h.Freedom(j, h.frame) {
		if i == freedomTold || move.Saves <= 0 {
			break
		}
		set.Row(strconv.Itoa(i+1), move.What, move.Lowest, move.Saves)
	}
	return set
}

// dropSet is the height of the floor over the ground beside each side.
func (h *Heights) dropSet(j *job.Job) figure.Set {
	set := figure.Set{Name: "drops", Key: "drop", Fields: []figure.Field{
		{Key: "ground", Means: "lowest ground beside the floor, %", Formula: "within the reach of a guard", From: []string{"trade.guard_reach"}},
		{Key: "how", Means: "how well that ground is known, %", Formula: "read, estimated, or far from any reading"},
		{Key: "drop", Means: "drop from the floor, %", Formula: "floor − ground", From: []string{"floor.height", ".ground"}},
		{Key: "guard", Means: "whether to ask about a guard, %", Formula: "drop over the height of a guard", From: []string{".drop", "trade.guard_height"}},
	}}
	limit := trade.GuardHeight.In(j.Units)
	for i, d := range h.Drops {
		guard := measure.Word("no")
		if d.Drop > limit {
			guard = measure.Word("ask: over " + limit.Print(j.Style()))
		}
		how := figure.Nothing
		switch {
		case d.Read:
		case d.Beyond:
			how = ", far from any reading: read it"
		default:
			how = ", estimated"
		}
		set.Row(strconv.Itoa(i+1), d.Side, d.Ground, how, d.Drop, guard)
	}
	return set
}

// humpSet is the ground that comes too near the frame between the piers.
func (h *Heights) humpSet() figure.Set {
	set := figure.Set{Name: "humps", Key: "hump", Fields: []figure.Field{
		{Key: "x", Means: "hump under %, along", Formula: "highest place of the surface under it"},
		{Key: "y", Means: "hump under %, across", Formula: "highest place of the surface under it"},
		{Key: "gap", Means: "gap over the hump under %", Formula: "underside − ground"},
		{Key: "lower", Means: "ground to take off under %", Formula: "wanted gap − gap", From: []string{".gap"}},
	}}
	for i, hump := range h.Humps {
		set.Row(strconv.Itoa(i+1), hump.Under, hump.X, hump.Y, hump.Gap, hump.Lower)
	}
	return set
}
