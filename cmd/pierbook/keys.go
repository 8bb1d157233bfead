package main

import (
	"fmt"
	"io"
	"strings"

	"pierbook/calc/job"
)

// printJobHelp lists the keys of the job file from the table that reads them.
func printJobHelp(w io.Writer) {
	fmt.Fprint(w, helpTexts["job"])
	told := map[string]bool{}
	for _, key := range job.Keys() {
		member, _, own := strings.Cut(key.Path, ".timber.")
		switch {
		case !own:
			printKey(w, key)
		case !told[member]:
			told[member] = true
			fmt.Fprintf(w, "  %s.timber.*\n    another timber for this member alone, with the keys of timber\n    default: from timber\n", member)
		}
	}
}

func printKey(w io.Writer, key job.Key) {
	mark := " "
	if key.Required {
		mark = "*"
	}
	fmt.Fprintf(w, "%s %s\n    %s\n", mark, key.Path, key.Means)
	for _, line := range []string{valueWords(key), rangeWords(key), defaultWords(key)} {
		if line != "" {
			fmt.Fprintf(w, "    %s\n", line)
		}
	}
}

// valueWords says what may stand at a key.
func valueWords(key job.Key) string {
	words := ""
	if len(key.Choices) > 0 {
		words = "one of: " + strings.Join(key.Choices, ", ")
	}
	switch {
	case key.Kind.Name == job.Text.Name:
		return fmt.Sprintf("%s of at most %d letters", key.Kind.Name, key.Letters)
	case key.Kind.Example == "":
		return words
	case words != "":
		words = strings.Join(key.Choices, ", ") + "; or "
	}
	return words + key.Kind.Name + ", such as " + key.Kind.Example
}

// rangeWords says where a value makes sense.
func rangeWords(key job.Key) string {
	if key.Range == nil {
		return ""
	}
	return key.Range.Words()
}

// defaultWords says what is taken when the key is left out, and by what source.
func defaultWords(key job.Key) string {
	d := key.Default
	switch {
	case key.From != nil:
		return "default: from " + key.FromSays
	case d.Imperial == "" && d.Metric == "":
		return ""
	}
	source := d.Source
	if d.MetricSource != "" && d.MetricSource != d.Source {
		source += "; metric: " + d.MetricSource
	}
	if d.Memory {
		source += "; from memory, unconfirmed"
	}
	value := d.Imperial
	if d.Imperial != d.Metric {
		value = orNone(d.Imperial) + ", or " + orNone(d.Metric) + " in a metric job"
	}
	return fmt.Sprintf("default: %s (%s)", value, source)
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}
