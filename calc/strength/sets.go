package strength

import (
	"fmt"
	"strconv"
	"strings"

	"pierbook/calc/check"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Sets returns loads, checks and what follows from them in the order in which
// tables list them, with the figures of each that only tables ask for.
func (s *Strength) Sets() []figure.Set {
	return []figure.Set{s.loadSet(), s.combinationSet(), s.pierLoadSet(), s.balanceSet(), s.tieSet(), s.pathSet(),
		s.remedySet(), s.checkSet(), s.conventionSet(), s.valueSet(), s.remarkSet()}
}

func (s *Strength) loadSet() figure.Set {
	set := figure.Set{Name: "loads", Key: "load", Fields: []figure.Field{
		{Key: "amount", Means: "%, on what it acts on", Formula: "as its figure"},
		{Key: "whole", Means: "%, in all", Formula: "Σ over what it acts on"},
		{Key: "source", Means: "where it is from: %", Formula: "as its figure"},
	}}
	for _, l := range s.Loads {
		var whole measure.Quantity = figure.Nothing
		if l.Total != 0 {
			whole = l.Total
		}
		set.Row(l.ID, l.What, figure.Said{Quantity: l.Amount, From: []string{"load." + l.ID}}, whole, figure.Said{Quantity: measure.Word(l.Source), Memory: l.Memory})
	}
	return set
}

func (s *Strength) combinationSet() figure.Set {
	set := figure.Set{Name: "combinations", Key: "combination", Fields: []figure.Field{
		{Key: "loads", Means: "loads in %", Formula: "ASCE 7-16 section 2.4"},
		{Key: "duration", Means: "load-duration factor of %", Formula: "that of its shortest load, NDS Table 2.3.2"},
		{Key: "on", Means: "what is looked at under %", Formula: "wind and lift reach the piers alone"},
	}}
	for i, combo := range s.Combinations {
		loads, piersAlone := combo.Counts()
		where := measure.Word("joists, beams, piers")
		if piersAlone {
			where = "piers"
		}
		set.Row(strconv.Itoa(i+1), combo.Name, measure.Word(loads), threeDigits(float64(s.duration(combo))), where)
	}
	return set
}

// threeDigits prints a factor as handbooks do.
func threeDigits(v float64) measure.Word { return measure.Word(fmt.Sprintf("%.3g", v)) }

func (s *Strength) pierLoadSet() figure.Set {
	set := figure.Set{Name: "pier-loads", Key: "pier", Known: []string{"dead", "building", "live", "snow", "reaction"}, Fields: []figure.Field{
		{Key: "combination", Means: "loads together that are the most on %", Formula: "the greatest of all combinations", From: []string{".reaction"}},
	}}
	for _, p := range s.Piers {
		set.Row(p.Name, p.Name, measure.Word(p.Combination))
	}
	return set
}

func (s *Strength) balanceSet() figure.Set {
	set := figure.Set{Name: "balances", Key: "load.sum", Known: []string{"applied", "reactions"}, Fields: []figure.Field{
		{Key: "difference", Means: "%, applied less carried", Formula: "applied − reactions", From: []string{".applied", ".reactions"}},
	}}
	for _, b := range s.Balance {
		set.Row(strings.ReplaceAll(b.Case, " ", "_"), b.Case, b.Difference())
	}
	return set
}

func (s *Strength) tieSet() figure.Set {
	set := figure.Set{Name: "ties", Key: "pier", Known: []string{"up", "level"}, Fields: []figure.Field{{Key: "joint", Means: "what the anchorage at % joins",
		Formula: "beam to post and post to block, or block to ground"}}}
	for _, tie := range s.Ties {
		set.Row(strings.TrimPrefix(tie.Key(), "pier."), tie.Pier, measure.Word(tie.Joint))
	}
	return set
}

func (s *Strength) pathSet() figure.Set {
	set := figure.Set{Name: "path", Key: "path", Fields: []figure.Field{
		{Key: "adds", Means: "what comes on: %", Formula: "as its working"},
		{Key: "sum", Means: "what goes down: %", Formula: "Σ from the surface down"},
		{Key: "working", Means: "how it is worked: %", Formula: "symbols, numbers, units"},
	}}
	for i, step := range s.Path {
		set.Row(strconv.Itoa(i+1), step.Part, orNothing(step.Adds), orNothing(step.Sum), measure.Word(step.Working))
	}
	return set
}

// orNothing is a quantity, or nothing where there is none.
func orNothing(q measure.Quantity) measure.Quantity {
	if q == nil {
		return figure.Nothing
	}
	return q
}

func (s *Strength) remedySet() figure.Set {
	set := figure.Set{Name: "remedies", Key: "remedy", Fields: []figure.Field{
		{Key: "change", Means: "in the job file: %", Formula: "the key and what to write"},
		{Key: "cost", Means: "what it costs: %", Formula: "against the frame as it stands"},
		{Key: "worst", Means: "greatest ratio then: %", Formula: "greatest of the checks of the frame as changed"},
		{Key: "mends", Means: "what it mends: %", Formula: "the checks that hold then"},
	}}
	for i, r := range s.Remedies {
		mends := "in part: " + strings.Join(r.Helps, ", ")
		if r.Mends {
			mends = "all"
		}
		set.Row(strconv.Itoa(i+1), r.Words, measure.Word(r.Change), measure.Word(r.Cost), r.Worst, measure.Word(mends))
	}
	return set
}

// Ruling returns failing checks and, of every kind, the worst. The checks come
// sorted, so the first of a kind is its worst.
func (s *Strength) Ruling() []check.Check {
	var list []check.Check
	seen := map[string]bool{}
	for _, c := range s.Checks {
		family, _, kind, many := c.Repeated()
		if many && seen[family+kind] && !c.Fails() {
			continue
		}
		seen[family+kind] = true
		list = append(list, c)
	}
	return list
}

func (s *Strength) checkSet() figure.Set      { return ofChecks("checks", s.Ruling()) }
func (s *Strength) conventionSet() figure.Set { return ofChecks("conventions", s.Conventions) }

func ofChecks(name string, checks []check.Check) figure.Set {
	set := figure.Set{Name: name, Key: "check", Known: []string{"ratio"}, Fields: []figure.Field{
		{Key: "demand", Means: "demand: %", Formula: "as its working"},
		{Key: "capacity", Means: "capacity: %", Formula: "as its working"},
		{Key: "verdict", Means: "verdict: %", Formula: "passes up to a ratio of 1", From: []string{".ratio"}},
		{Key: "fails", Means: "whether it fails: %", Formula: "a ratio over 1 that no work by others mends", From: []string{".ratio"}},
		{Key: "clause", Means: "rule: %", Formula: "the clause or table it is checked by"},
	}}
	for _, c := range checks {
		set.Row(c.ID, c.What, orNothing(c.Demand), orNothing(c.Capacity), measure.Word(c.Verdict()), figure.Yes(c.Fails()), figure.Said{Quantity: measure.Word(c.Clause), Memory: c.Memory})
	}
	return set
}

// valueSet is the design values of each kind of member with every factor on them,
// as the check that rules has them.
func (s *Strength) valueSet() figure.Set {
	set := figure.Set{Name: "design-values", Key: "value", Fields: []figure.Field{
		{Key: "member", Means: "member with %", Formula: "its section, its use, and the source of its values"},
		{Key: "value", Means: "which value: %", Formula: "symbol and name"},
		{Key: "reference", Means: "reference value of %", Formula: "as tabulated"},
		{Key: "adjusted", Means: "adjusted value of %", Formula: "reference × the factors that apply", From: []string{".reference"}},
		{Key: "check", Means: "check that rules %", Formula: "the greatest ratio of those that take the value"},
	}}
	for _, symbol := range s.symbols {
		set.Fields = append(set.Fields, figure.Field{Key: symbol, Means: symbol + " on %", Formula: "NDS 2018 Table 4.3.1; a dash where it does not apply"})
	}
	for i, v := range s.Values() {
		row := []measure.Quantity{measure.Word(s.use(v)), figure.Said{Quantity: measure.Word(v.Symbol + ", " + v.What), Memory: v.Memory}, v.Reference, v.Adjusted, measure.Word(v.Check)}
		for _, symbol := range s.symbols {
			factor, applies := v.Factor(symbol)
			if applies {
				row = append(row, threeDigits(float64(factor)))
			} else {
				row = append(row, measure.Word("–"))
			}
		}
		set.Row(strconv.Itoa(i+1), v.Member+" "+v.Symbol, row...)
	}
	return set
}

func (s *Strength) remarkSet() figure.Set {
	set := figure.Set{Name: "remarks", Key: "remark", Fields: []figure.Field{
		{Key: "standing", Means: "standing of: %", Formula: "fails, by others, or not counted"},
	}}
	for i, r := range s.Remarks {
		set.Row(strconv.Itoa(i+1), r.Words, measure.Word(r.Standing))
	}
	return set
}

// use says what the member of a value is cut from and how it is used, with the
// source of its values.
func (s *Strength) use(v check.DesignValue) string {
	for _, k := range s.members {
		if k.name == v.Member {
			return strings.ToUpper(v.Member[:1]) + v.Member[1:] + "s, " + k.Use() + ": " + v.Source
		}
	}
	return v.Member
}
