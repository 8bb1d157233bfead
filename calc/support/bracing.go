package support

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// ShortestBraced is the shortest post that a knee brace has room on.
const ShortestBraced = 12 * measure.Inch

// Knees are the knee braces at 45° of tall posts, one along the beam and one across
// it, each from a leg's length under the post's head. The post is a pin at its foot
// and its head, so that under a level force H on the head of a post h high
//
//	thrust = √2·H·h/leg, leg = 3/4·h
//
// Statics; the leg's share of the post is our own choice.
type Knees struct {
	From  measure.Length  // posts above this are braced
	Usual measure.Length  // the usual limit, which the job may set otherwise
	End   check.Fastening // the screws in one end of a brace
	Most  int             // screws that one end has room for
}

// legShare is leg over post.
const legShare = 0.75

// Braces says whether a pier's post has braces.
func (k *Knees) Braces(p *statics.PierLoad) bool { return p.HeightKnown && p.Height.Post > k.From }

// Holds returns the moment about a braced post's foot that its brace holds.
func (k *Knees) Holds(p *statics.PierLoad, duration measure.Ratio) measure.Moment {
	return measure.Moment(float64(k.End.Holds(duration)) * legShare * p.Height.Post.Metres() / math.Sqrt2)
}

// Thrust returns the force in a brace under a level force on the post's head.
func Thrust(level measure.Force) measure.Force { return level * math.Sqrt2 / legShare }

// Check checks the length of a post that stands unbraced, or the screws of the
// braces of one that is braced under 2 per cent of its load, the least for a brace
// (common practice, no source); what pushes its head is the check of racking.
func (k *Knees) Check(p *statics.PierLoad, limit measure.Length, words check.Words) check.Finding {
	if !p.HeightKnown {
		return check.Finding{}
	}
	clause := "common practice, no source"
	if limit != k.Usual {
		clause = "set by the job; the usual is " + words.Length(k.Usual) + ", common practice, no source"
	}
	id, what := "pier."+p.Name+".bracing", "bracing of the post at "+p.Name
	if !k.Braces(p) {
		result := check.Check{ID: id, What: what, Demand: p.Height.Post, Capacity: limit, Ratio: measure.Ratio(p.Height.Post.Metres() / limit.Metres()), Clause: clause}
		return check.Finding{Check: result, Explain: func(t check.Words) []string {
			return []string{fmt.Sprintf("post %s; bracing both ways above %s (%s)", t.Length(p.Height.Post), t.Length(limit), clause)}
		}}
	}
	const duration = 1
	level := 0.02 * p.Most
	thrust, held := Thrust(level), k.End.Holds(duration)
	result := check.Check{ID: id, What: what, Demand: thrust, Capacity: held, Ratio: check.RatioOf(float64(thrust), float64(held)), Duration: duration, Clause: k.End.Clause + "; " + clause, Memory: true}
	if !result.Holds() {
		result.Needs = "bracing both ways of the tall posts, for an engineer: " + fmt.Sprintf("%d screws in each end do not hold it", k.Most)
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			fmt.Sprintf("post %s, braced both ways; 2%% of the load on its head = %s", t.Length(p.Height.Post), t.Force(float64(level))),
			fmt.Sprintf("thrust = √2·H·h/leg, leg = 3/4·h: %s", t.Force(float64(thrust))),
			k.End.Working(t, duration),
			fmt.Sprintf("ratio %s", t.Ratio(float64(result.Ratio))),
		}
	}}
}
