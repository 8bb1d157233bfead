package order

import (
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/yard"
)

// Sticks are so many sticks of one length to buy.
type Sticks struct {
	Section job.Section
	Use     string // "joists, rims"
	Long    measure.Length
	Count   int
	Price   *measure.Money
	Note    string // what the count stands on, such as posts taken at their longest
}

// Key returns the key of the line of these sticks.
func (s Sticks) Key() string {
	return fmt.Sprintf("order.stick.%s.%d", slug(s.Section.Size), int64(s.Long/measure.Millimetre))
}

// Bed is the stone to order.
type Bed struct {
	Kind  string
	Units int            // sold units
	Unit  measure.Volume // one sold unit
	Loose measure.Density
	Note  string // how sure it is, where that is not known to be enough
}

// SettingOut is what the corners are marked with.
type SettingOut struct {
	Boards, Stakes int
	BoardLong      measure.Length
	String         measure.Length // in all, with tails for the knots
}

// Input is what the list is made from.
type Input struct {
	Job        *job.Job
	Frame      *frame.Frame
	Sticks     []Sticks
	Sheets     []yard.SheetPlan // of parts other than the floor
	Posts      []measure.Length // every post as it is planned; at its longest while the heights are not known
	CutEnds    measure.Area     // both ends of every piece of timber
	Bed        *Bed             // nil as long as the holes are not known
	OnCloth    *Bed             // stone over the ground cloth, nil without
	Holds      []Hold
	Straps     Straps
	Braces     Braces
	SettingOut SettingOut
}

// Take makes the list.
func Take(in Input) *Order {
	r := in.Job.Yard.Roll
	o := &Order{Payload: in.Job.Yard.Payload, Tools: tools(in), schedule: schedule(in), Cloth: clothFor(r, in.Frame.Length, in.Frame.Width), style: in.Job.Style()}
	o.beams, o.joists = timberParts(in)
	o.posts, o.boards = postParts(in), boardParts(in)
	o.Lines = slices.Concat(FrameLines(in), sheetLines(in), braceLines(in), strapLines(in), holdLines(in), fastenerLines(in.Job, o.schedule), stoneLines(in), groundLines(in, o.Cloth), setOutLines(in), deliveryLine(in.Job))
	o.receive(in.Job.Measured.Delivered, o.style)
	o.total()
	return o
}

// FrameLines lists sticks, surface, blocks, caps and hangers alone: what a change
// of the frame is judged by.
func FrameLines(in Input) []Line {
	return slices.Concat(stickLines(in), surfaceLines(in), hardwareLines(in))
}

func stickLines(in Input) []Line {
	var lines []Line
	style := in.Job.Style()
	for _, s := range in.Sticks {
		long := s.Long
		lines = append(lines, Line{
			Key: s.Key(), Group: Timber,
			What: s.Section.Size + ", " + s.Long.Print(style), Use: s.Use, Count: s.Count, Unit: "sticks",
			Each: massOf(in.Job, s.Section, s.Long), Price: s.Price, Long: &long, Note: s.Note,
			Source: "the cutting plan", Formula: "sticks of this length in the cutting plan", Working: fmt.Sprintf("%d sticks bought", s.Count), From: []string{"cut." + s.Section.Size + ".sticks"},
			Weighed: fmt.Sprintf("%s × %s × %s at the density of the timber", s.Section.Width.Print(style), s.Section.Depth.Print(style), s.Long.Print(style)),
		})
	}
	return lines
}

// boardsKey is the line of floor boards, which are sold by their run.
const boardsKey = "order.boards"

