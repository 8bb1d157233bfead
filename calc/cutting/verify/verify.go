// Package verify checks a cutting plan against its problem. It shares no code
// with the search that found the plan: every rule is written down a second
// time, in the plainest way there is.
package verify

import (
	"fmt"
	"slices"

	"pierbook/calc/cutting"
	"pierbook/calc/measure"
)

// Plan reports the first thing wrong with a plan: a piece not made, or made too
// often; a stick that yields more than it has; marks, offcuts, cost or counts
// that do not add up; a stick on hand used twice; a bound above what was
// reached; a certificate that does not prove its bound.
func Plan(p cutting.Problem, r cutting.Result) error {
	for _, check := range []func(cutting.Problem, cutting.Result) error{pieces, names, sticks, onHand, totals, proofs, certificate} {
		if err := check(p, r); err != nil {
			return fmt.Errorf("verify: %w", err)
		}
	}
	return nil
}

// pieces checks that every length is cut as often as it is wanted.
func pieces(p cutting.Problem, r cutting.Result) error {
	short := map[measure.Length]int{}
	for _, piece := range p.Pieces {
		short[piece.Length] += piece.Count
	}
	for _, s := range r.Sticks {
		for _, c := range s.Cuts {
			short[c.Length]--
		}
	}
	for length, n := range short {
		if n != 0 {
			return fmt.Errorf("pieces of %d nm are %d short", length, n)
		}
	}
	return nil
}

// names checks that every name is given to one piece of its length.
func names(p cutting.Problem, r cutting.Result) error {
	type label struct {
		length measure.Length
		name   string
	}
	wanted := map[label]int{}
	for _, piece := range p.Pieces {
		for _, n := range piece.Names {
			wanted[label{piece.Length, n}]++
		}
	}
	for _, s := range r.Sticks {
		for _, c := range s.Cuts {
			if c.Name != "" {
				wanted[label{c.Length, c.Name}]--
			}
		}
	}
	for l, n := range wanted {
		if n != 0 && l.name != "" {
			return fmt.Errorf("name %q at %d nm is %d short", l.name, l.length, n)
		}
	}
	return nil
}

// sticks checks each stick by sawing it up: trim, kerf, piece, kerf, piece …
func sticks(p cutting.Problem, r cutting.Result) error {
	for i, s := range r.Sticks {
		if s.Number != i+1 || len(s.Cuts) == 0 {
			return fmt.Errorf("stick %d in place %d with %d pieces", s.Number, i+1, len(s.Cuts))
		}
		left, at := s.Length, measure.Length(0)
		saw := func(length measure.Length) error {
			if length > left {
				return fmt.Errorf("stick %d of %d nm is too short for its pieces", s.Number, s.Length)
			}
			// The saw falls off the end when less than a kerf is left.
			kerf := min(p.Kerf, left-length)
			left -= length + kerf
			at += length + p.Kerf
			return nil
		}
		if p.Trim > 0 {
			if err := saw(p.Trim); err != nil {
				return err
			}
		}
		for _, c := range s.Cuts {
			if c.Mark != at+c.Length {
				return fmt.Errorf("stick %d: mark %d, want %d", s.Number, c.Mark, at+c.Length)
			}
			if err := saw(c.Length); err != nil {
				return err
			}
		}
		if left != s.Left {
			return fmt.Errorf("stick %d: %d nm left, want %d", s.Number, s.Left, left)
		}
	}
	return nil
}

// onHand checks that sticks on hand are there and bought ones can be bought.
func onHand(p cutting.Problem, r cutting.Result) error {
	type stick struct {
		length measure.Length
		name   string
	}
	have := map[stick]int{}
	for _, s := range p.OnHand {
		have[stick{s.Length, s.Name}] += s.Count
	}
	for _, s := range r.Sticks {
		if s.Bought {
			if !slices.ContainsFunc(p.Stock, func(k cutting.Stock) bool { return k.Length == s.Length }) {
				return fmt.Errorf("stick %d: no stock of %d nm", s.Number, s.Length)
			}
			continue
		}
		k := stick{s.Length, s.Name}
		if have[k]--; have[k] < 0 {
			return fmt.Errorf("stick %d: no stick %q of %d nm is left on hand", s.Number, s.Name, s.Length)
		}
	}
	return nil
}

// price returns the cheapest price of a length, or the length itself where a
// price is unknown.
func price(p cutting.Problem, length measure.Length) int64 {
	if slices.ContainsFunc(p.Stock, func(k cutting.Stock) bool { return !k.Priced }) {
		return int64(length)
	}
	best := int64(-1)
	for _, k := range p.Stock {
		if k.Length == length && (best < 0 || k.Price < best) {
			best = k.Price
		}
	}
	return best
}

// totals checks cost, sticks, offcut and patterns.
func totals(p cutting.Problem, r cutting.Result) error {
	cost, bought, offcut, patterns := int64(0), 0, measure.Length(0), map[int]bool{}
	for _, s := range r.Sticks {
		patterns[s.Pattern] = true
		if s.Bought {
			cost += price(p, s.Length)
			bought++
			offcut = max(offcut, s.Left)
		}
	}
	if cost != r.Cost || bought != r.Bought || offcut != r.Offcut || len(patterns) != r.Patterns {
		return fmt.Errorf("cost %d, %d bought, offcut %d, %d patterns; want %d, %d, %d, %d", r.Cost, r.Bought, r.Offcut, r.Patterns, cost, bought, offcut, len(patterns))
	}
	return nil
}

// proofs checks that what is said of each aim is so, and no bound passes it.
func proofs(_ cutting.Problem, r cutting.Result) error {
	values := map[cutting.Aim]int64{
		cutting.LeastCost: r.Cost, cutting.FewestSticks: int64(r.Bought),
		cutting.LongestOffcut: int64(r.Offcut), cutting.FewestPatterns: int64(r.Patterns),
	}
	for _, q := range r.Proofs {
		beyond := q.Bound > q.Value
		if q.Aim == cutting.LongestOffcut {
			beyond = q.Bound < q.Value
		}
		if q.Value != values[q.Aim] || beyond || q.Proven != (q.Bound == q.Value) {
			return fmt.Errorf("aim %d: value %d, bound %d, proven %v; the plan has %d", q.Aim, q.Value, q.Bound, q.Proven, values[q.Aim])
		}
	}
	return nil
}
