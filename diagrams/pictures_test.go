package diagrams

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

var pictures = flag.String("pictures", "", "a folder to write every sample drawing into, each inside a page, to be looked at")

// everyDrawing returns the drawings of a site.
func everyDrawing(j site) []Drawing {
	list := []Drawing{
		samplePlan(j), sampleRectangles(j), samplePierSection(j), sampleJoistMarks(j), samplePanels(j), sampleNailing(j), sampleBoards(j), sampleSticks(j), sampleSheetCuts(j),
		sampleSplice(j), sampleStrings(j), sampleLoads(j), sampleCurves(j), sampleLoadPath(j),
		sampleContours(j), sampleHeightCurve(j), sampleRacking(j), sampleStringRacking(j), sampleSquaring(j), sampleMoves(j), sampleAsBuilt(j), sampleWeekend(j), sampleFall(j),
	}
	return append(list, sampleSections(j)...)
}

// TestWritePictures writes the drawings for the eye when asked to:
//
//	go test ./diagrams -run Pictures -pictures DIR
func TestWritePictures(t *testing.T) {
	if *pictures == "" {
		t.Skip("no folder given with -pictures")
	}
	for _, j := range sites {
		for _, d := range everyDrawing(j) {
			drawing, err := Draw(d, j.style)
			require.NoError(t, err)
			page := `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>drawing</title><body style="margin:3mm;background:#ddd"><div style="background:#fff;display:inline-block">` +
				string(drawing) + `</div></body></html>`
			name := filepath.Join(*pictures, j.name+"-"+d.About().Name+".html")
			require.NoError(t, os.WriteFile(name, []byte(page), 0o644))
		}
	}
}