func surfaceLines(in Input) []Line {
	s, j, style := in.Frame.Surface, in.Job, in.Job.Style()
	p := j.Platform.Surface
	if len(s.Panels) > 0 {
		return []Line{{Key: "order.panel", Group: Surface, What: fmt.Sprintf("floor panel %s thick, face %s × %s", measure.Exact(p.Thickness).Print(style), p.FaceLength.Print(style), p.FaceWidth.Print(style)),
			Use: "the floor", Count: s.Sheets, Unit: "sheets", Each: p.Density.Of(p.FaceLength.Times(p.FaceWidth).Deep(p.Thickness)), Price: price(j, "panel"), Part: "surface",
			Source: "the panel plan, offcuts used again", Formula: "sheets in the panel plan", Working: fmt.Sprintf("%d pieces from %d sheets", len(s.Panels), s.Sheets), From: []string{"surface.sheets"}, Weighed: "thickness × face at the density of the surface"}}
	}
	var total, longest measure.Length
	for _, b := range s.Boards {
		for _, piece := range b.Pieces {
			total += piece.Long()
			longest = max(longest, piece.Long())
		}
	}
	if total == 0 {
		return nil
	}
	// Boards are ordered by their run with one in ten for cuts and splits: usual
	// lists add 10 to 15 per cent (common practice, no source).
	step, unit := measure.Foot, "running feet"
	if j.Units == measure.Metric {
		step, unit = measure.Metre, "running metres"
	}
	run := total.Scale(1.10).RoundUpTo(step)
	return []Line{{Key: boardsKey, Group: Surface, What: fmt.Sprintf("floor board %s × %s", measure.Exact(p.Thickness).Print(style), measure.Exact(p.BoardWidth).Print(style)),
		Use: "the floor, pieces up to " + longest.Print(style), Count: int(run / step), Unit: unit, Each: p.Density.Of(p.Thickness.Times(p.BoardWidth).Deep(step)), Price: price(j, "board"), Part: "surface",
		Source: "the board plan with one in ten for cuts; common practice, no source: lists add 10 to 15 per cent", Formula: "run of all boards × 1.10, rounded up", Working: fmt.Sprintf("%s × 1.10", total.Print(style)), From: []string{"board.count"},
		Weighed: "thickness × width at the density of the surface"}}
}

// Weights of small hardware, kilograms: estimates, the maker's list rules.
const (
	capMass    = 0.6 * measure.Pound
	hangerMass = 0.5 * measure.Pound
	pinMass    = 0.03
	clothMass  = 0.1 // a square metre
	estimated  = "an estimate; the maker's list rules"
)

func hardwareLines(in Input) []Line {
	j, f := in.Job, in.Frame
	piers := len(f.Piers)
	working := fmt.Sprintf("%d", piers)
	lines := []Line{
		{Key: "order.block", Group: Hardware, What: "pier block, base " + j.Block.Base.Print(j.Style()) + " square", Use: "piers", Count: piers, Unit: "pieces", Each: j.Block.Weight, Price: price(j, "block"), Part: "blocks",
			Source: "one for each pier", Formula: "one for each pier", Working: working, From: []string{"frame.piers"}, Weighed: "block.weight"},
		{Key: "order.cap", Group: Hardware, What: "post cap, " + f.Sections.Post.Size + " post to " + f.Sections.Beam.Size + " beam, galvanised", Use: "post tops", Count: piers, Unit: "pieces", Each: capMass, Price: price(j, "cap"), Part: "caps", Note: capNote(in),
			Source: "one for each post", Formula: "one for each post", Working: working, From: []string{"frame.piers"}, Weighed: estimated},
	}
	if hung := hungEnds(f); hung > 0 {
		lines = append(lines, Line{Key: "order.hanger", Group: Hardware, What: "joist hanger for " + f.Sections.Joist.Size + ", galvanised", Use: "joist ends at beams", Count: hung, Unit: "pieces", Each: hangerMass, Price: price(j, "hanger"), Part: "hangers",
			Source: "one at each joist end on a beam", Formula: "2 × joists − ends at rims", Working: fmt.Sprintf("2 × %d − %d = %d", len(f.Joists), endsAtRims(f), hung), From: []string{"joist.count"}, Weighed: estimated})
	}
	return lines
}

