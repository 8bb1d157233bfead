// Package job reads the job file: one YAML file, with the shop's and the yard's
// files laid under it, becomes a Job in which every value is present, checked
// for its form, and known by where it came from.
//
// One table, [Keys], says for every key how it is written, whether it is
// required, what is assumed when it is left out and by which source. It drives
// the reader, the entries behind the assumptions sheet, and the [Schema]. What
// the language of the file would lose or change without a word is a fault, and
// all faults of a file come at once.
//
// Lengths are exact, the rest is in SI; a file may use either system. The
// defaults come from the documents named beside them: model building codes for
// loads, soils and clearances, the lumber and panel standards for sizes, a state
// highway design manual for stone; what is common practice or from memory says so. They
// are starting points: the local building department and, where a page says so,
// a licensed engineer decide.
package job

import (
	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// Job is everything the files say about one platform, defaults filled in.
// Lengths are exact; positions are over the frame corner next to pier A1,
// x along the beams and y across them.
type Job struct {
	Name, Client, Address string
	Revision, Issued      string // Issued is a date, 2027-05-01, or empty
	Units                 measure.System
	Fraction              measure.Length // finest printed mark of imperial lengths

	Platform   Platform
	Building   *Building // nil for a floor that lies open, or whose building is not to be counted
	NoBuilding bool      // the job says that none is to be counted: building: none
	Site       Site
	Design     Design
	Timber     Timber
	Frame      FrameWish
	Block      Block
	Stone      Stone
	Dig        Dig
	Ground     Ground
	Piers      map[string]Exception // by grid name
	Measured   Measured
	SheetParts map[string]SheetPart // other parts cut from sheets, by name
	Yard       Yard
	Crew       Crew
	Asked      map[string]Answer // by id of the question for the authorities
	ClientPage ClientPage
	Pages      string // folder with the shop's own pages, or empty

	doubts  []Doubt                // values out of the usual
	entries []Entry                // every key with its value and origin, in the order of the table of keys
	index   map[string]int         // path to entry
	places  map[string]fault.Place // tables that the files hold, by path; "" is the file
	names   map[string]fault.Place // keys that the files are free to name, by path
}

// Style returns how the job's quantities are printed.
func (j *Job) Style() measure.Style {
	return measure.Style{System: j.Units, Fraction: j.Fraction, Rod: rods[j.Ground.Instrument.Reads], Currency: j.Yard.Currency}
}

var rods = map[string]measure.Rod{"feet_inches": measure.FeetInchesRod, "tenths": measure.TenthsRod, "millimetres": measure.MillimetreRod}

// Platform is what is to be built.
type Platform struct {
	Length, Width measure.Length // outside faces of the frame, rims included; length along the beams
	Use           string         // of the closed list that sets the floor load; empty when FloorLoad was given
	FloorLoad     measure.Stress // live load, from Use or given
	Surface       Surface
	Floor         Floor
	Origin        Origin
	Freedom       Freedom
	Door          *Door                // nil when none was given
	Loads         map[string]PatchLoad // heavy things at a place, by name
	Openings      map[string]Opening   // where something passes through the floor, by name
}

// Surface is the floor that lies on the joists.
type Surface struct {
	Kind           string         // "panels" or "boards"
	Thickness      measure.Length //
	Gap            measure.Length // between panels or boards
	SpanRating     int            // of panels: the greater joist spacing in inches, 24 for 24 in; 0 when unknown
	Edge           string         // of panels: "tongue_and_groove" or "square"
	FaceLength     measure.Length // of panels, along the strength axis
	FaceWidth      measure.Length // of panels, across it, without the tongue
	BoardWidth     measure.Length // of boards
	Density        measure.Density
	Species, Grade string // of boards; empty when as the frame
}

// Floor is the wish for the height of the finished surface.
type Floor struct {
	Lowest  bool           // as low as the ground lets it
	Height  measure.Length // when not Lowest: top of the surface on the bench mark's datum
	RoundUp measure.Length // the lowest floor is rounded up to a multiple of this; 0 leaves it at a whole mark
	Room    measure.Length // by which a seat may come out higher or lower than expected before its post passes a limit
}

// Origin says where the tape hooks on.
type Origin struct {
	Corner  string // in the user's words: "nearest the gate"
	LinesGo string // standing at A1 facing along line A, line B is on this hand: "left" or "right"
}

// Door is the opening that matters for the step.
type Door struct {
	Side  string // "A", the last line's name, "1" or the last pier's number
	From1 measure.Length
	Width measure.Length
}

// Building is what stands on the platform.
type Building struct {
	Assumed                 bool // the job says nothing of it: its use has one, with the usual weights
	WeightLeast, WeightMost measure.Force
	WallHeight              measure.Length
	Roof                    Roof
	Enclosure               string          // "enclosed", "partly_enclosed" or "open"
	Walls                   map[string]Wall // by name; nil for the four outer walls
}

// Roof is the shape that catches snow and wind.
type Roof struct {
	Shape    string // "gable", "shed", "hip", "flat"
	Eaves    string // "along_length" or "along_width"
	Overhang measure.Length
	Rise     measure.Length
}

// Site is what the ground and the weather ask for.
type Site struct {
	Soil       Soil
	FrostDepth measure.Length
	Frost      string // "report" or "dig"
	GroundSnow measure.Stress
	Wind       Wind
	NearLot    *measure.Length // to the lot line, nil when not said
	NearHouse  *measure.Length // to the next building, nil when not said
	Septic     string          // "yes", "no", "unknown"
	Power      string
	Fill       string
}

// Soil is what the stone stands on.
type Soil struct {
	Class   string         // of the closed list
	Bearing measure.Stress // allowable, given or presumptive for the class
	Swell   measure.Ratio  // loose volume of spoil over its volume in the bank
	Packed  measure.Ratio  // volume of spoil trodden down over its volume in the bank
}

// Wind is given as a speed or as a pressure.
type Wind struct {
	Speed    measure.Speed  // 0 when not given
	Exposure string         // "B", "C" or "D"
	Pressure measure.Stress // 0 when not given
}

// Timber is the frame's lumber: species and grade, or design values with their source.
type Timber struct {
	Species, Grade string
	Incised, Wet   bool
	Values         *DesignValues // nil when species and grade are looked up
	Density        measure.Density
}

// DesignValues are reference design values given in the job.
type DesignValues struct {
	Bending, Shear, BearingAcross, Compression measure.Stress
	Elastic, ElasticMin                        measure.Stress
	Source                                     string
}

// Section is one member's cross-section as it stands in the frame.
type Section struct {
	Pick   bool           // let the program choose; Width and Depth are then 0
	Size   string         // nominal size such as "2x6", or "45x145 mm" when given by width and depth: see SizeName
	Width  measure.Length // horizontal, of one ply
	Depth  measure.Length // vertical
	Plies  int            // 1 unless built up
	Timber *Timber        // nil when as the job's timber
}

// Across returns the horizontal width of all plies together.
func (s Section) Across() measure.Length { return s.Width * measure.Length(s.Plies) }

// FrameWish is what the job asks of the frame.
type FrameWish struct {
	Joists Joists
	Rims   Section
	Beams  Beams
	Posts  Posts
	Piers  PierWish
	Clear  measure.Length // least gap from the ground to the underside of a beam
}

// Joists run across the beams.
type Joists struct {
	Section
	Spacing measure.Length // 0 when to be picked
	Sit     string         // "on_beams" or "between_beams"
}

// Beams run along the length.
type Beams struct {
	Section
	Lines   int            // 0 when to be picked
	Inset   measure.Length // outer face of the first and last line to the frame side
	SetBack measure.Length // beam end to frame end
}

// Posts stand between the seats and the beams.
type Posts struct {
	Section
	Shortest, Longest measure.Length
	Cap               measure.Length // what the cap adds between post top and beam
}

// PierWish says how many piers stand under a line, and where the outer ones are.
type PierWish struct {
	PerLine int             // 0 when Spacing rules or when to be picked
	Spacing measure.Length  // greatest spacing of centres, 0 when PerLine rules
	First   *measure.Length // centre from the beam end; nil for half a post
	Last    *measure.Length
}

// Block is the pier block.
type Block struct {
	Height, SeatHeight measure.Length // seat height: from the block's underside to where the post stands
	SeatWidth, Base    measure.Length
	Weight             measure.Mass
	RatedLoad          measure.Force // 0 when not given
}

// Stone is the bed under the blocks.
type Stone struct {
	Kind         string
	Least, Most  measure.Length // compacted depth
	Margin       measure.Length // of the hole beyond the block, each side
	Embed        measure.Length // top of the bed below the ground
	AboveGround  measure.Length // seat above the ground, least
	BesideBlock  string         // "stone" or "soil": what fills the hole beside the block
	Loose        measure.Ratio  // loose volume over compacted volume
	Waste        measure.Percent
	SoldBy       measure.Volume
	Density      measure.Density // compacted
	LayerAtMost  measure.Length
	LooseDensity measure.Density // dry
	Water        measure.Percent // in the stone as it is loaded, of its dry weight
	OnCloth      measure.Length  // clean stone spread over the ground cloth, 0 for none
}

// Loaded returns the density of the stone as it comes: loose, with its water.
func (s Stone) Loaded() measure.Density {
	return s.LooseDensity * measure.Density(1+s.Water)
}

// CleanLoaded returns the density of clean stone as it comes, whatever the beds
// are made of.
func (s Stone) CleanLoaded() measure.Density {
	return cleanLoose * measure.Density(1+s.Water)
}

// Dig bounds the holes.
type Dig struct {
	Least, Deepest measure.Length
}

// Ground is what was read on site before the work.
type Ground struct {
	Instrument Instrument
	BenchMark  BenchMark
	Spots      map[string]Spot
	SetUps     [][]Sight // one list for each set-up, in the order taken
	Probes     map[string]Probe
	Cuts       map[string]Cut // ground taken off before the holes are dug, by name
	CloseTo    measure.Length // misclosure allowed for one set-up; times the root of their number
	Unit       string         // "mm" when a bare number in the readings is one, else empty
}

// Instrument is what the heights are read with.
type Instrument struct {
	Kind  string         // "rotary_laser", "line_laser", "builders_level", "water_level", "string_level"
	Error measure.Length // allowed error over Over
	Over  measure.Length
	Reads string // how the rod reads: "feet_inches", "tenths", "millimetres"
	Pegs  *PegReadings
	Wall  *WallMarks
	Ends  *measure.Length // height between the water at both ends of the tube, held side by side; nil when not checked
}

// SheetGood is a kind of sheet that the yard sells.
type SheetGood struct {
	Length, Width, Thickness measure.Length // the grain runs along the length
	Price                    *measure.Money // of a sheet, nil when unknown
}

// SheetPart is a kind of part that is cut from sheets: a skirt, a gusset.
type SheetPart struct {
	From          string // name of the sheet
	Count         int
	Length, Width measure.Length // the length lies along the grain, unless it is free
	Free          bool           // the part has no grain to keep to
}

// Freedom is how far the place lets the platform lie otherwise than planned.
type Freedom struct {
	Turn          int            // degrees either way
	Along, Across measure.Length // either way
	Exchange      bool           // whether length and width may change places
}

// PegReadings are those of a level's check on two pegs: from the middle between
// them, and from a second stand nearer to peg A.
type PegReadings struct {
	MiddleA, MiddleB measure.Length
	NearA, FarB      measure.Length
	ToA, ToB         measure.Length // distances of the second stand
}

// WallMarks are what a tool showed on a far wall before and after it was turned
// half round.
type WallMarks struct {
	Distance measure.Length
	Gap      measure.Length  // between the two marks
	Across   *measure.Length // the same with the tool turned a quarter, nil when not tried
}

// BenchMark is the point all heights hang on.
type BenchMark struct {
	Where  string
	Height measure.Length
}

// Spot is a named place that is not a pier: a point in plan, a turning point, or
// a further bench mark.
type Spot struct {
	TurningPoint bool
	Known        *measure.Length // height of a further bench mark, over the same datum as the first; else nil
	X, Y         measure.Length  // of a point in plan
}

// InPlan says whether the spot has a place in plan.
func (s Spot) InPlan() bool { return !s.TurningPoint && s.Known == nil }

// Sight is one rod reading.
type Sight struct {
	Point   string // "bench_mark", a pier or a spot
	Reading measure.Length
	At      fault.Place
}

// Probe is what the bar found under a pier.
type Probe struct {
	Depth measure.Length
	Found string // "firm", "rock" or "water"
}

// Exception is what one pier has for itself.
type Exception struct {
	Bed     *measure.Length // least compacted stone
	Deepest *measure.Length
	Reason  string
}

// Measured is what came back from the site. Nil maps and pointers were not measured.
type Measured struct {
	Strings, FrameSides map[string]measure.Length // "A1-A5": length, corners named by the nearest pier
	Timber              MeasuredTimber
	Holes               map[string]Probe
	Seats               map[string]measure.Length // rod readings; also bench_mark and close
	PostsCut            map[string]measure.Length
	Stock               map[string][]measure.Length // by size
	Delivered           map[string]Delivery         // by size of timber, else by the name of the line of the order
	Finished            map[string]measure.Length   // rod readings on the floor; also bench_mark and close
	Hours               map[string]measure.Hours
}

// Delivery is what has come of one good: sticks of a size, or so many of a thing.
type Delivery struct {
	Sticks []measure.Length
	Count  int
}

// MeasuredTimber is the timber as delivered.
type MeasuredTimber struct {
	Beams  map[string]measure.Length // depth by line
	Joists *measure.Length
}

// Any says whether anything was measured.
func (m Measured) Any() bool {
	return len(m.Strings)+len(m.FrameSides)+len(m.Timber.Beams)+len(m.Holes)+len(m.Seats)+len(m.PostsCut)+len(m.Stock)+len(m.Delivered)+len(m.Finished)+len(m.Hours) > 0 ||
		m.Timber.Joists != nil
}

// Yard is what can be bought, and at what price. A nil price is unknown.
type Yard struct {
	Currency string
	Kerf     measure.Length
	EndTrim  measure.Length
	Stock    map[string][]StockLength // by size, in rising length
	OnHand   map[string][]measure.Length
	Prices   map[string]measure.Money // by part: panel, block, cap, stone (a sold unit), cloth, …
	Placard  measure.Mass             // people and goods together, 0 when not given
	Aboard   int                      // people who ride, for the placard
	Person   measure.Mass             // weight of one, for the placard
	Sheets   map[string]SheetGood     // sheets that other parts are cut from, by name
	Payload  measure.Mass             // goods alone, 0 when unknown
	Roll     Roll                     // ground cloth
}

// StockLength is one length of stick in the yard.
type StockLength struct {
	Length measure.Length
	Price  *measure.Money
	Sticks int // how many the yard has, 0 for any number
}

// Roll is the ground cloth as sold.
type Roll struct {
	Width, Length, Lap measure.Length
}

// Crew is who works and when.
type Crew struct {
	People int
	Starts string                   // date or empty
	Rates  map[string]measure.Hours // by step, the shop's own
}

// Answer is what an authority said.
type Answer struct {
	Answer, By, Number, Date string
}

// ClientPage says what the client's page may show.
type ClientPage struct {
	Money, Address bool
}
