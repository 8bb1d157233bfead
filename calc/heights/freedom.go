package heights

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

// OtherPlace is one way to lay the platform otherwise on the ground.
type OtherPlace struct {
	What   string         // "turn 10° to the left", "shift 12″ along the lines", "exchange length and width"
	Lowest measure.Length // lowest floor there, from the surface alone
	Saves  measure.Length // against the platform as it lies, likewise; negative when it costs
}

// Freedom tries the platform turned about its middle, shifted, and with length
// and width exchanged, each as far as the job allows and part of the way, and
// returns what each would do to the lowest floor, the best first. Everything
// comes from the surface and without probes, which hold only where they were
// made; so do the floors it is compared with. Places more than half a bay beyond
// the readings are not tried.
func (h *Heights) Freedom(j *job.Job, f *frame.Frame) []OtherPlace {
	if h.ground.Surface == nil {
		return nil
	}
	base, ok := h.lowestWhere(f, func(x, y measure.Length) (measure.Length, measure.Length) { return x, y })
	if !ok {
		return nil
	}
	var moves []OtherPlace
	try := func(what string, move func(x, y measure.Length) (measure.Length, measure.Length)) {
		if lowest, ok := h.lowestWhere(f, move); ok {
			moves = append(moves, OtherPlace{What: what, Lowest: lowest, Saves: base - lowest})
		}
	}
	free, style := j.Platform.Freedom, j.Style()
	for _, part := range []int{-3, -2, -1, 1, 2, 3} {
		if degrees := float64(free.Turn*part) / 3; degrees != 0 {
			try(TurnWords(degrees), turned(f, degrees))
		}
	}
	for _, part := range []int{-2, -1, 1, 2} {
		if by := free.Along.Part(part, 2); by != 0 {
			try(ShiftWords(by, "along", style), shifted(by, 0))
		}
		if by := free.Across.Part(part, 2); by != 0 {
			try(ShiftWords(by, "across", style), shifted(0, by))
		}
	}
	if free.Exchange {
		try("exchange length and width", turned(f, 90))
	}
	slices.SortStableFunc(moves, func(a, b OtherPlace) int { return cmp.Compare(b.Saves, a.Saves) })
	return moves
}

// TurnWords says how far and which way a platform is turned.
func TurnWords(degrees float64) string {
	return fmt.Sprintf("turn %.3g° %s", math.Abs(degrees), side(degrees))
}

// ShiftWords says how far a platform is shifted on or back, along or across its lines.
func ShiftWords(by measure.Length, way string, style measure.Style) string {
	return "shift " + by.Abs().Print(style) + " " + forth(by) + " " + way + " the lines"
}

// side names the way of a turn by the letters of the lines, since left and right
// depend on where one stands.
func side(degrees float64) string {
	if degrees > 0 {
		return "from line A towards the other lines"
	}
	return "from the last line towards line A"
}

func forth(by measure.Length) string {
	if by > 0 {
		return "on"
	}
	return "back"
}

func shifted(dx, dy measure.Length) func(x, y measure.Length) (measure.Length, measure.Length) {
	return func(x, y measure.Length) (measure.Length, measure.Length) { return x + dx, y + dy }
}

// turned turns places about the middle of the frame.
func turned(f *frame.Frame, degrees float64) func(x, y measure.Length) (measure.Length, measure.Length) {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	middleX, middleY := f.Length/2, f.Width/2
	return func(x, y measure.Length) (measure.Length, measure.Length) {
		u, v := float64(x-middleX), float64(y-middleY)
		return middleX + measure.Length(math.Round(u*cos-v*sin)), middleY + measure.Length(math.Round(u*sin+v*cos))
	}
}

// lowestWhere returns the lowest floor with the piers moved.
func (h *Heights) lowestWhere(f *frame.Frame, move func(x, y measure.Length) (measure.Length, measure.Length)) (measure.Length, bool) {
	places := make([]place, len(h.Piers))
	for i, p := range h.Piers {
		x, y := move(p.X, p.Y)
		if h.ground.Beyond(x, y) {
			return 0, false
		}
		places[i] = place{name: p.Name, ground: h.ground.Surface.At(x, y), buildUp: h.terms.BuildUp}
	}
	return h.terms.demands(places, nil)[0].Floor, true
}
