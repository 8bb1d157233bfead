package trade

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync/atomic"
)

// book holds all tables, read.
type book struct {
	texts   map[string]string
	numbers []number
	byKey   map[string]*number
	nails   []Nail
	joints  []Joint
	panels  []Panel
	spans   []panelSpan
	boards  []Board
	soils   []Soil
	species []Species
	uses    []Use
	steps   []Step

	buildings []Building
}

var open atomic.Pointer[book]

func facts() *book {
	if b := open.Load(); b != nil {
		return b
	}
	open.CompareAndSwap(nil, newBook(embeddedTexts()))
	return open.Load()
}

func embeddedTexts() map[string]string {
	texts := map[string]string{}
	files, err := embedded.ReadDir("tables")
	if err != nil {
		panic("trade: " + err.Error())
	}
	for _, file := range files {
		text, err := embedded.ReadFile("tables/" + file.Name())
		if err != nil {
			panic("trade: " + err.Error())
		}
		texts[strings.TrimSuffix(file.Name(), ".txt")] = string(text)
	}
	return texts
}

func newBook(texts map[string]string) *book {
	b := &book{texts: texts}
	rows := func(name string) []row { return readTable(name, texts[name]) }
	b.numbers = readNumbers(rows("numbers"))
	b.byKey = make(map[string]*number, len(b.numbers))
	for i := range b.numbers {
		b.byKey[b.numbers[i].key] = &b.numbers[i]
	}
	b.nails = readNails(rows("nails"))
	b.joints = readJoints(rows("joints"), b.nails)
	b.panels, b.spans, b.boards = readPanels(rows("panels")), readSpans(rows("spans")), readBoards(rows("boards"))
	b.soils, b.species = readSoils(rows("soils")), readSpecies(rows("species"))
	b.buildings = readBuildings(rows("buildings"))
	b.uses = readUses(rows("uses"), b.buildings)
	b.steps = readSteps(rows("steps"))
	return b
}

// Tables returns the names of the tables.
func Tables() []string { return slices.Sorted(maps.Keys(facts().texts)) }

// TableText returns the text of a table.
func TableText(name string) string { return facts().texts[name] }

// Try puts another text in the place of a table's until back is called. It is for
// tests, which change a row and look who takes notice.
func Try(name, text string) (back func(), err error) {
	before := facts()
	if _, known := before.texts[name]; !known {
		return nil, fmt.Errorf("trade: no table is named %q", name)
	}
	defer func() {
		if slip := recover(); slip != nil {
			err = fmt.Errorf("%v", slip)
		}
	}()
	texts := maps.Clone(before.texts)
	texts[name] = text
	open.Store(newBook(texts))
	return func() { open.Store(before) }, nil
}