func stoneLines(in Input) []Line {
	var lines []Line
	style := in.Job.Style()
	if b := in.Bed; b != nil && b.Units > 0 {
		lines = append(lines, Line{Key: "order.stone", Group: Stone, What: words(b.Kind) + " stone, sold by " + b.Unit.Print(style), Use: "beds", Price: price(in.Job, "stone"), Part: "stone",
			Source: "loose volume with waste, rounded up to the sold unit", Formula: "loose volume with waste / sold unit, rounded up", Working: fmt.Sprintf("%d × %s", b.Units, b.Unit.Print(style)), From: []string{"stone.order"}, Note: b.Note}.poured(b))
	}
	if b := in.OnCloth; b != nil && b.Units > 0 {
		lines = append(lines, Line{Key: "order.stone_on_cloth", Group: Stone, What: "clean stone, sold by " + b.Unit.Print(style), Use: "over the ground cloth", Price: price(in.Job, "clean_stone"), Part: "cloth",
			Source: "area of the platform, as it is tipped, with waste, rounded up to the sold unit", Formula: "length × width × thickness × (1 + waste) / sold unit, rounded up", From: []string{"frame.area", "stone.on_cloth", "stone.waste", "stone.sold_by"},
			Working: fmt.Sprintf("%s × %s × %s × (1 + %s) / %s = %d", in.Frame.Length.Print(style), in.Frame.Width.Print(style), in.Job.Stone.OnCloth.Print(style), in.Job.Stone.Waste.Print(style), b.Unit.Print(style), b.Units)}.poured(b))
	}
	return lines
}

// poured puts count and weight of stone on a line.
func (l Line) poured(b *Bed) Line {
	l.Count, l.Unit, l.Each = b.Units, "sold units", b.Loose.Of(b.Unit)
	l.Weighed = "sold unit at the loose density of the stone, with its water"
	return l
}

// coatLitre is how much end grain a litre coats, two coats, square metres: 100
// ft2 a gallon for each coat. Common practice, no source.
const coatLitre measure.Area = 100 * measure.SquareFoot / 3.785411784 / 2

// groundLines lists the cloth under the whole platform and the coating for cut ends.
func groundLines(in Input, c Cloth) []Line {
	j, style := in.Job, in.Job.Style()
	var lines []Line
	if r := j.Yard.Roll; c.Rolls > 0 {
		pin := 6 * measure.Inch
		if j.Units == measure.Metric {
			pin = 150 * measure.Millimetre
		}
		use := fmt.Sprintf("the ground, %d strips with laps of %s", c.Strips, r.Lap.Print(style))
		if c.Joints > 0 {
			use += fmt.Sprintf(", %d joined end to end", c.Joints)
		}
		lines = append(lines,
			Line{Key: "order.cloth", Group: Ground, What: fmt.Sprintf("ground cloth, roll %s × %s", r.Width.Print(style), r.Length.Print(style)), Use: use, Count: c.Rolls, Unit: "rolls",
				Each: measure.Mass(clothMass * float64(r.Width.Times(r.Length))), Price: price(j, "cloth"), Part: "cloth", Source: "strips along the length, each lapping the next, roll after roll", Formula: "strips laid from roll to roll, a lap at each joint",
				Working: fmt.Sprintf("%d strips of %s and %d joints from rolls of %s", c.Strips, in.Frame.Length.Print(style), c.Joints, r.Length.Print(style)), From: []string{"cloth.strips", "frame.length"}, Weighed: "0.1 kg/m²: " + estimated},
			Line{Key: "order.pins", Group: Ground, What: "cloth pin, " + pin.Print(style), Use: "laps and edges of the cloth", Count: c.Pins, Unit: "pieces", Each: pinMass, Part: "cloth", Source: "common practice, no source", Formula: "(strips + 1) × (length / 1 m + 1)",
				Working: fmt.Sprintf("(%d + 1) × (%s / 1 m + 1) = %d", c.Strips, in.Frame.Length.Print(style), c.Pins), From: []string{"cloth.strips"}, Weighed: estimated})
	}
	tin, name := measure.Area(1), "1 L tin"
	if j.Units == measure.Imperial {
		tin, name = 0.946352946, "quart tin"
	}
	tins := max(1, int(float64(in.CutEnds/(tin*coatLitre))+1-1e-9))
	return append(lines, Line{Key: "order.coating", Group: Ground, What: "preservative for cut ends of treated timber, " + name + " with a brush", Use: "every cut end, two coats", Count: tins, Unit: "tins", Each: 1, Price: price(j, "coating"), Part: "coating",
		Source: "both ends of every piece; 100 ft² a gallon and coat, common practice, no source", Formula: "area of all ends / what a tin coats twice, rounded up",
		Working: fmt.Sprintf("%s / %s = %d", in.CutEnds.Print(style), (tin * coatLitre).Print(style), tins), Weighed: estimated})
}

