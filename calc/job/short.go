package job

import (
	"strings"

	"pierbook/calc/fault"
)

// holeInShort returns the table that a depth and what was found there stand for,
// written in one line as on paper: 10 1/2" firm. A depth alone was met by the bar
// or the spade in something, and is taken as firm ground, which is asked about.
func (r *reader) holeInShort(path string, n *node) *node {
	depth, found := strings.TrimSpace(n.text), ""
	if last := strings.LastIndexAny(depth, " ,"); last >= 0 {
		word := strings.ToLower(depth[last+1:])
		if near := fault.Nearest(word, foundWords); near != "" {
			depth, found = strings.TrimRight(depth[:last], " ,"), word
		}
	}
	if found == "" {
		found = foundWords[0]
		r.doubts = append(r.doubts, Doubt{Path: path, At: n.at, Saying: path + ": the depth alone does not say what was found; it is taken as firm. Write it as " + depth + " firm, rock or water."})
	}
	part := func(key, text string) pair {
		return pair{key: key, at: n.at, value: &node{text: text, at: n.at, origin: n.origin}}
	}
	return &node{shape: tableShape, at: n.at, origin: n.origin, pairs: []pair{part("depth", depth), part("found", found)}}
}

// foundWords are what the bar or the spade meets.
var foundWords = []string{"firm", "rock", "water"}
