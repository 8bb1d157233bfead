package order

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// Sticks are so many sticks of one length to buy.
type Sticks struct {
	Section job.Section
	Use     string // "joists, rims"
	Long    measure.Length
	Count   int
	Price   *measure.Money
}

// Bed is the stone to order.
type Bed struct {
	Kind  string
	Units int            // sold units
	Unit  measure.Volume // one sold unit
	Loose measure.Density
}

// Input is what the list is made from.
type Input struct {
	Job    *job.Job
	Frame  *frame.Frame
	Sticks []Sticks
	Bed    *Bed // nil as long as the holes are not known
}

// Take makes the list.
func Take(in Input) *Order {
	o := &Order{Payload: in.Job.Yard.Payload, Tools: tools(in), joints: schedule(in.Job, in.Frame), Strips: strips(in)}
	o.Lines = append(o.Lines, stickLines(in)...)
	o.Lines = append(o.Lines, surfaceLines(in)...)
	o.Lines = append(o.Lines, hardwareLines(in)...)
	o.Lines = append(o.Lines, fastenerLines(in.Job, o.joints)...)
	o.Lines = append(o.Lines, stoneLines(in)...)
	o.Lines = append(o.Lines, groundLines(in)...)
	o.total()
	return o
}

func stickLines(in Input) []Line {
	var lines []Line
	style := in.Job.Style()
	for _, s := range in.Sticks {
		volume := s.Section.Width.Times(s.Section.Depth).Deep(s.Long)
		long := s.Long
		lines = append(lines, Line{
			Key: fmt.Sprintf("order.stick.%s.%d", slug(s.Section.Size), int64(s.Long/measure.Millimetre)), Group: Timber,
			What: s.Section.Size + ", " + s.Long.Print(style), Use: s.Use, Count: s.Count, Unit: "sticks",
			Each: in.Job.Timber.Density.Of(volume), Price: s.Price, Long: &long, Part: s.Use, Source: "cutting plan",
		})
	}
	return lines
}

func surfaceLines(in Input) []Line {
	s, j, style := in.Frame.Surface, in.Job, in.Job.Style()
	p := j.Platform.Surface
	if len(s.Panels) > 0 {
		each := p.Density.Of(p.FaceLength.Times(p.FaceWidth).Deep(p.Thickness))
		return []Line{{Key: "order.panel", Group: Surface, What: fmt.Sprintf("floor panel %s thick, face %s × %s", measure.Exact(p.Thickness).Print(style), p.FaceLength.Print(style), p.FaceWidth.Print(style)),
			Use: "surface", Count: s.Sheets, Unit: "sheets", Each: each, Price: price(j, "panel"), Part: "surface", Source: "panel plan"}}
	}
	var total measure.Length
	for _, b := range s.Boards {
		for _, piece := range b.Pieces {
			total += piece.Long()
		}
	}
	if total == 0 {
		return nil
	}
	// Boards are ordered by their run with one in twenty for cuts and splits
	// (common practice, no source), in whole metres or feet.
	step := measure.Foot
	if j.Units == measure.Metric {
		step = measure.Metre
	}
	run := total.Scale(1.05).RoundUpTo(step)
	each := p.Density.Of(p.Thickness.Times(p.BoardWidth).Deep(step))
	return []Line{{Key: "order.boards", Group: Surface, What: fmt.Sprintf("floor board %s × %s", measure.Exact(p.Thickness).Print(style), p.BoardWidth.Print(style)),
		Use: "surface", Count: int(run / step), Unit: "running " + map[bool]string{true: "metres", false: "feet"}[j.Units == measure.Metric],
		Each: each, Price: price(j, "board"), Part: "surface", Source: "board plan with one in twenty for cuts"}}
}

