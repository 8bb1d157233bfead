package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
)

func faultsOf(t *testing.T, texts ...string) string {
	t.Helper()
	j, faults := job.Read(files(texts...), texts[0])
	require.False(t, faults.Empty(), "no fault was found")
	require.Nil(t, j)
	return printed(faults)
}

func TestEightFaultsOfOneFileInOneGo(t *testing.T) {
	got := faultsOf(t, "shed.yaml", `name: Shed
platform:
  length: 16'
  width: 12
  use: gardn_room
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: clay}}
frame:
  joists: {size: 2x7, spaceing: 16"}
  beams: {lines: 3}
  piers: {per_line: 5}
ground:
  sights:
    - [bench_mark: 4' 2", A9: 4' 9"]
  probes: {B2: {found: firm}}
stone: {least: 14"}
crew: {starts: soon}
`)
	assert.Equal(t, `shed.yaml:4:10: platform.width: "12" has no unit
   4 |   width: 12
     |          ^^
  write the unit, such as 12" or 12 mm
shed.yaml:5:8: platform.use: "gardn_room" is not in the list
   5 |   use: gardn_room
     |        ^^^^^^^^^^
  did you mean garden_room? Write one of: deck, garden_room, summerhouse, playhouse, sleeping_room, shed, workshop, light_storage, heavy_storage, public_terrace, greenhouse, hen_house, sheep_house, stable, calf_house
shed.yaml:9:18: frame.joists.size: "2x7" is not a size of timber
   9 |   joists: {size: 2x7, spaceing: 16"}
     |                  ^^^
  write one of: 2x4, 2x6, 2x8, 2x10, 2x12, 3x4, 3x6, 3x8, 3x10, 3x12, 4x4, 4x6, 4x8, 4x10, 4x12, 6x6, 6x8, 8x8, 5/4x6; or width and depth, such as 45x145 mm or 1 3/4" x 9 1/2"
shed.yaml:9:23: frame.joists: "spaceing" is not a key here
   9 |   joists: {size: 2x7, spaceing: 16"}
     |                       ^^^^^^^^
  did you mean spacing? The keys here are: width, depth, size, plies, timber, spacing, sit
shed.yaml:14:27: ground.sights.1: "A9" is neither a pier nor a spot
  14 |     - [bench_mark: 4' 2", A9: 4' 9"]
     |                           ^^
  the piers run from A1 to C5; other points are named under ground.spots first
shed.yaml:15:12: ground.probes.B2.depth: is missing
  15 |   probes: {B2: {found: firm}}
     |            ^^
  write the depth at which the bar stopped
shed.yaml:16:16: stone.least: stone.least is 14″, more than stone.most, which is 12″
  16 | stone: {least: 14"}
     |                ^^^
  change one of the two: this or stone.most
shed.yaml:17:16: crew.starts: "soon" is not a date
  17 | crew: {starts: soon}
     |                ^^^^
  write year, month and day, such as 2027-05-01
`, strings.ReplaceAll(got, "\u00a0", " "))
}

// withLine puts lines into a job that is right without them.
func withLines(lines string) string { return dozen + lines }

