package blocks

import (
	"pierbook/calc"
	"pierbook/content"
)

// savingTable lists changes of the job that save, with what they save.
func savingTable(p *calc.Plan) content.Table {
	t := content.Table{Head: []content.Column{words("Change"), words("Write"), words("Saves"), number("Greatest ratio of the checks"), words("If")}}
	for _, a := range p.Alternatives() {
		t.Rows = append(t.Rows, []content.Cell{text(a.Saying), text(a.Path + ": " + a.Write), text(a.Saving.Print(p.Style)), text(a.Worst.Print(p.Style)), text(a.Condition)})
	}
	t.Note = "Each change by itself, laid out and checked anew; two together may not pass. Posts, stone, cloth, nails and digging are not in the sums."
	return t
}
