package calc

import (
	"fmt"
	"math"
	"slices"

	"pierbook/calc/measure"
	"pierbook/calc/order"
	"pierbook/calc/trade"
)

// orderInput gathers what the order is made from.
func (p *Plan) orderInput() order.Input {
	in := order.Input{Job: p.Job, Frame: p.Frame, Sticks: p.sticks(), Bed: p.bed()}
	for _, c := range p.Cuts {
		in.CutEnds += c.ends()
	}
	in.Sheets = p.sheetOrder()
	in.Posts, in.OnCloth = p.postLengths(), p.onCloth()
	in.Holds, in.Braces = p.holds(), p.braces()
	if b := p.SetOut; b != nil {
		in.SettingOut = order.SettingOut{Boards: b.Boards.Boards, Stakes: b.Boards.Stakes, BoardLong: b.Boards.BoardLong, String: b.Boards.StringTotal}
	}
	return in
}

// postLengths returns every post as it is planned, or at its longest while the
// heights are not known.
func (p *Plan) postLengths() []measure.Length {
	lengths := make([]measure.Length, len(p.Frame.Piers))
	for i, pier := range p.Frame.Piers {
		lengths[i] = p.Job.Frame.Posts.Longest
		if post, known := p.Ground.PostOf(pier.Name); known {
			lengths[i] = post.RoundTo(p.Job.Mark())
		}
	}
	return lengths
}

// sticks returns what the cutting plans buy.
func (p *Plan) sticks() []order.Sticks {
	var sticks []order.Sticks
	for _, c := range p.Cuts {
		for _, b := range c.bought() {
			sticks = append(sticks, order.Sticks{Section: c.Section, Use: c.Use(), Long: b.Length, Count: b.Count, Price: b.Price, Note: c.orderNote(p.Style)})
		}
	}
	return sticks
}

// orderNote says what the count of sticks stands on, where that is not the plan itself.
func (c Cut) orderNote(style measure.Style) string {
	switch {
	case c.Estimate:
		return fmt.Sprintf("no heights yet, so every post is counted at %s, the longest allowed. Read the ground first and this order shrinks.", c.longestPost.Print(style))
	case c.Allowance > 0:
		return fmt.Sprintf("ground at some piers is estimated, so %s more post in all is counted, enough nine times in ten.", c.Allowance.Print(style))
	}
	return ""
}

// ends returns the area of both ends of every piece.
func (c Cut) ends() measure.Area {
	count := 0
	for _, piece := range c.Pieces {
		count += piece.Count
	}
	return measure.Area(2*count) * c.Section.Width.Times(c.Section.Depth)
}

func (p *Plan) bed() *order.Bed {
	s := p.Ground.Stone
	if s == nil {
		return nil
	}
	return &order.Bed{Kind: p.Job.Stone.Kind, Units: int(s.Units), Unit: p.Job.Stone.SoldBy, Loose: p.Job.Stone.Loaded(), Note: p.stoneNote()}
}

// stoneNote says what the scatter of the probes makes of the stone to order, where
// it is not enough nine times in ten.
func (p *Plan) stoneNote() string {
	o := p.Ground.Odds(p.Job)
	if o == nil || o.Enough >= trade.Often || o.NineInTen.Order <= p.Ground.Stone.Order {
		return ""
	}
	return fmt.Sprintf("by the scatter of the probes this is enough %s of the time; %s are enough nine times in ten. Probe more holes, or order that.", o.Enough.Print(p.Style), o.NineInTen.Order.Print(p.Style))
}

// onCloth is the clean stone over the ground cloth, sold as the bed's is.
//
//	units = length × width × thickness × (1 + waste) / sold unit, rounded up
func (p *Plan) onCloth() *order.Bed {
	s := p.Job.Stone
	if s.OnCloth == 0 || s.SoldBy <= 0 {
		return nil
	}
	wanted := float64(p.Frame.Length.Times(p.Frame.Width).Deep(s.OnCloth)) * (1 + float64(s.Waste))
	return &order.Bed{Units: int(math.Ceil(wanted/float64(s.SoldBy) - 1e-6)), Unit: s.SoldBy, Loose: s.CleanLoaded()}
}

// holds gathers the ties that the checks want, joint by joint. Piers whose joint
// is only pushed sideways are a hold of their own.
func (p *Plan) holds() []order.Hold {
	var holds []order.Hold
	for _, tie := range p.Strength.Ties {
		at := slices.IndexFunc(holds, func(h order.Hold) bool { return h.Joint == tie.Joint && h.Up > 0 == (tie.Up > 0) })
		if tie.ToGround() {
			at = slices.IndexFunc(holds, func(h order.Hold) bool { return h.ToGround })
		}
		if at < 0 {
			at, holds = len(holds), append(holds, order.Hold{Joint: tie.Joint, ToGround: tie.ToGround()})
		}
		h := &holds[at]
		h.Piers++
		h.Up, h.Level = max(h.Up, tie.Up), max(h.Level, tie.Level)
		h.From = append(h.From, tie.Key()+".up", tie.Key()+".level")
	}
	return holds
}

// braces counts the posts that the checks want braced.
func (p *Plan) braces() order.Braces {
	b := order.Braces{Above: p.Strength.Rules.BracedAbove, From: []string{"design.braced_above"}}
	for name, h := range p.heights() {
		if h.Post > b.Above {
			b.Posts++
			b.Tallest = max(b.Tallest, h.Post)
			b.From = append(b.From, "pier."+name+".post")
		}
	}
	slices.Sort(b.From)
	return b
}
