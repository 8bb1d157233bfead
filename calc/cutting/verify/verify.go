// Package verify checks a cutting plan against its problem. It shares no code
// with the search that found the plan: every rule is written down a second
// time, in the plainest way there is.
package verify

import (
	"fmt"
	"slices"
	"strings"

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
		if s.Trim != p.Trim {
			return fmt.Errorf("stick %d: %d nm trimmed, want %d", s.Number, s.Trim, p.Trim)
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
	bought := map[measure.Length]int{}
	for _, s := range r.Sticks {
		if s.Bought {
			if !slices.ContainsFunc(p.Stock, func(k cutting.Stock) bool { return k.Length == s.Length }) {
				return fmt.Errorf("stick %d: no stock of %d nm", s.Number, s.Length)
			}
			if want := price(p, s.Length); s.Name != "" || s.Price != want {
				return fmt.Errorf("stick %d: bought as %q at %d, want no name and %d", s.Number, s.Name, s.Price, want)
			}
			bought[s.Length]++
			continue
		}
		if s.Price != 0 {
			return fmt.Errorf("stick %d: on hand at a price of %d", s.Number, s.Price)
		}
		k := stick{s.Length, s.Name}
		if have[k]--; have[k] < 0 {
			return fmt.Errorf("stick %d: no stick %q of %d nm is left on hand", s.Number, s.Name, s.Length)
		}
	}
	for length, n := range bought {
		if has, limited := yardHas(p, length); limited && n > has {
			return fmt.Errorf("%d sticks of %d nm bought, and the yard has %d", n, length, has)
		}
	}
	return nil
}

// yardHas returns how many sticks of a length the yard has, and whether that is
// limited at all.
func yardHas(p cutting.Problem, length measure.Length) (sticks int, limited bool) {
	for _, s := range p.Stock {
		if s.Length == length {
			if s.Sticks == 0 {
				return 0, false
			}
			sticks += s.Sticks
		}
	}
	return sticks, true
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
	cost, bought, offcut, patterns := int64(0), 0, measure.Length(0), map[string]int{}
	for _, s := range r.Sticks {
		way := wayOf(s)
		if _, seen := patterns[way]; !seen {
			patterns[way] = len(patterns) + 1
		}
		if s.Pattern != patterns[way] {
			return fmt.Errorf("stick %d: pattern %d, want %d", s.Number, s.Pattern, patterns[way])
		}
		if s.Bought {
			cost += price(p, s.Length)
			bought++
			offcut = max(offcut, s.Left)
		}
	}
	byLength := slices.ContainsFunc(p.Stock, func(k cutting.Stock) bool { return !k.Priced })
	if r.ByLength != byLength {
		return fmt.Errorf("cost counted by length: %v, want %v", r.ByLength, byLength)
	}
	if cost != r.Cost || bought != r.Bought || offcut != r.Offcut || len(patterns) != r.Patterns {
		return fmt.Errorf("cost %d, %d bought, offcut %d, %d patterns; want %d, %d, %d, %d", r.Cost, r.Bought, r.Offcut, r.Patterns, cost, bought, offcut, len(patterns))
	}
	return nil
}

// wayOf writes down how a stick is cut: sticks cut alike give the same.
func wayOf(s cutting.CutStick) string {
	var b strings.Builder
	fmt.Fprint(&b, s.Length, s.Bought)
	for _, c := range s.Cuts {
		fmt.Fprint(&b, " ", int64(c.Length))
	}
	return b.String()
}

// proofs checks that every goal asked for has its proof, that what is said of it
// is so, that no bound passes it, and that it was reached in a way there is for it.
func proofs(p cutting.Problem, r cutting.Result) error {
	asked := 0
	if slices.ContainsFunc(p.Pieces, func(piece cutting.Piece) bool { return piece.Count > 0 }) {
		asked = int(p.Goals)
		if asked == 0 {
			asked = int(cutting.FewestPatterns)
		}
	}
	if len(r.Proofs) != asked {
		return fmt.Errorf("%d proofs for %d goals", len(r.Proofs), asked)
	}
	values := map[cutting.Goal]int64{
		cutting.LeastCost: r.Cost, cutting.FewestSticks: int64(r.Bought),
		cutting.LongestOffcut: int64(r.Offcut), cutting.FewestPatterns: int64(r.Patterns),
	}
	for i, q := range r.Proofs {
		beyond := q.Bound > q.Value
		if q.Goal == cutting.LongestOffcut {
			beyond = q.Bound < q.Value
		}
		if q.Goal != cutting.Goal(i+1) || q.Value != values[q.Goal] || beyond || q.Proven != (q.Bound == q.Value) {
			return fmt.Errorf("goal %d: value %d, bound %d, proven %v; the plan has %d", q.Goal, q.Value, q.Bound, q.Proven, values[q.Goal])
		}
		if err := reached(p, r, q); err != nil {
			return err
		}
	}
	return nil
}

// reached checks that the bound of a goal can have been reached as is said: by
// duals only that of the cost, by count only what can be counted.
func reached(p cutting.Problem, r cutting.Result, q cutting.Proof) error {
	counted := int64(-1)
	switch {
	case q.Reached == cutting.ByClosedSearch, q.Reached == cutting.ByDuals && q.Goal == cutting.LeastCost:
		return nil
	case q.Reached != cutting.ByCount:
	case q.Goal == cutting.LeastCost:
		counted = 0
	case q.Goal == cutting.FewestSticks:
		dearest := int64(0)
		for _, s := range p.Stock {
			if each := price(p, s.Length); !needless(p, s.Length, each) {
				dearest = max(dearest, each)
			}
		}
		if dearest > 0 {
			counted = (r.Proofs[0].Bound + dearest - 1) / dearest
		}
	case q.Goal == cutting.LongestOffcut:
		return nil // the mixes of sticks behind it are tried one by one in the tests
	case q.Goal == cutting.FewestPatterns:
		lengths, held := different(p)
		counted = (lengths + held - 1) / held
	}
	if q.Bound > max(counted, 0) || counted < 0 && q.Bound != 0 {
		return fmt.Errorf("goal %d: a bound of %d reached by %v; a count gives %d", q.Goal, q.Bound, q.Reached, counted)
	}
	return nil
}

// different returns how many different lengths are wanted, and how many of them
// the longest stick can hold at most.
func different(p cutting.Problem) (lengths, held int64) {
	var wanted []measure.Length
	for _, piece := range p.Pieces {
		if piece.Count > 0 {
			wanted = append(wanted, piece.Length)
		}
	}
	slices.Sort(wanted)
	wanted = slices.Compact(wanted)
	room := measure.Length(0)
	for _, s := range p.Stock {
		room = max(room, s.Length)
	}
	for _, s := range p.OnHand {
		if s.Count > 0 {
			room = max(room, s.Length)
		}
	}
	if p.Trim > 0 {
		room -= p.Trim + p.Kerf
	}
	for _, length := range wanted {
		if room < length {
			break
		}
		room -= length + p.Kerf
		held++
	}
	return int64(len(wanted)), max(held, 1)
}
