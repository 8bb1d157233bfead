package job

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// Within brackets a comma parts values, so that a decimal comma, a comma in a text
// and one before what a hole ends in each leave a key without a value behind.

// mendCommas puts what such a comma cut off back to the value before it: the second
// half of a number, which is then told as a number with a comma, and what was found
// after the depth of a hole, as it stands on paper.
func mendCommas(y *yaml.Node) {
	if y.Style&yaml.FlowStyle == 0 {
		return
	}
	switch y.Kind {
	case yaml.MappingNode:
		var kept []*yaml.Node
		for i := 0; i+1 < len(y.Content); i += 2 {
			key, value := y.Content[i], y.Content[i+1]
			if alone(value) && len(kept) > 0 && takesBack(kept[len(kept)-1], key) {
				continue
			}
			kept = append(kept, key, value)
		}
		y.Content = kept
	case yaml.SequenceNode: // of sights: each is a table of one key
		var kept []*yaml.Node
		for _, item := range y.Content {
			if n := len(kept); n > 0 && kept[n-1].Kind == yaml.MappingNode && len(kept[n-1].Content) == 2 && takesBack(kept[n-1].Content[1], item) {
				continue
			}
			kept = append(kept, item)
		}
		y.Content = kept
	}
}

// alone holds for the value of a key that has none.
func alone(value *yaml.Node) bool {
	return value.Kind == yaml.ScalarNode && value.Tag == "!!null" && value.Value == ""
}

// takesBack adds what stands after a comma to the value before it and says whether
// it belongs there.
func takesBack(before, cut *yaml.Node) bool {
	const quoted = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle
	if before.Kind != yaml.ScalarNode || cut.Kind != yaml.ScalarNode || before.Style&quoted != 0 || cut.Style&quoted != 0 || before.Value == "" || cut.Value == "" || before.Line != cut.Line {
		return false
	}
	last := before.Value[len(before.Value)-1]
	next := before.Column + utf8.RuneCountInString(before.Value) + 1
	switch {
	case digit(last) && digit(cut.Value[0]) && cut.Column == next:
		before.Value += "," + cut.Value
	case digit(before.Value[0]) && slices.Contains(foundWords, strings.ToLower(cut.Value)):
		before.Value += " " + cut.Value
	default:
		return false
	}
	before.Tag = "!!str"
	return true
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

// cutText says what to do about the end of a text that a comma cut off: a key
// with blanks, or one after words. Otherwise it returns "".
func cutText(before, key *yaml.Node) (wrong, remedy string) {
	if before == nil || before.Kind != yaml.ScalarNode || before.Line != key.Line {
		return "", ""
	}
	isText := strings.Contains(before.Value, " ") && !digit(before.Value[0])
	if !isText && !strings.Contains(key.Value, " ") || strings.IndexFunc(before.Value, unicode.IsLetter) < 0 {
		return "", ""
	}
	return fmt.Sprintf("%q stands alone after a comma", key.Value), fmt.Sprintf("a comma parts values here: put a text that holds one in quotes, %q", before.Value+", "+key.Value)
}
