package yard

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pierbook/calc/cutting"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sets returns what to cut from sticks and sheets in the order in which tables
// list it. No saw is set to posts before their seats are read.
func Sets(cuts []Cut, sheets []SheetPlan, seatsRead bool, style measure.Style) []figure.Set {
	return []figure.Set{stickSet(cuts, style), settingSet(cuts, seatsRead), proofSet(cuts, style), sheetSet(sheets, style)}
}

// stickSet says which stick yields which pieces, and where to mark them; sticks
// that are cut alike stand together.
func stickSet(cuts []Cut, style measure.Style) figure.Set {
	set := figure.Set{Name: "sticks", Key: "stick", Fields: []figure.Field{
		{Key: "of", Means: "section of stick %, and what it is for", Formula: "as the frame has it"},
		{Key: "length", Means: "length of stick %", Formula: "as sold, or as counted on site"},
		{Key: "pieces", Means: "pieces of stick %, hook end first", Formula: "the cutting plan"},
		{Key: "marks", Means: "marks of stick % from its hook end", Formula: "Σ pieces and saw cuts before", From: []string{"yard.kerf"}},
		{Key: "left", Means: "left over of stick %", Formula: "length − last mark", From: []string{".length", ".marks"}, Rounding: measure.Down},
	}}
	for _, cut := range cuts {
		of := measure.Word(cut.Section.Size + ", for " + cut.Use())
		for _, like := range cut.Alike() {
			s := like[0]
			pieces := make([]string, len(like))
			for i, one := range like {
				pieces[i] = pieceList(one, i == 0, style)
			}
			set.Row(strconv.Itoa(len(set.Things)+1), strings.TrimPrefix(cut.StickNames(like), cut.Section.Size+" "), of, s.Length, measure.Word(strings.Join(pieces, "; ")), measure.Word(marks(s, style)), s.Left)
		}
	}
	return set
}

// StickKey returns the key of the row that a stick has among those to cut, by its
// name (4x4 no. 1) or by that of a piece that it yields (J7), or "".
func StickKey(cuts []Cut, name string) string {
	row := 0
	for _, cut := range cuts {
		for _, like := range cut.Alike() {
			row++
			for _, s := range like {
				if strings.EqualFold(cut.StickName(s), name) || slices.ContainsFunc(s.Cuts, func(piece cutting.Cut) bool { return piece.Name == name }) {
					return "stick." + strconv.Itoa(row)
				}
			}
		}
	}
	return ""
}

// marks lists the running marks of a stick.
func marks(s cutting.CutStick, style measure.Style) string {
	parts := make([]string, 0, len(s.Cuts)+1)
	if s.Trim > 0 {
		parts = append(parts, "trim "+s.Trim.Print(style))
	}
	for _, piece := range s.Cuts {
		parts = append(parts, piece.Mark.Print(style))
	}
	return strings.Join(parts, ", ")
}

// pieceList names the pieces of a stick, with their lengths where they are not
// the same as on the stick before.
func pieceList(s cutting.CutStick, lengths bool, style measure.Style) string {
	parts := make([]string, 0, len(s.Cuts))
	for _, piece := range s.Cuts {
		name := piece.Name
		if lengths {
			name += "\u00a0" + piece.Length.Print(style)
		}
		parts = append(parts, name)
	}
	return strings.Join(parts, ", ")
}

// settingSet is the settings of the saw's stop, the longest first, each with all
// the pieces cut at it.
func settingSet(cuts []Cut, seatsRead bool) figure.Set {
	set := figure.Set{Name: "saw-settings", Key: "setting", Fields: []figure.Field{
		{Key: "of", Means: "section cut at setting %", Formula: "as the frame has it"},
		{Key: "stop", Means: "where the stop is set, setting %", Formula: "length of the pieces"},
		{Key: "count", Means: "pieces at setting %", Formula: "pieces of that length"},
		{Key: "names", Means: "names and sticks at setting %", Formula: "the cutting plan"},
	}}
	for _, cut := range cuts {
		if cut.Result == nil || slices.Contains(cut.Uses, "posts") && !seatsRead {
			continue
		}
		for _, s := range cut.Result.Settings() {
			n := strconv.Itoa(len(set.Things) + 1)
			set.Row(n, n, measure.Word(cut.Section.Size+", for "+cut.Use()), s.Length, measure.Count(len(s.Cuts)), measure.Word(settingNames(s)))
		}
	}
	return set
}

// settingNames lists pieces with the sticks that they come from; pieces in a row
// that follow one another by name are drawn together.
func settingNames(s cutting.Setting) string {
	const few = 8
	if len(s.Cuts) > few {
		first, last := s.Cuts[0], s.Cuts[len(s.Cuts)-1]
		return fmt.Sprintf("%s (%d) to %s (%d)", first.Name, first.Stick, last.Name, last.Stick)
	}
	parts := make([]string, len(s.Cuts))
	for i, cut := range s.Cuts {
		parts[i] = fmt.Sprintf("%s\u00a0(%d)", cut.Name, cut.Stick)
	}
	return strings.Join(parts, ", ")
}

