package blocks

import (
	"fmt"
	"strings"

	"pierbook/calc"
	"pierbook/calc/strength"
	"pierbook/content"
)

// adjustments are the factors on design values, in the order of NDS Table 4.3.1.
var adjustments = []string{"CD", "CM", "Ct", "CL", "CF", "Ci", "Cr", "CP", "Cb"}

// valueTable lists the design values of each kind of member with every factor on
// them, as the check that rules has them.
func valueTable(p *calc.Plan) content.Table {
	c := of(p)
	t := content.Table{Head: []content.Column{words("Value"), number("Reference")}, Size: content.Fine,
		Note: "A dash: the factor does not go on this value. CD, CL, CP and Cb are those of the check named. Ct is 1 at ordinary temperature."}
	for _, symbol := range adjustments {
		t.Head = append(t.Head, number(symbol))
	}
	t.Head = append(t.Head, number("Adjusted"), words("Check that rules"))
	groups := map[string]int{}
	for _, v := range p.Strength.Values() {
		at, known := groups[v.Member]
		if !known {
			at = len(t.Groups)
			groups[v.Member] = at
			t.Groups = append(t.Groups, content.Group{Name: memberName(p, v)})
		}
		row := []content.Cell{{Text: v.Symbol + ", " + v.What, Kind: content.Head, Memory: v.Memory}, c.quantity(v.Reference)}
		for _, symbol := range adjustments {
			cell := text("–")
			if factor, applies := v.Factor(symbol); applies {
				cell = text(fmt.Sprintf("%.3g", float64(factor)))
			}
			row = append(row, cell)
		}
		t.Groups[at].Rows = append(t.Groups[at].Rows, append(row, c.quantity(v.Adjusted), text(v.Check)))
	}
	return t
}

// memberName says what a member is cut from and how it is used, with the source
// of its values.
func memberName(p *calc.Plan, v strength.Value) string {
	for _, m := range p.Strength.Timber {
		if m.Name != v.Member {
			continue
		}
		section := m.Section.Size
		if m.Section.Plies > 1 {
			section = fmt.Sprintf("%d plies of %s", m.Section.Plies, section)
		}
		use := []string{"dry in service", "not incised"}
		if m.Service.Wet {
			use[0] = "wet in service"
		}
		if m.Service.Incised {
			use[1] = "incised"
		}
		return fmt.Sprintf("%ss, %s, %s: %s", upper(v.Member), section, strings.Join(use, ", "), v.Source)
	}
	return v.Member
}

// combinationTable lists the ways in which the loads act together.
func combinationTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Combination"), words("Loads in it"), number("CD"), words("Looked at on")}}
	for _, combo := range p.Strength.Combinations {
		loads, piersAlone := combo.Counts()
		where := "joists, beams, piers"
		if piersAlone {
			where = "piers"
		}
		t.Rows = append(t.Rows, []content.Cell{head(combo.Name), text(loads), text(fmt.Sprintf("%.3g", float64(combo.Duration))), text(where)})
	}
	return t
}
