package support

import (
	"fmt"
	"math"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/statics"
)

// Push is a level force on the heads of all posts together, in one combination.
type Push struct {
	What, Combination, Source string
	Force                     measure.Force
	Duration                  measure.Ratio
	Press                     func(p *statics.PierLoad) measure.Force // on the post in that combination, below 0 it lifts
	OwnWeight                 measure.Ratio                           // factor on the block's weight
}

// Upright finds what keeps posts and blocks from being pushed over. Nothing
// published treats a short post that stands dry on a block; it is statics.
//
// The heads are pins in one stiff floor, so they move together and the piers take
// the force by their stiffness, 1/k = h³/(3·EI) + h²/kθ, which gives the short
// ones most. A pier that reaches what it can hold rocks there and sheds the rest.
//
//	post on its seat, with a strap on two faces: H·h ≤ (N/2 + T)·b
//	post that lifts with U:                      H·h ≤ (T − U/2)·b
//	block on its bed, with its weight:           H·(h + seat) ≤ N·(B − a)/2
//	braced post: H·h by its brace, and its block's arm is the seat alone
type Upright struct {
	Side           measure.Length // of the post
	Stiffness      float64        // EI of the post
	Rocks          float64        // kθ of the block on its bed
	Seat           measure.Length
	Weight         measure.Force // of a block
	Limb           check.Fastening
	Slope          measure.Ratio
	Upholds        func(load measure.Force) measure.Moment
	Knees          Knees
	Anchors, Brace string // what others do where posts or blocks do not hold
}

// standing is one pier under one push.
type standing struct {
	pier                *statics.PierLoad
	push                *Push
	press, level        measure.Force
	post, block         measure.Moment // that they hold
	postArm, blockArm   measure.Length
	blockHeld, postHeld bool
	row                 measure.Force // what all piers together hold of the push
}

// Holds says whether posts, and whether blocks, hold all of the pushes, and returns
// the greatest level force on each pier.
func (u *Upright) Holds(piers []statics.PierLoad, pushes []Push) (posts, blocks bool, levels []measure.Force) {
	posts, blocks, levels = true, true, make([]measure.Force, len(piers))
	for n := range pushes {
		for i, s := range u.stand(piers, &pushes[n]) {
			posts, blocks = posts && s.postHeld, blocks && s.blockHeld
			levels[i] = max(levels[i], s.level)
		}
	}
	return posts, blocks, levels
}

// stand works all piers under one push and returns them with the force that each
// takes. It says whether posts, and whether blocks, hold it together.
func (u *Upright) stand(piers []statics.PierLoad, push *Push) []standing {
	all := make([]standing, len(piers))
	stiff, both, posts := make([]float64, len(piers)), make([]float64, len(piers)), make([]float64, len(piers))
	for i := range piers {
		p := &piers[i]
		s := standing{pier: p, push: push, press: push.Press(p), postArm: p.Height.Post, blockArm: p.Height.Post + u.Seat}
		s.post = u.OnSeat(s.press, push.Duration)
		if u.Knees.Braces(p) {
			s.post, s.blockArm = u.Knees.Holds(p, push.Duration), u.Seat
		}
		s.block = u.Upholds(s.press + u.Weight*measure.Force(push.OwnWeight))
		h := math.Max(s.postArm.Metres(), 0.01)
		stiff[i] = 1 / (h*h*h/(3*u.Stiffness) + h*h/u.Rocks)
		posts[i] = float64(s.post) / h
		both[i] = min(posts[i], float64(s.block)/math.Max(s.blockArm.Metres(), 0.01))
		all[i] = s
	}
	postHeld, blockHeld := true, true
	levels, over := Shed(float64(push.Force), stiff, both)
	if over > 1 {
		blockHeld = false
		if levels, over = Shed(float64(push.Force), stiff, posts); over > 1 {
			postHeld = false
		}
	}
	row := push.Force / measure.Force(math.Max(over, 1e-9))
	for i := range all {
		all[i].level, all[i].postHeld, all[i].blockHeld, all[i].row = measure.Force(levels[i]), postHeld, blockHeld, row
	}
	return all
}

// OnSeat returns the moment that a post with its strap holds about the edge of its
// foot: half the load's arm, and the limb on the far face.
func (u *Upright) OnSeat(press measure.Force, duration measure.Ratio) measure.Moment {
	limb := u.Limb
	limb.Slope = u.Slope
	pull := limb.Holds(duration)
	return measure.Moment(math.Max(0, float64(press/2+pull)) * u.Side.Metres())
}

// Shed shares a force out by stiffness, each place up to its limit; what goes over
// is shared among the rest. Where the limits together are less than the force, each
// takes it by its limit, and over is the force over their sum.
func Shed(force float64, stiff, limits []float64) (levels []float64, over float64) {
	levels = make([]float64, len(stiff))
	sum := 0.0
	for _, l := range limits {
		sum += l
	}
	if force <= 0 {
		return levels, 0
	}
	if sum < force {
		for i, l := range limits {
			if sum > 0 {
				levels[i] = force * l / sum
			} else {
				levels[i] = force / float64(len(limits))
			}
		}
		return levels, force / math.Max(sum, force/99)
	}
	full := make([]bool, len(stiff))
	for left := force; left > force*1e-9; {
		free := 0.0
		for i, k := range stiff {
			if !full[i] {
				free += k
			}
		}
		if free == 0 {
			break
		}
		shed := 0.0
		for i, k := range stiff {
			if full[i] {
				continue
			}
			levels[i] += left * k / free
			if levels[i] >= limits[i] {
				shed += levels[i] - limits[i]
				levels[i], full[i] = limits[i], true
			}
		}
		left = shed
	}
	return levels, force / sum
}