// Every row is lost or changed silently by the language: see the notes on each.
func TestSilentLossesAreFaults(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"comment for a whole value", "client: #2\n", `job.yaml:13:9: client: "#2" is read as a comment, since a blank stands before the #`},
		{"comment after a value", "client: DF-L #2\n", `job.yaml:13:14: client: "#2" is read as a comment, since a blank stands before the #`},
		{"doubled key", "client: a\nclient: b\n", `job.yaml:14:1: client: "client" stands twice, here and on line 13`},
		{"doubled table", "crew: {people: 3}\n", `job.yaml:13:1: crew: "crew" stands twice, here and on line 12`},
		{"fraction of a count", "frame: {beams: {lines: 3.5}}\n", `job.yaml:13:24: frame.beams.lines: "3.5" is not a count`},
		{"octal", "frame: {beams: {lines: 010}}\n", `job.yaml:13:24: frame.beams.lines: "010" is not a count`},
		{"hexadecimal", "frame: {beams: {lines: 0x10}}\n", `job.yaml:13:24: frame.beams.lines: "0x10" is not a count`},
		{"underscore", "frame: {beams: {lines: 1_0}}\n", `job.yaml:13:24: frame.beams.lines: "1_0" is not a count`},
		{"not a number", "stone: {loose: .nan}\n", `job.yaml:13:16: stone.loose: ".nan" is not a plain number`},
		{"infinite", "stone: {loose: .inf}\n", `job.yaml:13:16: stone.loose: ".inf" is not a plain number`},
		{"exponent", "stone: {loose: 1e1}\n", `job.yaml:13:16: stone.loose: "1e1" is not a plain number`},
		{"null in a list", "yard: {on_hand: {4x4: [31\", null]}}\n", `job.yaml:13:29: yard.on_hand.4x4.2: an item of the list is empty`},
		{"tilde", "client: ~\n", `job.yaml:13:9: client: "~" is no value`},
		{"null", "client: null\n", `job.yaml:13:9: client: "null" is no value`},
		{"key without a value", "client:\n", `job.yaml:13:1: client: the key has no value`},
		{"key without a value in a map", "stone: {least: }\n", `job.yaml:13:9: stone.least: the key has no value`},
		{"anchor", "client: &c Jo\n", `job.yaml:13:9: client: the anchor &c names text for use elsewhere`},
		{"alias", "client: &c Jo\naddress: *c\n", `job.yaml:14:10: address: the alias *c stands for text elsewhere`},
		{"alias to itself", "stone: &s {least: *s}\n", `job.yaml:13:19: stone.least: the alias *s stands for text elsewhere`},
		{"merge key", "stone: &s {least: 6\"}\ndig:\n  <<: *s\n", `job.yaml:15:3: dig: the merge key << takes values from elsewhere`},
		{"tag", "client: !!str 5\n", `job.yaml:13:9: client: the tag !!str changes the kind of the value`},
		{"own tag", "client: !x 5\n", `job.yaml:13:9: client: the tag !x changes the kind of the value`},
		{"list as a key", "? [a, b]\n: 5\n", `job.yaml:13:3: a key must be a single name`},
		{"no unit", "dig: {least: 4}\n", `job.yaml:13:14: dig.least: "4" has no unit`},
		{"decimal comma in a map", "stone: {loose: 1,3}\n", `job.yaml:13:16: stone.loose: "1,3" has a comma in a number`},
		{"two documents", "---\nname: other\n", `job.yaml:13:1: a second document begins here, and would be left unread`},
		{"unknown key", "colour: red\n", `job.yaml:13:1: "colour" is not a key here`},
		{"table for a value", "client: {a: b}\n", `job.yaml:13:9: client: here stands a map of keys`},
		{"list for a value", "client: [a]\n", `job.yaml:13:9: client: here stands a list`},
		{"value for a table", "stone: 6\"\n", `job.yaml:13:8: stone: here stands a single value`},
		{"control character", "client: a\x07b\n", `job.yaml:13:10: the control character U+0007 stands here`},
		{"not UTF-8", "client: a\xffb\n", `job.yaml:13:10: the file is not UTF-8 text here`},
		{"one length in two ways", "yard: {stock: {2x6: {8': 7, 96\": 8}}}\n", `job.yaml:13:21: yard.stock.2x6: the length 8' stands twice`},
		{"one size in two ways", "yard: {on_hand: {45x145 mm: [8'], 45 x 145 mm: [9']}}\n", `job.yaml:13:35: yard.on_hand.45x145 mm: "45 x 145 mm" stands twice, written in two ways`},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := faultsOf(t, "job.yaml", withLines(row.text))
			assert.Contains(t, got, row.want+"\n")
		})
	}
}

func TestFilesThatHoldNoJob(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"", "job.yaml: the file is empty\n"},
		{"# only a comment\n", "job.yaml: the file is empty\n"},
		{"---\n", "job.yaml: the file is empty\n"},
		{"- a\n- b\n", "job.yaml:1:1: the file holds a list, not keys\n"},
		{"just words\n", "job.yaml:1:1: the file holds a single value, not keys\n"},
		{"name: x\n" + strings.Repeat("# padding\n", 1<<17), "job.yaml: the file is over 1 MB\n"},
	} {
		assert.True(t, strings.HasPrefix(faultsOf(t, "job.yaml", row.text), row.want), faultsOf(t, "job.yaml", row.text))
	}
	_, faults := job.Read(files("a.yaml", ""), "b.yaml")
	assert.Equal(t, "b.yaml: there is no such file\n  look at the spelling and the folder of the name\n", printed(faults))
	_, faults = job.Read(files("a.yaml", ""), "../b.yaml")
	assert.Contains(t, printed(faults), "../b.yaml: there is no such file\n")
}

