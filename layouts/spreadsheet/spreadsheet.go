// Package spreadsheet writes the tables of a plan as CSV (RFC 4180) that a
// spreadsheet opens without surprises: numbers are plain numbers with their
// unit in the head, and no text can start a formula.
package spreadsheet

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"pierbook/calc"
	"pierbook/calc/measure"
)

// mark is the byte order mark: without it some spreadsheets read the file in an
// old code page of their own and make nonsense of ″, × and every letter with an
// accent. RFC 3629, section 6, allows it.
const mark = "\ufeff"

// sheet gathers rows.
type sheet struct{ rows [][]string }

func (s *sheet) row(cells ...string) { s.rows = append(s.rows, cells) }

func (s *sheet) bytes() ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(mark)
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	if err := w.WriteAll(s.rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// number prints a value to the thousandth without trailing zeros.
func number(v float64) string {
	text := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 3, 64), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func millimetres(l measure.Length) string { return number(l.Millimetres()) }

// Piers returns the pier table: places and heights in millimetres and as the
// binder prints them. Cells that are not known yet stay empty.
func Piers(p *calc.Plan) ([]byte, error) {
	var s sheet
	s.row("pier", "x mm", "y mm", "ground mm", "ground from", "dig mm", "stone mm", "seat mm", "post mm", "post", "load N")
	for i, pier := range p.Heights.Piers {
		ground, from := "", ""
		if pier.Level != nil {
			ground, from = millimetres(pier.Level.Height), "estimated"
			if pier.Level.Read {
				from = "read"
			}
		}
		heights := []string{"", "", "", "", ""}
		if h := pier.Hole; h != nil {
			heights = []string{millimetres(h.Dig), millimetres(h.Stone), millimetres(h.Seat), millimetres(h.Post), words(h.Post.Print(p.Style))}
		} else if post, known := p.Heights.PostOf(pier.Name); known {
			heights[3], heights[4] = millimetres(post), words(post.Print(p.Style))
		}
		cells := append([]string{words(pier.Name), millimetres(pier.X), millimetres(pier.Y), ground, from}, heights...)
		s.row(append(cells, number(float64(p.Strength.Piers[i].Most)))...)
	}
	return s.bytes()
}

// Cuts returns the cutting plan: a row for each piece with its stick and mark,
// and for each part from a sheet with its place on it.
func Cuts(p *calc.Plan) ([]byte, error) {
	var s sheet
	s.row("size", "stick", "stick mm", "bought", "piece", "length mm", "length", "mark from hook end mm", "left over mm", "width mm", "along mm", "across mm")
	for _, cut := range p.Cuts {
		if cut.Result == nil {
			continue
		}
		for _, stick := range cut.Result.Sticks {
			bought := "on hand"
			if stick.Bought {
				bought = "buy"
			}
			for _, piece := range stick.Cuts {
				s.row(words(cut.Section.Size), words(cut.StickName(stick)), millimetres(stick.Length), bought, words(piece.Name),
					millimetres(piece.Length), words(piece.Length.Print(p.Style)), millimetres(piece.Mark), millimetres(stick.Left), "", "", "")
			}
		}
	}
	for _, plan := range p.Sheets {
		for i, sheet := range plan.Result.Sheets {
			for _, part := range sheet.Placed {
				s.row(words(plan.Name), words(plan.Names([]int{i})), millimetres(plan.Good.Length), "buy", words(part.Name),
					millimetres(part.Length), words(part.Length.Print(p.Style)), "", "", millimetres(part.Width), millimetres(part.X), millimetres(part.Y))
			}
		}
	}
	return s.bytes()
}

// Order returns the list of what to buy. Prices that are not known stay empty.
func Order(p *calc.Plan) ([]byte, error) {
	var s sheet
	s.row("group", "what", "for", "count", "unit", "pieces", "spare", "each kg", "weight kg", "two people", "price", "cost", "note", "name")
	for _, l := range p.Order.Lines {
		price, total, two, pieces, spare := "", "", "no", "", ""
		if l.Price != nil {
			price = number(float64(*l.Price))
		}
		if cost, known := l.Cost(); known {
			total = number(float64(cost))
		}
		if l.TwoPeople(p.Job.Units) {
			two = "yes"
		}
		if l.Pieces > 0 {
			pieces, spare = strconv.Itoa(l.Pieces), strconv.Itoa(l.Spare)
		}
		s.row(words(string(l.Group)), words(l.What), words(l.Use), strconv.Itoa(l.Count), words(l.Unit), pieces, spare, number(float64(l.Each)), number(float64(l.Mass())), two, price, total, words(l.Note), words(l.DeliveredAs()))
	}
	return s.bytes()
}
