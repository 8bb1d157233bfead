package content

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var cautionBlock = regexp.MustCompile("(?m)^```caution (.+)$")

// cautionsOf returns the cautions that a page names on its front and in all.
func cautionsOf(p *page) (front, all []string) {
	for _, m := range cautionBlock.FindAllStringSubmatchIndex(p.source, -1) {
		id := p.source[m[2]:m[3]]
		all = append(all, id)
		if back := strings.Index(p.source, "\n```back"); back < 0 || m[0] < back {
			front = append(front, id)
		}
	}
	return front, all
}

func builtInPage(t *testing.T, book *Book, name string) *page {
	t.Helper()
	for _, p := range book.pages {
		if p.name == name {
			return p
		}
	}
	require.Fail(t, "no page "+name)
	return nil
}

// What hurts at a step stands on the front of its sheet, before the work.
func TestCautionsStandAtTheirStep(t *testing.T) {
	book, faults := Read(BuiltIn())
	require.NoError(t, faults.Err())
	for name, wanted := range map[string][]string{
		"cuts":         {"saw", "short-pieces", "eyes", "noise", "treated-wood", "end-coating", "cords"},
		"dig":          {"buried-lines", "cave-in", "open-holes"},
		"stone":        {"stone-dust", "tamper"},
		"blocks":       {"heavy-lift"},
		"posts":        {"saw", "eyes", "noise", "treated-wood", "end-coating"},
		"beams":        {"unbraced", "tall-posts", "heavy-lift", "crushed-fingers"},
		"joists":       {"nail-gun", "saw", "eyes", "noise"},
		"surface":      {"open-frame", "high-edge", "saw", "eyes", "noise", "fumes"},
		"square-again": {"unbraced"},
		"final-check":  {"odd-step"},
		"care":         {"jacking"},
	} {
		front, _ := cautionsOf(builtInPage(t, book, name))
		assert.Subset(t, front, wanted, name)
	}
}

// The full list at the back is for reading once; every caution also stands where
// the work is.
func TestNoCautionStandsInTheFullListAlone(t *testing.T) {
	book, faults := Read(BuiltIn())
	require.NoError(t, faults.Err())
	at := map[string]bool{}
	for _, p := range book.pages {
		_, all := cautionsOf(p)
		for _, id := range all {
			at[id] = true
		}
	}
	for _, c := range book.cautions {
		assert.True(t, at[c.id], c.id)
	}
}

// Eyes, ears and hands come before the tools that hurt them.
func TestProtectionComesFirstAmongTheTools(t *testing.T) {
	book, faults := Read(BuiltIn())
	require.NoError(t, faults.Err())
	tools := regexp.MustCompile(`(?m)^tools +(.*)$`)
	for name, first := range map[string]string{
		"posts": "eye protection; ear protection; gloves; ", "beams": "eye protection; ear protection; gloves; ",
		"joists": "eye protection; ear protection; gloves; ", "surface": "eye protection; ear protection; gloves; ",
		"stone": "eye protection; ear protection; gloves; ", "dig": "eye protection; gloves; ", "blocks": "gloves; ",
	} {
		m := tools.FindStringSubmatch(builtInPage(t, book, name).source)
		require.NotNil(t, m, name)
		assert.True(t, strings.HasPrefix(m[1], first), "%s: %s", name, m[1])
	}
}