func TestSlipsOfTheLanguagePointAtTheTruePlace(t *testing.T) {
	for _, row := range []struct{ name, text, place, wrong string }{
		{"single quotes round feet", "name: x\nlength: '5' 6 1/2\"'\n", "2:13", "text follows the closing quote '"},
		{"double quotes round inches", "name: x\nlength: \"5' 6 1/2\"\"\n", "2:19", `text follows the closing quote "`},
		{"list not closed", "name: x\nb: 1\ntags: [a, b\nc: 2\n", "3:7", "the bracket [ is never closed"},
		{"one blank short", "a: 1\nlist:\n  - a\n  - c\n - b\n", "5:2", "the line is set in by a number of blanks that no line above has"},
		{"at sign", "length: @16\n", "1:9", "a value cannot begin with @"},
		{"second colon", "note: 2x8: joists\n", "1:10", "a colon and a blank stand inside a value"},
		{"tab", "a: 1\nb:\n\tc: 2\n", "3:1", "a tab stands at the start of the line"},
		{"no blank after the colon", "length:8\nwidth: 5'\n", "1:7", "no blank follows the colon"},
		{"no blank deeper", "platform:\n  length:16'\n  width: 5'\n", "2:9", "no blank follows the colon"},
		{"quote never closed", "a: 1\nlength: \"5' 6\nb: 2\n", "2:9", `the quote " is never closed on this line`},
		{"comment in a map", "timber: {grade: No #2, species: x}\n", "1:20", `"#2, species: x}" is read as a comment, since a blank stands before the #`},
		{"wrong bracket", "a: {b: [1, 2}\n", "1:13", "} closes the bracket [ of line 1"},
		{"set in too far", "name: x\n  client: y\n", "2:3", "the line is set in under a line that has its value already"},
		{"set in too far below", "a: 1\nplatform:\n  length: 16'\n   width: 12'\n", "4:4", "the line is set in under a line that has its value already"},
		{"between hyphen and key", "s:\n  - a: 4'\n   b: 5'\n", "3:4", "the line is set in by a number of blanks that no line above has"},
		{"no colon", "name x\nplatform: 5\n", "1:1", "the line has no key with a colon"},
		{"no colon further down", "name: x\nfoo\nbar: 1\n", "2:1", "the line has no key with a colon"},
		{"bracket too many", "name: x\nplatform: {length: 16', width: 12'}}\n", "2:36", "text follows the last closing bracket"},
		{"list on the line of its key", "name: x\nclient: - y\n", "2:9", "a list cannot begin on the line of its key like this"},
		{"apostrophe in quotes", "name: 'Joe's shed'\n", "1:12", "text follows the closing quote '"},
		{"map with text round it", "a: {b: 'x'}\nclient: \"Joe\" Smith\n", "2:15", "text follows the closing quote \""},
		{"quoted values in a map", "a: {b: \"x, y\", 'c': 'd'}\nlength: @\n", "2:9", "a value cannot begin with @"},
		{"a text block", "name: |\n  length:8\n  @ at\nb: @\n", "4:4", "a value cannot begin with @"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := faultsOf(t, "job.yaml", row.text)
			assert.Equal(t, "job.yaml:"+row.place+": "+row.wrong, strings.Split(got, "\n")[0], got)
		})
	}
}

func TestLineEndsAndByteOrderMarkDoNotShiftPlaces(t *testing.T) {
	text := strings.ReplaceAll("\ufeff"+dozen+"dig: {least: 4}\n", "\n", "\r\n")
	got := faultsOf(t, "job.yaml", text)
	assert.Equal(t, "job.yaml:13:14: dig.least: \"4\" has no unit\n  13 | dig: {least: 4}\n     |              ^\n  write the unit, such as 4\" or 4 mm\n", got)
}

