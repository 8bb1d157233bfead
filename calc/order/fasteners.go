package order

import (
	"math"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// joint is one row of the fastening schedule as it applies to this frame.
type joint struct {
	what   string
	part   string
	nail   Nail
	count  int
	source string
	memory bool
}

// spareNails are bought beyond the count: one in ten, for bent and lost ones
// (common practice, no source).
const spareNails = 0.10

// schedule returns the joints of the frame with the nails each takes.
func schedule(j *job.Job, f *frame.Frame) []joint {
	var joints []joint
	add := func(row joint) {
		if row.count > 0 {
			joints = append(joints, row)
		}
	}
	if f.BuildUp.Joist > 0 {
		add(joint{"joists to beams, toenailed, three each", "joists", nail8dCommon, 3 * len(f.Joists) * len(f.Lines), "IRC Table R602.3(1); three 8d also in the 1994 UBC", true})
	} else {
		add(joint{"joist hangers, ten each, or as the maker says", "joists", nailHanger, 10 * 2 * len(f.Joists), "common practice, no source", false})
	}
	add(rimToJoists(f))
	add(rimToBeam(j, f))
	add(builtUpBeams(f))
	add(joint{"blocking, three at each end, toenailed", "blocking", nail8dCommon, 6 * len(f.Blocking), "IBC Table 2304.10.1", false})
	add(joint{"post caps, eight each, or as the maker says", "caps", screwCap, 8 * len(f.Piers), "common practice, no source", false})
	add(panelNails(f))
	add(boardScrews(f))
	return joints
}

func rimToJoists(f *frame.Frame) joint {
	ends := 0
	if f.BuildUp.Joist > 0 && len(f.Rims) > 0 {
		ends = 2 * len(f.Joists)
	}
	return joint{"rims to joist ends, end-nailed, three each", "rims", nail16dCommon, 3 * ends, "IRC Table R602.3(1)", true}
}

// rimToBeam counts the toenails of a rim that stands on an outer beam.
func rimToBeam(j *job.Job, f *frame.Frame) joint {
	count := 0
	if f.BuildUp.Joist > 0 && j.Frame.Beams.Inset < f.Sections.Rim.Width {
		for _, r := range f.Rims {
			for _, p := range r.Pieces {
				count += atSpacing(p.Long(), 6*measure.Inch)
			}
		}
	}
	return joint{"rims to the outer beams, toenailed at 6 in (150 mm)", "rims", nail8dCommon, count, "1994 UBC Table 23-I-Q; IRC Table R602.3(1)", true}
}

// builtUpBeams counts the nails that join the plies: a row along the top and
// one along the bottom at 32 in, two more at each end of a piece.
func builtUpBeams(f *frame.Frame) joint {
	count := 0
	for _, line := range f.Lines {
		for _, ply := range line.Plies[1:] {
			for _, p := range ply.Pieces {
				count += 2*atSpacing(p.Long(), 32*measure.Inch) + 4
			}
		}
	}
	return joint{"plies of built-up beams, two rows at 32 in (800 mm), two more at each end", "beams", nail20dCommon, count, "1994 UBC Table 23-I-Q", true}
}

// panelNails counts 6 in along panel edges that lie on framing and 12 in in
// the field.
func panelNails(f *frame.Frame) joint {
	count := 0
	for _, p := range f.Surface.Panels {
		count += panelNailCount(p, f)
	}
	return joint{"floor panels, 6 in (150 mm) at supported edges, 12 in (300 mm) in the field", "surface", nail8dRing, count, "IRC Table R602.3(1) as restated by a panel fastener sheet; IBC", false}
}

func panelNailCount(p frame.Panel, f *frame.Frame) int {
	count, right := 0, p.X+p.Length
	half := f.Sections.Joist.Width / 2
	for _, j := range f.Joists {
		if j.Bay != 1 || j.Centre < p.X-half || j.Centre > right+half {
			continue
		}
		spacing := 12 * measure.Inch
		if j.Centre-half <= p.X+half || j.Centre+half >= right-half {
			spacing = 6 * measure.Inch
		}
		count += atSpacing(p.Width, spacing)
	}
	if p.Y == 0 || p.Y+p.Width >= f.Width {
		count += atSpacing(p.Length, 6*measure.Inch)
	}
	return count
}

func boardScrews(f *frame.Frame) joint {
	count := 0
	for _, b := range f.Surface.Boards {
		for _, p := range b.Pieces {
			for _, j := range f.Joists {
				if j.Bay == 1 && j.Centre >= p.From && j.Centre <= p.To {
					count += 2
				}
			}
		}
	}
	return joint{"floor boards, two at each joist", "surface", screwBoard, count, "deck guide: two no. 8 screws at each joist", true}
}

// atSpacing returns how many fasteners stand along a length at no more than a
// spacing, both ends included.
func atSpacing(length, spacing measure.Length) int {
	if length <= 0 {
		return 0
	}
	return int(math.Ceil(length.Metres()/spacing.Metres()-1e-9)) + 1
}

// fastenerLines gathers the joints by nail: one line each kind, in boxes.
func fastenerLines(j *job.Job, joints []joint) []Line {
	mass, unit := box(j.Units)
	var lines []Line
	index := map[string]int{}
	for _, row := range joints {
		at, seen := index[row.nail.Name]
		if !seen {
			at = len(lines)
			index[row.nail.Name] = at
			lines = append(lines, Line{Key: "order.fastener." + slug(row.nail.Name), Group: Fasteners, What: row.nail.Name, Unit: unit, Each: mass, Source: row.source, Memory: row.memory || row.nail.Memory})
		} else {
			lines[at].Use += "; "
		}
		lines[at].Use += row.what
		lines[at].Pieces += row.count
		lines[at].Memory = lines[at].Memory || row.memory
	}
	for i, l := range lines {
		nail := nailNamed(joints, l.What)
		perBox := int(float64(mass) / float64(nail.Mass()))
		spare := int(math.Ceil(float64(l.Pieces) * spareNails))
		lines[i].Spare = spare
		lines[i].Count = (l.Pieces + spare + perBox - 1) / perBox
		lines[i].Price = price(j, "nails")
	}
	return lines
}

func nailNamed(joints []joint, name string) Nail {
	for _, row := range joints {
		if row.nail.Name == name {
			return row.nail
		}
	}
	panic("order: no nail " + name)
}