// Checks returns, for every pier, post and block under the push that comes nearest
// to its limit.
func (u *Upright) Checks(piers []statics.PierLoad, pushes []Push) []check.Finding {
	var found []check.Finding
	posts, blocks := make([]standing, len(piers)), make([]standing, len(piers))
	for n := range pushes {
		for i, s := range u.stand(piers, &pushes[n]) {
			if posts[i].pier == nil || s.postRatio() > posts[i].postRatio() {
				posts[i] = s
			}
			if blocks[i].pier == nil || s.blockRatio() > blocks[i].blockRatio() {
				blocks[i] = s
			}
		}
	}
	for i := range posts {
		if posts[i].pier != nil {
			found = append(found, u.post(posts[i]), u.block(blocks[i]))
		}
	}
	return found
}

// asked returns what a check of the post compares: the moment about its foot, or,
// where it rocks at its limit and sheds, the push with what all piers hold.
func (s *standing) asked() (demand, capacity measure.Quantity, ratio measure.Ratio) {
	return s.compare(s.postArm, s.post, s.postHeld)
}

// askedOfBlock returns the same of the block about the edge of its base.
func (s *standing) askedOfBlock() (demand, capacity measure.Quantity, ratio measure.Ratio) {
	return s.compare(s.blockArm, s.block, s.blockHeld)
}

func (s *standing) compare(arm measure.Length, holds measure.Moment, held bool) (demand, capacity measure.Quantity, ratio measure.Ratio) {
	moment := measure.Moment(float64(s.level) * arm.Metres())
	ratio = check.RatioOf(float64(moment), float64(holds))
	if held && ratio > 1-1e-6 {
		return s.push.Force, s.row, check.RatioOf(float64(s.push.Force), float64(s.row))
	}
	return moment, holds, ratio
}

func (s *standing) postRatio() measure.Ratio {
	_, _, ratio := s.asked()
	return ratio
}

func (s *standing) blockRatio() measure.Ratio {
	_, _, ratio := s.askedOfBlock()
	return ratio
}

func (u *Upright) post(s standing) check.Finding {
	demand, capacity, ratio := s.asked()
	result := check.Check{ID: "pier." + s.pier.Name + ".racking", What: "post at " + s.pier.Name + " pushed over on its seat by " + s.push.What, Demand: demand, Capacity: capacity, Ratio: ratio,
		Combination: s.push.Combination, Clause: "statics; " + s.push.Source, Memory: true}
	if !result.Holds() {
		result.Needs = u.Brace
	}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		if u.Knees.Braces(s.pier) {
			return []string{u.shareWords(t, s), u.Knees.End.Working(t, s.push.Duration), fmt.Sprintf("leg/√2 × its screws = %s about the foot, leg = 3/4·h; H·h = %s; ratio %s", t.Moment(float64(s.post)), t.Moment(float64(s.level)*s.postArm.Metres()), t.Ratio(float64(result.Ratio)))}
		}
		return []string{
			u.shareWords(t, s),
			fmt.Sprintf("H·h = %s × %s = %s", t.Force(float64(s.level)), t.Length(s.postArm), t.Moment(float64(s.level)*s.postArm.Metres())),
			fmt.Sprintf("(N/2 + T)·b, N = %s (%s), T = %s, b = %s: %s; ratio %s", t.Force(float64(s.press)), s.push.Combination, t.Force(float64(u.pull(s.push.Duration))), t.Length(u.Side), t.Moment(float64(s.post)), t.Ratio(float64(result.Ratio))),
		}
	}}
}

func (u *Upright) pull(duration measure.Ratio) measure.Force {
	limb := u.Limb
	limb.Slope = u.Slope
	return limb.Holds(duration)
}

func (u *Upright) shareWords(t check.Words, s standing) string {
	how := "by stiffness, piers at their limit shedding the rest"
	if !s.blockHeld && !s.postHeld {
		how = "by what each post can hold, for together they hold less than that"
	} else if !s.blockHeld {
		how = "by stiffness of the posts, for the blocks together hold less than that"
	}
	return fmt.Sprintf("%s: %s on all posts, shared %s: H = %s here; all together hold %s", s.push.What, t.Force(float64(s.push.Force)), how, t.Force(float64(s.level)), t.Force(float64(s.row)))
}

func (u *Upright) block(s standing) check.Finding {
	demand, capacity, ratio := s.askedOfBlock()
	result := check.Check{ID: "pier." + s.pier.Name + ".tipping", What: "block at " + s.pier.Name + " tipped on its bed by " + s.push.What, Demand: demand, Capacity: capacity, Ratio: ratio,
		Combination: s.push.Combination, Clause: "statics; " + s.push.Source, Memory: true}
	if !result.Holds() {
		result.Needs = u.Anchors
	}
	n := s.press + u.Weight*measure.Force(s.push.OwnWeight)
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{
			u.shareWords(t, s),
			fmt.Sprintf("H·arm, the post's head over the bed, or of a braced post its seat = %s × %s = %s", t.Force(float64(s.level)), t.Length(s.blockArm), t.Moment(float64(s.level)*s.blockArm.Metres())),
			fmt.Sprintf("N = %s with the block; M = N·(B − a)/2, not below 0: %s; ratio %s", t.Force(float64(n)), t.Moment(float64(s.block)), t.Ratio(float64(result.Ratio))),
		}
	}}
}