func TestValuesThatAreWrongTogether(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"least above most", "stone: {least: 8\", most: 6\"}", "stone.least: stone.least is 8″, more than stone.most, which is 6″"},
		{"bed deeper than the deepest hole", "dig: {deepest: 7\"}", "dig.deepest: stone.least is 6″ with its top 2″ below the ground, more than dig.deepest, which is 7″"},
		{"negative size", "stone: {margin: -4\"}", `stone.margin: "-4\"" is too small`},
		{"zero size", "block: {base: 0}", `block.base: "0" is too small`},
		{"negative load", "site: {ground_snow: -5 psf, soil: {class: clay}}", `site.ground_snow: "-5 psf" is too small`},
		{"no date", "issued: 2027-02-30", `issued: "2027-02-30" is not a date`},
		{"date in words", "issued: 1 May 2027", `issued: "1 May 2027" is not a date`},
		{"door off the platform", "platform: {length: 10', width: 8', use: deck, door: {side: A, from_1: 8'}}", "platform.door.from_1: the door ends at 11′ 0″, and its side at 10′ 0″"},
		{"door on an inner line", "platform: {length: 10', width: 8', use: deck, door: {side: B, from_1: 1'}}", `platform.door.side: "B" is not a side of this frame`},
		{"door in words", "platform: {length: 10', width: 8', use: deck, door: {side: north, from_1: 1'}}", `platform.door.side: "north" is not a side`},
		{"door without a side", "platform: {length: 10', width: 8', use: deck, door: {from_1: 1'}}", "platform.door.side: is missing"},
		{"boards' key for panels", "platform: {length: 10', width: 8', use: shed, surface: {kind: panels, width: 6\"}}", "platform.surface.width: this key is for boards"},
		{"panels' key for boards", "platform: {length: 10', width: 8', use: shed, surface: {kind: boards, span_rating: 24}}", "platform.surface.span_rating: this key is for panels"},
		{"panels too thin for a floor", "platform: {length: 10', width: 8', use: shed, surface: {kind: panels, thickness: 1/2\", span_rating: 24}}", `platform.surface.thickness: panels of 1/2″ are for no single floor`},
		{"a thickness without a published rating", "platform: {length: 10', width: 8', use: shed, surface: {kind: panels, thickness: 1\"}}", `platform.surface.span_rating: no rating is published for panels of 1″`},
		{"a rating that such panels never have", "platform: {length: 10', width: 8', use: shed, surface: {kind: panels, thickness: 3/4\", span_rating: 48}}", `platform.surface.span_rating: no single-floor panel of 3/4″ is rated 48`},
		{"a rating that no panel has", "platform: {length: 10', width: 8', use: shed, surface: {kind: panels, thickness: 1\", span_rating: 19}}", `platform.surface.span_rating: no single-floor panel of 1″ is rated 19`},
		{"rounding a given floor", "platform: {length: 10', width: 8', use: shed, floor: {height: 1', round_up: 1/4\"}}", "platform.floor.round_up: this key is for a floor whose height is lowest"},
		{"spacing and number of piers", "frame: {piers: {per_line: 4, spacing: 4'}}", "frame.piers.per_line: this key is for piers without a spacing"},
		{"size and width", "frame: {beams: {size: 4x6, width: 3\", depth: 6\"}}", "frame.beams.size: both a size and a width or depth are given"},
		{"width without depth", "frame: {beams: {width: 3\"}}", "frame.beams: width and depth go together, and one of them is missing"},
		{"speed and pressure", "site: {soil: {class: clay}, wind: {speed: 100 mph, pressure: 20 psf}}", "site.wind.speed: this key is for a site whose wind has no pressure given"},
		{"soil without a presumptive value", "site: {soil: {class: peat}}", "site.soil.bearing: is missing"},
		{"no soil", "site: {frost_depth: 12\"}", "site.soil.bearing: is missing"},
		{"species without grade", "timber: {species: redwood}", "timber.grade: is missing"},
		{"species and values", "timber: {species: redwood, grade: No.1, values: {bending: 10 MPa, shear: 1 MPa, bearing_across: 2 MPa, compression: 8 MPa, elastic: 9 GPa, elastic_min: 5 GPa, source: x}}", "timber.values: both a species or grade and design values are given"},
		{"values without source", "timber: {values: {bending: 10 MPa, shear: 1 MPa, bearing_across: 2 MPa, compression: 8 MPa, elastic: 9 GPa, elastic_min: 5 GPa}}", "timber.values.source: is missing"},
		{"grade of a near name", "timber: {species: hemfir, grade: No.2}", `timber.species: "hemfir" is not in the list`},
		{"sight to an unknown spot", "ground: {sights: [[bench_mark: 4', TP1: 5']]}", `ground.sights.1: "TP1" is neither a pier nor a spot`},
		{"sight to a misspelt bench mark", "ground: {sights: [[bench_mark: 4', A1: 5', benchmark: 4']]}", `ground.sights.1: "benchmark" is neither a pier nor a spot`},
		{"set-up from nowhere", "ground: {sights: [[A1: 4', bench_mark: 5']]}", `ground.sights.1: set-up 1 begins at "A1", whose height is not known yet`},
		{"set-up of one sight", "ground: {sights: [[bench_mark: 4']]}", "ground.sights.1: a set-up needs a sight to a known point and at least one more"},
		{"no set-ups", "ground: {sights: []}", "ground.sights: the list of set-ups is empty"},
		{"sight without a colon", "ground: {sights: [[bench_mark 4', A1: 5']]}", `ground.sights.1: "bench_mark 4'" is not a sight`},
		{"set-up that is a word", "ground: {sights: [none yet]}", `ground.sights.1: "none yet" is not a set-up`},
		{"unit that is none", "ground: {sights: [[unit: hand, bench_mark: 4', A1: 5']]}", `ground.sights.1.unit: "hand" is not in the list`},
		{"negative reading", "ground: {sights: [[bench_mark: 4', A1: -5']]}", `ground.sights.1.A1: "-5'" is too small`},
		{"reading without a unit", "ground: {sights: [[bench_mark: 4', A1: 5]]}", `ground.sights.1.A1: "5" has no unit`},
		{"probe at no pier", "ground: {probes: {D1: {depth: 9\", found: firm}}}", `ground.probes.D1: "D1" is not a pier of this frame`},
		{"probe at no name", "ground: {probes: {Q: {depth: 9\", found: firm}}}", `ground.probes: "Q" is not the name of a pier`},
		{"line I", "ground: {probes: {I1: {depth: 9\", found: firm}}}", `ground.probes: "I1" is not the name of a pier`},
		{"exception at no pier", "piers: {A9: {bed: 2\"}}", `piers.A9: "A9" is not a pier of this frame`},
		{"seat at no pier", "measured: {seats: {bench_mark: 4', A9: 4'}}", `measured.seats.A9: "A9" is not a pier of this frame`},
		{"seats without the bench mark", "measured: {seats: {A1: 4'}}", "measured.seats: the reading on the bench mark is missing"},
		{"post at no pier", "measured: {posts_cut: {A9: 4\"}}", `measured.posts_cut.A9: "A9" is not a pier of this frame`},
		{"side between no corners", "measured: {strings: {A1-B1: 8'}}", `measured.strings.A1-B1: "A1-B1" does not run between two corners`},
		{"side from both ends", "measured: {strings: {A1-C1: 8', C1-A1: 8'}}", `measured.strings.C1-A1: "C1-A1" stands twice, once from each end`},
		{"side that is no side", "measured: {strings: {north: 8'}}", `measured.strings: "north" is not the name of a side`},
		{"beam of no line", "measured: {timber: {beams: {F: 5\"}}}", `measured.timber.beams.F: "F" is not a beam line of this frame`},
		{"spot with a pier's name", "ground: {spots: {A2: {x: 0, y: 0}}}", `ground.spots.A2: "A2" is the name of a pier`},
		{"spot without y", "ground: {spots: {E1: {x: 0}}}", "ground.spots.E1: the spot needs an x and a y"},
		{"spot of a bad name", "ground: {spots: {close: turning_point}}", `ground.spots: "close" is not the name of a spot`},
		{"price of an unknown part", "yard: {prices: {pannel: 44}}", `yard.prices: "pannel" is not the name of a part`},
		{"price with a sign", "yard: {prices: {panel: $44}}", `yard.prices.panel: "$44" is not an amount of money`},
		{"no stick of a length", "yard: {stock: {4x4: {8': {price: 9, sticks: 0}}}}", "yard.stock.4x4.8'.sticks: the yard cannot be said to have 0 sticks"},
		{"half a stick", "yard: {stock: {4x4: {8': {price: 9, sticks: 2.5}}}}", `yard.stock.4x4.8'.sticks: "2.5" is not a count`},
		{"more sticks than a yard has", "yard: {stock: {4x4: {8': {price: 9, sticks: 10001}}}}", "yard.stock.4x4.8'.sticks: the yard cannot be said to have 10001 sticks"},
		{"a length without a price", "yard: {stock: {4x4: {8': {}}}}", "yard.stock.4x4: the length stands without a price"},
		{"stock with a foreign key", "yard: {stock: {4x4: {8': {prise: 9}}}}", `yard.stock.4x4.8'.prise: "prise" is not a key of a stock length`},
		{"a list for a price", "yard: {stock: {4x4: {8': [9, 12]}}}", "yard.stock.4x4: here stands a list"},
		{"stock without a length", "yard: {stock: {4x4: {}}}", "yard.stock.4x4: the size is listed without a length"},
		{"stock of an unknown size", "yard: {stock: {2x7: [8']}}", `yard.stock: "2x7" is not the name of a size`},
		{"too many lines", "frame: {beams: {lines: 40}}", "frame.beams.lines: 40 is out of range"},
		{"a kilometre of platform", "platform: {length: 10 m, width: 1000 m, use: deck}", `platform.width: "1000 m" is too long`},
		{"joists a millimetre apart", "frame: {joists: {spacing: 1 mm}}", `frame.joists.spacing: "1 mm" is too small`},
		{"swell below one", "site: {soil: {class: clay, swell: 0.3}}", `site.soil.swell: "0.3" is less than 1`},
		{"waste of everything", "stone: {waste: 90%}", `stone.waste: "90%" is more than 50%`},
		{"fraction that is none", "fraction: 1/10\"", `fraction: "2.54 mm" is no mark of an inch tape`},
		{"neither yes nor no", "client_page: {money: maybe}", `client_page.money: "maybe" is not yes or no`},
		{"folder outside", "pages: ../../etc", `pages: "../../etc" leads out of the folder of the job`},
		{"accuracy", "ground: {instrument: {error: good}}", `ground.instrument.error: "good" is not an accuracy`},
		{"no floor", "platform: {length: 10', width: 8'}", "platform.floor_load: is missing"},
		{"no width", "platform: {length: 10', use: deck}", "platform.width: is missing"},
		{"building lighter than light", "building: {weight: {least: 3000 lb, most: 2000 lb}}", "building.weight.least: building.weight.least is 3000 lb, more than building.weight.most, which is 2000 lb"},
		{"list for a table", "site: [a]", "site: here stands a list"},
		{"empty name", "name: ' '", "name: the text is empty"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := strings.ReplaceAll(faultsOf(t, "job.yaml", replaced(row.text)), "\u00a0", " ")
			first := strings.Split(got, "\n")
			found := false
			for _, line := range first {
				found = found || strings.HasPrefix(line, "job.yaml:") && strings.HasSuffix(line, ": "+row.want)
			}
			assert.True(t, found, got)
			assert.Equal(t, 1, strings.Count(got, "job.yaml:"), "one slip is one fault:\n%s", got)
		})
	}
}

// replaced returns the dozen-line job with one top key put in the place of its
// own, or added.
func replaced(line string) string {
	key, _, _ := strings.Cut(line, ":")
	var kept []string
	inside := false
	for _, old := range strings.Split(strings.TrimSuffix(dozen, "\n"), "\n") {
		if !strings.HasPrefix(old, " ") {
			inside = strings.HasPrefix(old, key+":")
		}
		if !inside {
			kept = append(kept, old)
		}
	}
	return strings.Join(append(kept, line), "\n") + "\n"
}
