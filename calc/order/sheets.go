package order

import (
	"fmt"

	"pierbook/calc/measure"
)

// sheetDensity is that of plywood and boards of strands: HUD Residential
// Structural Design Guide (2000) Table 3.3, 36 pcf.
const sheetDensity = 36 * measure.PoundPerCubicFoot

func sheetLines(in Input) []Line {
	var lines []Line
	style := in.Job.Style()
	for _, s := range in.Sheets {
		thick := measure.Exact(s.Good.Thickness).Print(style)
		lines = append(lines, Line{Key: "order.sheet." + s.Name, Group: Surface, What: fmt.Sprintf("%s %s thick, %s × %s", s.Name, thick, s.Good.Length.Print(style), s.Good.Width.Print(style)),
			Use: s.Use(), Count: len(s.Result.Sheets), Unit: "sheets", Each: sheetDensity.Of(s.Good.Length.Times(s.Good.Width).Deep(s.Good.Thickness)), Price: s.Good.Price,
			Source: "the plan of its cuts", Formula: "sheets in the plan of its cuts", Working: fmt.Sprintf("%d sheets", len(s.Result.Sheets)), From: []string{"sheet." + s.Name + ".count"},
			Weighed: "thickness × face at 36 pcf: HUD Residential Structural Design Guide (2000) Table 3.3"})
	}
	return lines
}
