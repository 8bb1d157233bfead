package verify

import (
	"fmt"

	"pierbook/calc/cutting"
)

// Sheets reports the first thing wrong with a plan for sheets: a part missing,
// of a wrong size or turned across its grain, two parts less than a kerf apart
// or over the edge, or a sheet that cuts from edge to edge cannot take apart.
func Sheets(p cutting.SheetProblem, r cutting.SheetResult) error {
	wanted := map[cutting.SheetPart]int{}
	turns := map[string]bool{}
	for _, part := range p.Parts {
		wanted[cutting.SheetPart{Name: part.Name, Length: part.Length, Width: part.Width}]++
		turns[part.Name] = part.Turns
	}
	for n, s := range r.Sheets {
		for _, q := range s.Placed {
			part := cutting.SheetPart{Name: q.Name, Length: q.Length, Width: q.Width}
			if q.Turned {
				if !turns[q.Name] {
					return fmt.Errorf("verify: %q on sheet %d is turned across its grain", q.Name, n+1)
				}
				part.Length, part.Width = q.Width, q.Length
			}
			if q.X < 0 || q.Y < 0 || q.X+q.Length > p.Length || q.Y+q.Width > p.Width {
				return fmt.Errorf("verify: %q is over the edge of sheet %d", q.Name, n+1)
			}
			wanted[part]--
		}
		if len(s.Placed) == 0 || !apart(p, s.Placed) {
			return fmt.Errorf("verify: sheet %d cannot be cut from edge to edge", n+1)
		}
	}
	for part, n := range wanted {
		if n != 0 {
			return fmt.Errorf("verify: part %q is %d short", part.Name, n)
		}
	}
	return nil
}

// apart takes the parts apart by straight cuts: some cut, a kerf
// wide, leaves parts on both sides and goes through none, and so on within
// each side.
func apart(p cutting.SheetProblem, parts []cutting.Placed) bool {
	if len(parts) < 2 {
		return true
	}
	for _, cut := range parts {
		for _, lengthwise := range []bool{false, true} {
			var near, far []cutting.Placed
			clear := true
			for _, q := range parts {
				edge, start, end := cut.X+cut.Length, q.X, q.X+q.Length
				if lengthwise {
					edge, start, end = cut.Y+cut.Width, q.Y, q.Y+q.Width
				}
				switch {
				case end <= edge:
					near = append(near, q)
				case start >= edge+p.Kerf:
					far = append(far, q)
				default:
					clear = false
				}
			}
			if clear && len(far) > 0 {
				return apart(p, near) && apart(p, far)
			}
		}
	}
	return false
}
