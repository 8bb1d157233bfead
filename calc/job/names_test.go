package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/job"
)

func TestNamesThatAFileIsFreeToChooseStandAtTheirKeys(t *testing.T) {
	text := dozen + "asked: {utilitys: marked on Monday, frost: {by: the office}}\nground: {instrument: {kind: builders_level}}\n"
	j, faults := job.Read(files("job.yaml", text), "job.yaml")
	require.NoError(t, faults.Err())
	at := j.NameAt("asked.utilitys")
	assert.Equal(t, 9, at.Column)
	assert.Equal(t, len("utilitys"), at.Length)
	assert.Equal(t, 19, j.At("asked.utilitys").Column, "its value stands behind it")
	assert.Equal(t, 37, j.NameAt("asked.frost").Column)
	assert.Equal(t, j.At("asked.frost.by"), j.NameAt("asked.frost.by"), "a key of the table is no name")

	kind, _ := j.Entry("ground.instrument.kind")
	assert.Equal(t, "builder's level", kind.Value.Print(j.Style()))
	assert.Equal(t, "builders_level", kind.Text, "as the file has it")
}