// proofSet says for each section what is bought, that no plan costs less, and how
// that is known.
func proofSet(cuts []Cut, style measure.Style) figure.Set {
	set := figure.Set{Name: "cutting-plans", Key: "plan", Fields: []figure.Field{
		{Key: "buy", Means: "sticks of % to buy", Formula: "the plan of least cost"},
		{Key: "costs", Means: "what the plan for % costs", Formula: "Σ price, or length where something has no price"},
		{Key: "least", Means: "what any plan for % costs at least", Formula: "a bound on all plans"},
		{Key: "how", Means: "how that is known of %", Formula: "by the certificate of the plan"},
		{Key: "used", Means: "part of the sticks of % that is used", Formula: "Σ pieces ÷ Σ sticks"},
	}}
	none := figure.Nothing
	for _, cut := range cuts {
		key := strconv.Itoa(len(set.Things) + 1)
		if cut.Result == nil || len(cut.Result.Proofs) == 0 {
			set.Row(key, cut.Section.Size, none, none, none, measure.Word(cut.Proof(style)), none)
			continue
		}
		cost := cut.Result.Proofs[0]
		how := cut.ProofOfCost(style)
		if sum := cut.ByHand(style); sum != "" {
			how += ": " + sum
		}
		if lesser := cut.LesserGoals(); lesser != "" {
			how += ". Among plans of that cost " + lesser
		}
		set.Row(key, cut.Section.Size, measure.Count(cut.Result.Bought), measure.Word(cut.Amount(cut.Result.Cost, style)), measure.Word(cut.Amount(max(0, cost.Bound-cut.came), style)), measure.Word(how+"."), cut.Result.UsedShare())
	}
	return set
}

// sheetSet says which sheet yields which parts, and where to saw, strip by strip.
func sheetSet(plans []SheetPlan, style measure.Style) figure.Set {
	set := figure.Set{Name: "part-sheets", Key: "part_sheet", Fields: []figure.Field{
		{Key: "of", Means: "good that sheet % is of", Formula: "as the yard has it, with how the plan is known to be best"},
		{Key: "parts", Means: "parts of sheet %", Formula: "the cutting plan"},
		{Key: "saw", Means: "cuts of sheet % in their order", Formula: "each right through what is being cut", From: []string{"yard.kerf"}},
	}}
	for _, plan := range plans {
		of := measure.Word(plan.Name + ", " + plan.Good.Length.Print(style) + " × " + plan.Good.Width.Print(style) + ": " + plan.Proof())
		for _, like := range plan.Alike() {
			parts := make([]string, len(like))
			for i, number := range like {
				parts[i] = partList(plan.Result.Sheets[number], i == 0, style)
			}
			saw := sawWords(plan.Result.Sheets[like[0]].Saw(plan.Good.Length, plan.Good.Width), style)
			set.Row(strconv.Itoa(len(set.Things)+1), strings.TrimPrefix(plan.Names(like), plan.Name+" "), of, measure.Word(strings.Join(parts, "; ")), measure.Word(saw))
		}
	}
	return set
}

// partList names the parts of a sheet, those of one size together, with their
// sizes where they are not the same as on the sheet before.
func partList(sheet cutting.Sheet, sizes bool, style measure.Style) string {
	const few = 3
	var groups []string
	for at := 0; at < len(sheet.Placed); {
		first, to := sheet.Placed[at], at+1
		for to < len(sheet.Placed) && sheet.Placed[to].Length == first.Length && sheet.Placed[to].Width == first.Width {
			to++
		}
		names := make([]string, to-at)
		for i := range names {
			names[i] = sheet.Placed[at+i].Name
		}
		words := strings.Join(names, ", ")
		if len(names) > few {
			words = names[0] + " to " + names[len(names)-1]
		}
		if sizes {
			words += " " + first.Length.Print(style) + "\u00a0×\u00a0" + first.Width.Print(style)
		}
		groups = append(groups, words)
		at = to
	}
	return strings.Join(groups, "; ")
}

// sawWords says the cuts in their order: "rip at 14″, at 28 1/8″ (crosscut at 20″)".
func sawWords(cuts []cutting.SheetCut, style measure.Style) string {
	var parts []string
	said := ""
	for _, cut := range cuts {
		way, words := "crosscut ", "at "+cut.At.Print(style)
		if cut.Rip {
			way = "rip "
		}
		if cut.Rest {
			words = "the rest"
			if len(parts) == 0 {
				words = "the whole"
			}
		} else if way != said {
			said = way
			words = way + words
		}
		if within := sawWords(cut.Within, style); within != "" {
			words += " (" + within + ")"
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, ", ")
}
