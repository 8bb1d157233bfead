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
	for _, key := range job.Keys() {
		mark := " "
		if key.Required {
			mark = "*"
		}
		fmt.Fprintf(w, "%s %s\n    %s\n", mark, key.Path, key.Means)
		if len(key.Choices) > 0 {
			fmt.Fprintf(w, "    one of: %s\n", strings.Join(key.Choices, ", "))
		}
		if key.Kind.Example != "" {
			fmt.Fprintf(w, "    %s, such as %s\n", key.Kind.Name, key.Kind.Example)
		}
		if d := defaultWords(key); d != "" {
			fmt.Fprintf(w, "    default: %s\n", d)
		}
	}
}

func defaultWords(key job.Key) string {
	d := key.Default
	switch {
	case key.From != nil:
		return key.FromSays
	case d.Imperial == "" && d.Metric == "":
		return ""
	case d.Imperial == d.Metric:
		return d.Imperial + " (" + d.Source + ")"
	default:
		return d.Imperial + ", or " + d.Metric + " in a metric job (" + d.Source + ")"
	}
}
