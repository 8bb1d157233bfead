package calc_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc"
	"pierbook/calc/figure"
)

// issueOf writes a plan's figures.json with the sheets given, and reads it back.
func issueOf(t *testing.T, p *calc.Plan, sheets []figure.Sheet) calc.Issue {
	t.Helper()
	var file bytes.Buffer
	issue := figure.Issue{Job: figure.Heading{Name: p.Job.Name, Revision: "A"}, Progress: string(p.Job.Progress()), Sheets: sheets, Since: p.SinceLast(sheets)}
	require.NoError(t, figure.WriteJSON(&file, issue, p.Figures, p.Style))
	read, err := calc.ReadIssue(file.Bytes())
	require.NoError(t, err)
	return read
}

func changed(p *calc.Plan) map[string][2]string {
	all := map[string][2]string{}
	if p.Since != nil {
		for _, c := range p.Since.Changes {
			all[c.Key] = [2]string{c.Was, c.Is}
		}
	}
	return all
}

func TestNothingChangedIsNoNewIssue(t *testing.T) {
	first, again := workFour(t, "lowest", fourPiersRead), workFour(t, "lowest", fourPiersRead)
	again.CompareWith(issueOf(t, first, nil))
	assert.Nil(t, again.Since)
	figures(t, again, map[string]any{"has.changes": "no"})
	assert.Equal(t, issueOf(t, first, nil), issueOf(t, again, nil))
}

func TestChangesSinceTheLastIssue(t *testing.T) {
	survey := workFour(t, "lowest", fourPiersRead)
	seats := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	seats.CompareWith(issueOf(t, survey, nil))
	figures(t, seats, map[string]any{"has.changes": "yes", "last.revision": "A", "last.progress": "surveyed"})
	changes := changed(seats)
	assert.Equal(t, [2]string{"3″", "3\u00a09/16″"}, changes["pier.A1.post"])
	assert.Equal(t, [2]string{"", "0″"}, changes["pier.A1.seat_read"], "a blank that is filled")
	assert.NotContains(t, changes, "floor.height", "it reads the same, though it is given now")
	assert.NotContains(t, changes, "pier.A1.x")
	assert.NotContains(t, changes, "has.changes")
}

func TestFiguresThatComeAndGoAreChanges(t *testing.T) {
	two := workFour(t, "lowest", "")
	j, said := readText(strings.NewReplacer("FLOOR", "lowest", "per_line: 2", "per_line: 3").Replace(fourPiers))
	require.Empty(t, said)
	three, faults := calc.Work(j)
	require.Empty(t, faults.Sorted())
	back := workFour(t, "lowest", "")
	three.CompareWith(issueOf(t, two, nil))
	assert.Equal(t, "", changed(three)["pier.A3.x"][0])
	assert.NotEmpty(t, changed(three)["pier.A3.x"][1])
	back.CompareWith(issueOf(t, three, nil))
	assert.NotEmpty(t, changed(back)["pier.A3.x"][0])
	assert.Equal(t, "", changed(back)["pier.A3.x"][1])
}

// The sheets of the last issue whose marks differ are to be thrown away under
// their old numbers; one that is not bound any more has none to put in; a sheet
// without a mark is new with each issue.
func TestSheetsToThrowAway(t *testing.T) {
	before := []figure.Sheet{{Name: "cover", Number: 1, Title: "Cover", Mark: "1"}, {Name: "dig", Number: 2, Title: "Dig", Mark: "2"},
		{Name: "rock", Number: 3, Title: "Rock", Mark: "3"}, {Name: "posts", Number: 4, Title: "Posts", Mark: "4"}, {Name: "care", Number: 5, Title: "Care", Mark: "5"}}
	now := []figure.Sheet{{Name: "cover", Number: 1, Title: "Cover"}, {Name: "dig", Number: 2, Title: "Dig", Mark: "2"},
		{Name: "posts", Number: 3, Title: "Posts", Mark: "44"}, {Name: "care", Number: 4, Title: "Care", Mark: "5"}, {Name: "built", Number: 5, Title: "As built", Mark: "6"}}
	survey, seats := workFour(t, "lowest", fourPiersRead), workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	seats.CompareWith(issueOf(t, survey, before))
	want := []figure.SheetChange{{Title: "Cover", Was: 1, Is: 1}, {Title: "Rock", Was: 3}, {Title: "Posts", Was: 4, Is: 3}, {Title: "As built", Is: 5}}
	assert.Equal(t, want, seats.SinceLast(now).Sheets)

	// The same binder made once more still tells what the last one told.
	again := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	again.CompareWith(issueOf(t, seats, now))
	assert.Equal(t, want, again.SinceLast(now).Sheets)
	assert.Equal(t, changed(seats), changed(again))

	unrecorded := workFour(t, `15 1/2"`, fourPiersRead+measuredFour)
	unrecorded.CompareWith(issueOf(t, survey, nil))
	assert.True(t, unrecorded.SinceLast(now).Unrecorded)
}

func TestIssuesThatCannotBeRead(t *testing.T) {
	for _, file := range []string{"", "{", `{"schema": 2, "figures": {}}`, `{"figures": {}}`, `[]`} {
		_, err := calc.ReadIssue([]byte(file))
		assert.ErrorContains(t, err, "reading the last issue", file)
	}
}
