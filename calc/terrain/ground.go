package terrain

import (
	"pierbook/calc/fault"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// Ground is what the readings say of the ground. Before there are any it is
// empty: Surface, Spots and Levels are nil.
type Ground struct {
	Surface *Spline
	Spots   []SpotHeight // the positioned spots that were read, in the order read
	Levels  []Level      // at the piers, in the order of the frame

	Suspects []Suspect // readings to take again before anything is dug, the likeliest first

	far measure.Length // how far outside the readings an estimate still counts: half the widest bay
}

// Level is the height of the ground at a pier.
type Level struct {
	Pier   string
	Height measure.Length
	Read   bool           // else it is estimated from the surface
	Error  measure.Length // standard error of an estimate, 0 when read
	Rough  bool           // too few readings to say how good the estimate is
	Beyond bool           // more than half a bay outside the readings: read it before anything is cut
	Sights int
	Cut    measure.Length // what the job's cuts take off here; Height is what they leave
	Spread measure.Length // of the sights, 0 when there is one
}

// SpotHeight is a positioned spot with its height.
type SpotHeight struct {
	Name   string
	X, Y   measure.Length
	Height measure.Length // as the job's cuts leave it
	Cut    measure.Length // what they take off
	Inside bool           // within the frame's outside faces
}

// Read lays the surface of the ground through the heights of a level book and
// gives each pier its level, read or estimated. Without a book the ground is
// empty. It reports a fault for fewer than three readings that do not lie in a
// line, and says where to read next.
func Read(j *job.Job, f *frame.Frame, book *levelling.Book) (*Ground, fault.List) {
	g := &Ground{far: bay(f) / 2}
	if book == nil {
		return g, fault.List{}
	}
	g.Spots = spots(j, f, book)
	faults := g.level(j, f, book)
	if faults.Empty() {
		g.Suspects = g.suspects(j)
	}
	return g, faults
}

// Beyond tells the places of which the readings say too little: more than half a
// bay outside them.
func (g *Ground) Beyond(x, y measure.Length) bool { return g.Surface.Outside(x, y) > g.far }

// Inside returns the spots under the frame.
func (g *Ground) Inside() []SpotHeight {
	var inside []SpotHeight
	for _, s := range g.Spots {
		if s.Inside {
			inside = append(inside, s)
		}
	}
	return inside
}

// Under returns the lowest and the highest ground at a pier or at a spot under
// the frame. The ground must have been read.
func (g *Ground) Under() (low, high measure.Length) {
	highest, lowest, _ := g.extremes()
	low, high = lowest.Height, highest.Height
	for _, s := range g.Inside() {
		low, high = min(low, s.Height), max(high, s.Height)
	}
	return low, high
}

// extremes returns the highest and the lowest pier, the first of equals, and how
// many were read.
func (g *Ground) extremes() (high, low Level, read int) {
	high, low = g.Levels[0], g.Levels[0]
	for _, l := range g.Levels {
		if l.Height > high.Height {
			high = l
		}
		if l.Height < low.Height {
			low = l
		}
		if l.Read {
			read++
		}
	}
	return high, low, read
}

// spots returns the positioned spots that were read, in the order read.
func spots(j *job.Job, f *frame.Frame, book *levelling.Book) []SpotHeight {
	var list []SpotHeight
	for _, p := range book.Points {
		spot, ok := j.Ground.Spots[p.Name]
		if !ok || !spot.InPlan() {
			continue
		}
		inside := spot.X >= 0 && spot.X <= f.Length && spot.Y >= 0 && spot.Y <= f.Width
		list = append(list, SpotHeight{Name: p.Name, X: spot.X, Y: spot.Y, Height: p.Height, Inside: inside})
	}
	return list
}
