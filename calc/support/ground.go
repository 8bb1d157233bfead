package support

import (
	"fmt"

	"pierbook/calc/check"
	"pierbook/calc/measure"
	"pierbook/calc/trade"
)

// Ground is what is known of the ground under the piers besides its bearing.
type Ground struct {
	Class  string                     // of the soil, empty when only a bearing was given
	Filled bool                       // the job says so
	Given  measure.Stress             // the bearing that the checks take
	Steep  map[string]measure.Percent // slope at the piers where it is steeper than 1 in 3
}

// At returns what somebody else must settle of the ground at a pier: soil of which
// the codes presume no bearing, fill, and a steep slope. Such a pier does not fail
// by it and does not pass either.
func (g Ground) At(pier string, words check.Words) []check.Finding {
	var found []check.Finding
	soil, known := trade.FindSoil(g.Class)
	if known && !soil.HasPresumed() || g.Filled {
		what := g.Class
		if !known || soil.HasPresumed() {
			what = "fill"
		}
		found = append(found, g.untested(pier, what, words))
	}
	if slope, steep := g.Steep[pier]; steep {
		found = append(found, g.slope(pier, slope))
	}
	return found
}

func (g Ground) untested(pier, what string, words check.Words) check.Finding {
	given := words.Pressure(g.Given)
	result := check.Check{ID: "pier." + pier + ".ground", What: "ground of " + what + " at " + pier, Demand: g.Given, Capacity: measure.Word("none presumed"), Ratio: check.RatioOf(float64(g.Given), 0),
		Clause: "IRC 2021 R401.4 and IBC 2021 1806.2: no bearing is presumed of mud, organic silt, organic clay, peat and fill that was not prepared",
		Needs:  fmt.Sprintf("an engineer who has tested the ground of %s, for the %s given are taken as given", what, given)}
	return check.Finding{Check: result, Explain: func(check.Words) []string {
		return []string{fmt.Sprintf("bearing given %s, presumed by the codes of %s: none", given, what), "the checks of stone and soil take the bearing as given"}
	}}
}

func (g Ground) slope(pier string, slope measure.Percent) check.Finding {
	result := check.Check{ID: "pier." + pier + ".slope", What: "slope of the ground at " + pier, Demand: slope, Capacity: trade.SteepGround, Ratio: measure.Ratio(slope / trade.SteepGround),
		Clause: "IRC 2021 R403.1.7: foundations on or beside slopes steeper than 1 in 3", Needs: "an engineer for piers on or beside slopes steeper than 1 in 3"}
	return check.Finding{Check: result, Explain: func(t check.Words) []string {
		return []string{fmt.Sprintf("slope/(1 in 3) = %s/%s = %s", slope.Print(t.Style), trade.SteepGround.Print(t.Style), t.Ratio(float64(result.Ratio)))}
	}}
}
