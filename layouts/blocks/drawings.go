package blocks

import (
	"fmt"
	"html/template"
	"strings"

	"pierbook/calc"
	"pierbook/content"
	"pierbook/diagrams"
	"pierbook/diagrams/kit"
)

// drawn picks the drawings that a block asks for; several when there is one for
// each beam line or each section of timber.
type drawn func(p *calc.Plan) []diagrams.Drawing

// drawings returns the makers of all drawings.
func drawings(trouble *Trouble) map[string]maker {
	makers := map[string]maker{}
	for name, pick := range map[string]drawn{
		"plan":           planDrawing,
		"rectangles":     rectangles,
		"strings":        stringLines,
		"sections":       sections,
		"pier":           aPier,
		"joists":         joistMarks,
		"panels":         panels,
		"nailing":        nailing,
		"boards":         boards,
		"sticks":         sticks,
		"sheet-cuts":     sheetCuts,
		"labels":         labels,
		"splice":         splice,
		"loads":          loads,
		"path":           loadPath,
		"moments":        moments,
		"ground":         contours,
		"heights":        heightCurve,
		"racking":        racking,
		"string-racking": stringRacking,
		"squaring":       squaring,
		"moves":          cornerMoves,
		"as-built":       asBuilt,
		"weekend":        weekend,
		"fall":           fall,
		"check-bars":     func(*calc.Plan) []diagrams.Drawing { return []diagrams.Drawing{diagrams.CheckBars{}} },
	} {
		makers[name] = figuresOf(pick, trouble)
	}
	for line := range 24 {
		name := string("ABCDEFGHJKLMNPQRSTUVWXYZ"[line])
		makers["section "+name] = figuresOf(func(p *calc.Plan) []diagrams.Drawing {
			if line >= len(p.Frame.Lines) {
				return nil
			}
			d := sectionOf(p, line, p.Frame.Lines[line])
			d.AtHand = true
			return []diagrams.Drawing{d}
		}, trouble)
	}
	return makers
}

// figuresOf draws what was picked, one under the other; the page frames them
// and writes their number and caption.
func figuresOf(pick drawn, trouble *Trouble) maker {
	return func(p *calc.Plan, c content.Call) template.HTML {
		var all strings.Builder
		for i, d := range pick(p) {
			about := d.About()
			svg, err := diagrams.DrawWithin(d, p.Style, heightFor(c))
			if err != nil {
				trouble.Err = fmt.Errorf("drawing %s on page %s: %w", about.Name, c.Page, err)
				return ""
			}
			all.Write(kit.WithID(svg, about.Name, fmt.Sprintf("%s-%s-%d", c.Page, about.Name, i)))
		}
		return template.HTML(all.String())
	}
}

// heightFor returns how high a drawing may be in millimetres, so that the rest of
// a step's front, or of its back, stands on the same side of paper: what the page
// says, or else the usual; 0 for as high as it is read best.
func heightFor(c content.Call) float64 {
	switch {
	case c.Height > 0:
		return float64(c.Height)
	case c.Front:
		return 68
	case c.Back:
		return 80
	default:
		return 0
	}
}
