package content

import "embed"

// Sample holds the built-in sample job with the shop's and the yard's files it names.
//
//go:embed sample
var Sample embed.FS

// SampleJob is the path of the sample job in [Sample].
const SampleJob = "sample/kiln-field.yaml"