func hardwareLines(in Input) []Line {
	j, f := in.Job, in.Frame
	piers := len(f.Piers)
	lines := []Line{
		{Key: "order.block", Group: Hardware, What: "pier block, base " + j.Block.Base.Print(j.Style()) + " square", Use: "blocks", Count: piers, Unit: "pieces", Each: j.Block.Weight, Price: price(j, "block"), Part: "blocks", Source: "one for each pier"},
		{Key: "order.cap", Group: Hardware, What: "post cap for a " + f.Sections.Post.Size + " post, galvanised", Use: "caps", Count: piers, Unit: "pieces", Each: 0.6 * measure.Pound, Price: price(j, "cap"), Part: "caps", Source: "one for each post; weight is an estimate"},
	}
	if f.BuildUp.Joist == 0 {
		lines = append(lines, Line{Key: "order.hanger", Group: Hardware, What: "joist hanger for " + f.Sections.Joist.Size + ", galvanised", Use: "joists", Count: 2 * len(f.Joists), Unit: "pieces", Each: 0.5 * measure.Pound, Price: price(j, "hanger"), Part: "joists", Source: "one at each joist end; weight is an estimate"})
	}
	return lines
}

func stoneLines(in Input) []Line {
	if in.Bed == nil || in.Bed.Units == 0 {
		return nil
	}
	b := in.Bed
	return []Line{{Key: "order.stone", Group: Stone, What: words(b.Kind) + " stone, sold by " + b.Unit.Print(in.Job.Style()), Use: "beds", Count: b.Units, Unit: "sold units",
		Each: b.Loose.Of(b.Unit), Price: price(in.Job, "stone"), Part: "stone", Source: "loose volume with waste, rounded up to the sold unit"}}
}

// groundLines lists the cloth under the whole platform, laid along the length
// with laps, and the coating for cut ends.
func groundLines(in Input) []Line {
	j, f := in.Job, in.Frame
	var lines []Line
	if r := j.Yard.Roll; r.Width > r.Lap && r.Length > 0 {
		strips := strips(in)
		rolls := int(math.Ceil(float64(strips)*f.Length.Metres()/r.Length.Metres() - 1e-9))
		lines = append(lines, Line{Key: "order.cloth", Group: Ground, What: fmt.Sprintf("ground cloth, roll %s × %s", r.Width.Print(j.Style()), r.Length.Print(j.Style())),
			Use: fmt.Sprintf("%d strips with laps of %s", strips, r.Lap.Print(j.Style())), Count: rolls, Unit: "rolls",
			Each: measure.Mass(0.1 * float64(r.Width.Times(r.Length))), Price: price(j, "cloth"), Part: "cloth", Source: "strips along the length; 0.1 kg/m² is an estimate"})
	}
	lines = append(lines, Line{Key: "order.coating", Group: Ground, What: "preservative for cut ends, small tin with a brush", Use: "every cut end of treated timber", Count: 1, Unit: "tins", Each: 1, Price: price(j, "coating"), Part: "posts", Source: "common practice, no source"})
	return lines
}

// strips returns how many strips of cloth, each lapping the next, cover the width.
func strips(in Input) int {
	r := in.Job.Yard.Roll
	if r.Width <= r.Lap {
		return 0
	}
	return max(1, int(math.Ceil((in.Frame.Width-r.Lap).Metres()/(r.Width-r.Lap).Metres()-1e-9)))
}

func price(j *job.Job, part string) *measure.Money {
	if p, ok := j.Yard.Prices[part]; ok {
		return &p
	}
	return nil
}

// words turns a key of a closed list into words.
func words(key string) string { return strings.ReplaceAll(key, "_", " ") }

// slug makes a stable part of a key from a name.
func slug(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	return strings.Trim(b.String(), "-")
}

// ByGroup returns the lines group by group, in delivery order.
func (o *Order) ByGroup() [][]Line {
	var groups [][]Line
	for _, g := range []Group{Timber, Surface, Hardware, Fasteners, Stone, Ground} {
		var lines []Line
		for _, l := range o.Lines {
			if l.Group == g {
				lines = append(lines, l)
			}
		}
		if len(lines) > 0 {
			groups = append(groups, slices.Clip(lines))
		}
	}
	return groups
}
