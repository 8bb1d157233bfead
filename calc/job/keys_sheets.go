package job

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pierbook/calc/measure"
)

// plainSheet is what parts are cut from when neither they nor the yard name a
// sheet.
const plainSheet = "plywood"

func sheetKeys() []Key {
	part := func(change func(*SheetPart, value)) func(*Job, value) {
		return func(j *Job, v value) {
			p := j.SheetParts[v.names[0]]
			change(&p, v)
			j.SheetParts = with(j.SheetParts, v.names[0], p)
		}
	}
	sheet := func(change func(*SheetGood, value)) func(*Job, value) {
		return func(j *Job, v value) {
			s := j.Yard.Sheets[v.names[0]]
			change(&s, v)
			j.Yard.Sheets = with(j.Yard.Sheets, v.names[0], s)
		}
	}
	parts, sheets := []string{"spot"}, []string{"spot"}
	return []Key{
		{Path: "sheet_parts.*.from", Stars: parts, Kind: Text, Letters: 40, Means: "sheet that this part is cut from, by its name under yard.sheets; the only one there when left out, or plywood 8' by 4'", put: part(func(p *SheetPart, v value) { p.From = v.text })},
		{Path: "sheet_parts.*.count", Stars: parts, Kind: Count, Least: 1, Most: 200, Required: true, Missing: "write how many of this part are wanted", Means: "how many of this part", put: part(func(p *SheetPart, v value) { p.Count = v.count })},
		{Path: "sheet_parts.*.length", Stars: parts, Kind: Length, AtLeast: leastStep, AtMost: longestSide, Required: true, Missing: "write the length of the part, along the grain", Means: "length of this part, along the grain", put: part(func(p *SheetPart, v value) { p.Length = v.length })},
		{Path: "sheet_parts.*.width", Stars: parts, Kind: Length, AtLeast: leastStep, AtMost: longestSide, Required: true, Missing: "write the width of the part", Means: "width of this part", put: part(func(p *SheetPart, v value) { p.Width = v.length })},
		{Path: "sheet_parts.*.grain", Stars: parts, Kind: Word, Choices: []string{"along", "free"}, Means: "whether the length of this part keeps along the grain, as it does when left out, or may lie either way", put: part(func(p *SheetPart, v value) { p.Free = v.word == "free" })},
		{Path: "yard.sheets.*.length", Stars: sheets, Kind: Length, AtLeast: leastStep, AtMost: longestSide, Required: true, Missing: "write the length of a sheet, along its grain", Means: "length of this sheet, along the grain", put: sheet(func(s *SheetGood, v value) { s.Length = v.length })},
		{Path: "yard.sheets.*.width", Stars: sheets, Kind: Length, AtLeast: leastStep, AtMost: longestSide, Required: true, Missing: "write the width of a sheet", Means: "width of this sheet", put: sheet(func(s *SheetGood, v value) { s.Width = v.length })},
		{Path: "yard.sheets.*.thickness", Stars: sheets, Kind: Length, AtMost: thickest, Required: true, Missing: "write the thickness of a sheet, which its weight hangs on", Means: "thickness of this sheet", put: sheet(func(s *SheetGood, v value) { s.Thickness = v.length })},
		{Path: "yard.sheets.*.price", Stars: sheets, Kind: Money, Means: "price of a sheet", put: sheet(func(s *SheetGood, v value) {
			price := measure.Money(v.number)
			s.Price = &price
		})},
	}
}

// plainGood is what is taken for a plain sheet that the yard does not list:
// common practice, no source.
func (j *Job) plainGood() SheetGood {
	if j.Units == measure.Metric {
		return SheetGood{Length: 2440 * measure.Millimetre, Width: 1220 * measure.Millimetre, Thickness: 12 * measure.Millimetre}
	}
	return SheetGood{Length: 8 * measure.Foot, Width: 4 * measure.Foot, Thickness: measure.Inch / 2}
}

// Sheet returns the name and the kind of sheet that a part is cut from, and
// whether there is one.
func (j *Job) Sheet(p SheetPart) (string, SheetGood, bool) {
	name := p.From
	if name == "" {
		switch names := slices.Sorted(maps.Keys(j.Yard.Sheets)); len(names) {
		case 0:
			name = plainSheet
		case 1:
			name = names[0]
		}
	}
	if good, listed := j.Yard.Sheets[name]; listed {
		return name, good, true
	}
	if name != plainSheet {
		return name, SheetGood{}, false
	}
	return name, j.plainGood(), true
}

// checkSheets reports parts whose sheet is not known, and parts that do not go
// on it.
func (j *Job) checkSheets(r *reader) {
	for _, name := range slices.Sorted(maps.Keys(j.SheetParts)) {
		part, path := j.SheetParts[name], join("sheet_parts", name)
		if r.spoilt(path) || r.spoilt("yard.sheets") {
			continue
		}
		sheet, good, known := j.Sheet(part)
		listed := strings.Join(slices.Sorted(maps.Keys(j.Yard.Sheets)), ", ")
		style := j.Style()
		switch {
		case sheet == "":
			r.wrong(path, r.at(path), "says nothing of the sheet, and the yard lists several", "write from, one of: "+listed)
		case !known && listed == "":
			r.wrong(path+".from", r.at(path+".from"), fmt.Sprintf("%q is not among yard.sheets", sheet), "list the sheet with its length, width and thickness under yard.sheets")
		case !known:
			r.wrong(path+".from", r.at(path+".from"), fmt.Sprintf("%q is not among yard.sheets", sheet), "write one of: "+listed)
		case !part.fits(good):
			r.wrong(path, r.at(path), fmt.Sprintf("%s × %s does not go on a sheet of %s × %s", part.Length.Print(style), part.Width.Print(style), good.Length.Print(style), good.Width.Print(style)),
				"make it in two parts, or let its grain be free where that helps")
		}
	}
}

func (p SheetPart) fits(s SheetGood) bool {
	return p.Length <= s.Length && p.Width <= s.Width || p.Free && p.Width <= s.Length && p.Length <= s.Width
}