// setOutLines lists what the strings hang on.
func setOutLines(in Input) []Line {
	s, j, style := in.SettingOut, in.Job, in.Job.Style()
	if s.Boards == 0 {
		return nil
	}
	board, stake := job.Section{Width: measure.Inch * 3 / 4, Depth: measure.Inch * 7 / 2}, job.Section{Width: measure.Inch * 3 / 2, Depth: measure.Inch * 3 / 2}
	boardSize, stakeSize, stakeLong, roll := "1x4", "2x2", 24*measure.Inch, 250*measure.Foot
	if j.Units == measure.Metric {
		boardSize, stakeSize, stakeLong, roll = "19x89 mm", "38x38 mm", 600*measure.Millimetre, 75*measure.Metre
	}
	const practice = "common practice, no source"
	rolls := int((s.String + roll - 1) / roll)
	return []Line{
		{Key: "order.batter_board", Group: SetOut, What: "batter board " + boardSize + ", " + s.BoardLong.Print(style), Use: "the corners, two at each", Count: s.Boards, Unit: "pieces", Each: massOf(j, board, s.BoardLong), Part: "set-out",
			Source: practice, Formula: "two at each corner", Working: fmt.Sprintf("%d", s.Boards), Weighed: "its volume at the density of the timber"},
		{Key: "order.stake", Group: SetOut, What: "pointed stake " + stakeSize + ", " + stakeLong.Print(style), Use: "the boards, two at each", Count: s.Stakes, Unit: "pieces", Each: massOf(j, stake, stakeLong), Part: "set-out",
			Source: practice, Formula: "two at each batter board", Working: fmt.Sprintf("2 × %d", s.Boards), Weighed: "its volume at the density of the timber"},
		{Key: "order.string", Group: SetOut, What: "builder's string, roll of " + roll.Print(style), Use: "the strings, " + s.String.Print(style) + " in all", Count: rolls, Unit: "rolls", Each: 0.2, Part: "set-out",
			Source: practice, Formula: "string in all / roll, rounded up", Working: fmt.Sprintf("%s / %s = %d", s.String.Print(style), roll.Print(style), rolls), Weighed: estimated},
	}
}

// deliveryLine is what the yard asks for bringing it, where its price is known.
func deliveryLine(j *job.Job) []Line {
	once := price(j, "delivery")
	if once == nil {
		return nil
	}
	return []Line{{Key: "order.delivery", Group: Carriage, What: "delivery by the yard", Use: "what is not fetched", Count: 1, Unit: "trips", Price: once,
		Source: "the yard's price list", Formula: "once", Working: "1", From: []string{"yard.prices.delivery"}}}
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
	for _, g := range Groups() {
		var lines []Line
		for _, l := range o.Lines {
			if l.Group == g {
				lines = append(lines, l)
			}
		}
		if len(lines) > 0 {
			groups = append(groups, lines)
		}
	}
	return groups
}
