package job

import (
	"bytes"
	"encoding/json"
	"strings"
)

// Schema returns the job file's form as a JSON Schema (draft 2020-12), for
// editors that complete and check while one types. It is made from the table of
// keys. It asks for less than [Read]: what is required may stand in the shop's
// file, and units are left to the reader.
func Schema() []byte {
	root := tree().schema()
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "Job file: a level timber platform on pier blocks"
	properties := root["properties"].(object)
	file := object{"type": []string{"string", "object"}, "description": "the shop's file laid under the job, or its keys"}
	properties["shop"] = file
	yard := properties["yard"].(object)
	yard["type"] = []string{"string", "object"}
	yard["description"] = "the yard's file, or its keys"

	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(root); err != nil {
		panic("job: " + err.Error()) // nothing but texts, numbers and maps went in
	}
	return text.Bytes()
}

// object is a piece of a schema; its keys are written in the order of the alphabet.
type object map[string]any

// schema describes the tables and values below b. The word none may stand for
// any of them, since it takes out what the shop's file says.
func (b *branch) schema() object {
	if b.key != nil && b.next == nil {
		return b.key.schema()
	}
	table := object{"type": "object", "additionalProperties": false}
	if b.next != nil {
		properties := object{}
		for name, next := range b.next {
			properties[name] = orNone(next.schema())
		}
		table["properties"] = properties
	}
	if b.star != nil {
		table["patternProperties"] = object{starPattern(b.kind): orNone(b.star.schema())}
	}
	if b.key != nil {
		return object{"anyOf": []object{b.key.schema(), table}}
	}
	return table
}

func orNone(o object) object {
	if o["type"] == "object" {
		o["type"], o["pattern"] = []string{"object", "string"}, "^none$" // a pattern speaks of texts only
	}
	if choices, closed := o["enum"].([]any); closed {
		o["enum"] = append(choices, "none")
	}
	return o
}

// starPattern returns what the names of a kind look like. Sizes and prices are
// left to the reader, which knows more than a pattern can say.
func starPattern(kind string) string {
	switch kind {
	case "pier":
		return pierName.String()
	case "line":
		return lineName.String()
	case "side":
		return sideName.String()
	case "spot":
		return spotName.String()
	case "reading":
		return "^(bench_mark|close|" + strings.Trim(pierName.String(), "^$") + ")$"
	case "part":
		return "^(" + strings.Join(Parts(), "|") + ")$"
	}
	return "^.+$"
}

// schema describes the value of one key.
func (k *Key) schema() object {
	o := object{"description": k.Means}
	if text := k.Default; text.Imperial != "" {
		o["default"] = text.Imperial
	}
	if k.Kind.Example != "" {
		o["examples"] = []string{k.Kind.Example}
	}
	switch k.Kind.Name {
	case Word.Name:
		choices := make([]any, len(k.Choices))
		for i, choice := range k.Choices {
			choices[i] = choice
		}
		if k.answer("true") == "yes" {
			choices = append(choices, true, false)
		}
		o["enum"] = choices
	case YesNo.Name:
		o["enum"] = []any{"yes", "no", true, false}
	case Date.Name:
		o["type"], o["pattern"] = "string", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
	case PierList.Name:
		o["type"], o["items"] = "array", object{"type": "string", "pattern": pierName.String()}
	case Lengths.Name, Sights.Name:
		o["type"] = "array"
	case Stock.Name:
		o["type"] = []string{"array", "object"}
		stick := object{"type": []string{"string", "number", "object"}, "additionalProperties": false, "properties": object{
			"price": object{"type": []string{"string", "number"}}, "sticks": object{"type": "integer", "minimum": 1, "maximum": mostSticks}}}
		o["patternProperties"] = object{"^.+$": stick}
	case Goods.Name:
		o["type"] = []string{"integer", "array", "object"}
		o["minimum"], o["maximum"] = 0, mostSticks
		o["patternProperties"] = object{"^.+$": object{"type": "integer", "minimum": 0, "maximum": mostSticks}}
	case SpotAt.Name:
		o["type"] = []string{"string", "object"}
	case Count.Name:
		o["type"] = "integer"
		if k.Most > 0 {
			o["minimum"], o["maximum"] = k.Least, k.Most
		}
		if len(k.Choices) > 0 {
			o = object{"description": k.Means, "anyOf": []object{{"type": "integer", "minimum": k.Least, "maximum": k.Most}, {"enum": k.Choices}}}
		}
	default:
		o["type"] = []string{"string", "number"}
		if k.Letters > 0 {
			o["maxLength"] = k.Letters
		}
	}
	return o
}
