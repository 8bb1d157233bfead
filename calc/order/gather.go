package order

import (
	"fmt"
	"math"
	"slices"

	"pierbook/calc/earthwork"
	"pierbook/calc/frame"
	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/setout"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
	"pierbook/calc/trade"
	"pierbook/calc/yard"
)

// Parts are what has been worked out before anything is ordered.
type Parts struct {
	Job       *job.Job
	Frame     *frame.Frame
	Heights   *heights.Heights
	Earthwork *earthwork.Earthwork
	SetOut    *setout.SetOut
	Strength  *strength.Strength
	Tall      map[string]statics.Height // height of the piers, nil while they are not known
	Cuts      []yard.Cut
	Sheets    []yard.SheetPlan
}

// Gather picks from all parts what the list is made from.
func Gather(p Parts) Input {
	in := Input{Job: p.Job, Frame: p.Frame, Bed: p.bed(), Sheets: p.Sheets, Posts: p.postLengths(), OnCloth: p.onCloth(), Holds: p.holds(), Straps: Straps(p.Strength.Straps), Braces: p.braces()}
	for _, c := range p.Cuts {
		in.CutEnds += c.Ends()
		in.Sticks = append(in.Sticks, SticksOf(c, p.Job.Style())...)
	}
	if b := p.SetOut; b != nil {
		in.SettingOut = SettingOut{Boards: b.Boards.Boards, Stakes: b.Boards.Stakes, BoardLong: b.Boards.BoardLong, String: b.Boards.StringTotal}
	}
	return in
}

// SticksOf returns what the cutting plan of a section buys.
func SticksOf(c yard.Cut, style measure.Style) []Sticks {
	var sticks []Sticks
	for _, b := range c.Bought() {
		sticks = append(sticks, Sticks{Section: c.Section, Use: c.Use(), Long: b.Length, Count: b.Count, Price: b.Price, Note: c.Note(style)})
	}
	return sticks
}

// postLengths returns every post as it is planned, or at its longest while the
// heights are not known.
func (p Parts) postLengths() []measure.Length {
	lengths := make([]measure.Length, len(p.Frame.Piers))
	for i, pier := range p.Frame.Piers {
		lengths[i] = p.Job.Frame.Posts.Longest
		if post, known := p.Heights.PostOf(pier.Name); known {
			lengths[i] = post.RoundTo(p.Job.Mark())
		}
	}
	return lengths
}

func (p Parts) bed() *Bed {
	s := p.Earthwork.Stone
	if s == nil {
		return nil
	}
	return &Bed{Kind: p.Job.Stone.Kind, Units: int(s.Units), Unit: p.Job.Stone.SoldBy, Loose: p.Job.Stone.Loaded(), Note: p.stoneNote()}
}

// stoneNote says what the scatter of the probes makes of the stone to order, where
// it is not enough nine times in ten.
func (p Parts) stoneNote() string {
	o := p.Earthwork.Odds
	if o == nil || o.Enough >= trade.Often || o.NineInTen.Order <= p.Earthwork.Stone.Order {
		return ""
	}
	return fmt.Sprintf("by the scatter of the probes this is enough %s of the time; %s are enough nine times in ten. Probe more holes, or order that.", o.Enough.Print(p.Job.Style()), o.NineInTen.Order.Print(p.Job.Style()))
}

// onCloth is the clean stone over the ground cloth, sold as the bed's is.
//
//	units = length × width × thickness × (1 + waste) / sold unit, rounded up
func (p Parts) onCloth() *Bed {
	s := p.Job.Stone
	if s.OnCloth == 0 || s.SoldBy <= 0 {
		return nil
	}
	wanted := float64(p.Frame.Length.Times(p.Frame.Width).Deep(s.OnCloth)) * (1 + float64(s.Waste))
	return &Bed{Units: int(math.Ceil(wanted/float64(s.SoldBy) - 1e-6)), Unit: s.SoldBy, Loose: s.CleanLoaded()}
}

// holds gathers the ties that the checks want, joint by joint.
func (p Parts) holds() []Hold {
	var holds []Hold
	for _, tie := range p.Strength.Ties {
		at := slices.IndexFunc(holds, func(h Hold) bool { return h.Joint == tie.Joint })
		if at < 0 {
			at, holds = len(holds), append(holds, Hold{Joint: tie.Joint, ToGround: tie.ToGround()})
		}
		h := &holds[at]
		h.Piers++
		if tie.Up > h.Up || h.At == "" {
			h.At = tie.Pier
		}
		h.Up, h.Level = max(h.Up, tie.Up), max(h.Level, tie.Level)
		h.From = append(h.From, tie.Key()+".up", tie.Key()+".level")
	}
	return holds
}

// braces counts the posts that the checks want braced.
func (p Parts) braces() Braces {
	knees := p.Strength.Knees
	b := Braces{Above: knees.From, Screws: knees.End.Count, From: []string{"design.braced_above"}}
	for name, h := range p.Tall {
		if h.Post > b.Above {
			b.Posts++
			b.Tallest = max(b.Tallest, h.Post)
			b.From = append(b.From, "pier."+name+".post")
		}
	}
	slices.Sort(b.From)
	return b
}
