package earthwork

import (
	"math"

	"pierbook/calc/heights"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// StoneTakeoff is what the beds take, and the ring beside the sunk blocks when the job
// fills it with stone.
type StoneTakeoff struct {
	Side               measure.Length // of the square hole
	Beds               measure.Volume // compacted
	Beside             measure.Volume // compacted, beside and over the blocks; 0 when soil goes back there
	StoneSupply                       // Compacted is Beds + Beside
	Loose              measure.Volume // as tipped, without waste
	LayerAtMost, Layer measure.Length // loose: the limit, and the thickest layer of all holes
	Piers              []PierStone    // in the order of the piers
}

// StoneSupply is what a compacted volume takes from the yard.
type StoneSupply struct {
	Compacted measure.Volume
	WithWaste measure.Volume // loose, with waste
	Order     measure.Volume // WithWaste rounded up to whole sold units
	Units     measure.Count  // sold units
	Mass      measure.Mass   // of the order, loose, with its water
	Trips     measure.Count  // of the vehicle, 0 when its payload is unknown
}

// supplyOf rounds a compacted volume to what is sold.
func supplyOf(j *job.Job, compacted measure.Volume) StoneSupply {
	s := StoneSupply{Compacted: compacted, WithWaste: looseWithWaste(j, compacted)}
	s.Units = measure.Count(wholeUnits(float64(s.WithWaste), float64(j.Stone.SoldBy)))
	s.Order = s.WithWaste
	if j.Stone.SoldBy > 0 {
		s.Order = measure.Volume(float64(s.Units) * float64(j.Stone.SoldBy))
	}
	s.Mass = j.Stone.Loaded().Of(s.Order)
	s.Trips = measure.Count(wholeUnits(float64(s.Mass), float64(j.Yard.Payload)))
	return s
}

// PierStone is the stone of one pier.
type PierStone struct {
	Name      string
	Bed       measure.Length // compacted
	Loose     measure.Length // the bed as tipped
	Layers    int            // equal layers to tamp it in
	Layer     measure.Length // loose thickness of each
	Compacted measure.Volume // with what goes beside the block
	UsedSoFar measure.Volume // loose with waste, from the first pier to this one
}

// stoneOf works out the stone of all holes. The hole is a square with straight
// sides, the margin wider than the block all round:
//
//	side      = base + 2 × margin
//	bed       = side² × c
//	beside    = (side² − base²) × cover        the block no lower than the cover; above a lower block the whole square
//	loose     = compacted × loose factor
//	order     = loose × (1 + waste), up to whole sold units
func stoneOf(j *job.Job, piers []heights.PierHeights) *StoneTakeoff {
	s := &StoneTakeoff{Side: sideOf(j), LayerAtMost: j.Stone.LayerAtMost}
	for _, p := range piers {
		bed := s.Side.Times(s.Side).Deep(p.Hole.Stone)
		beside := measure.Volume(0)
		if j.Stone.BesideBlock == "stone" {
			beside = besideBlock(j, p.Hole.Cover())
		}
		s.Beds += bed
		s.Beside += beside
		row := PierStone{Name: p.Name, Bed: p.Hole.Stone, Compacted: bed + beside, UsedSoFar: looseWithWaste(j, s.Beds+s.Beside)}
		row.Loose, row.Layers, row.Layer = layers(p.Hole.Stone, float64(j.Stone.Loose), j.Stone.LayerAtMost)
		s.Layer = max(s.Layer, row.Layer)
		s.Piers = append(s.Piers, row)
	}
	s.StoneSupply = supplyOf(j, s.Beds+s.Beside)
	s.Loose = measure.Volume(float64(s.Compacted) * float64(j.Stone.Loose))
	return s
}

func sideOf(j *job.Job) measure.Length { return j.Block.Base + 2*j.Stone.Margin }

func looseWithWaste(j *job.Job, compacted measure.Volume) measure.Volume {
	return measure.Volume(float64(compacted) * float64(j.Stone.Loose) * (1 + float64(j.Stone.Waste)))
}

// besideBlock returns the room in one hole beside and over the block, up to the
// ground.
func besideBlock(j *job.Job, cover measure.Length) measure.Volume {
	hole, block := sideOf(j).Times(sideOf(j)), j.Block.Base.Times(j.Block.Base)
	sunk := min(cover, j.Block.Height)
	return (hole - block).Deep(sunk) + hole.Deep(cover-sunk)
}

// layers splits a bed into equal layers, none of them thicker than the limit as
// tipped. It returns the loose depth, the layers and the loose depth of each.
func layers(bed measure.Length, loose float64, most measure.Length) (measure.Length, int, measure.Length) {
	depth := bed.Scale(loose)
	if depth <= 0 || most <= 0 {
		return depth, 0, 0
	}
	n := int((depth + most - 1) / most)
	return depth, n, depth.Part(1, n)
}

// wholeUnits returns how many units hold an amount, none when the unit is
// unknown. A millionth of a unit over is not another unit: it comes from the
// arithmetic, not from the ground.
func wholeUnits(amount, unit float64) int {
	if unit <= 0 {
		return 0
	}
	return int(math.Ceil(amount/unit - 1e-6))
}
