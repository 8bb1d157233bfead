package diagrams

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// measuring writes into the page how wide the browser made every text, in the
// millimetres of its drawing.
const measuring = `<script>
document.title = "measured";
const all = [...document.querySelectorAll("svg text")].map(t => t.getComputedTextLength().toFixed(3));
const out = document.createElement("pre"); out.id = "widths"; out.textContent = all.join(" "); document.body.append(out);
</script>`

// The layout of a drawing rests on estimated widths, so a browser is asked how
// wide it really letters them.
func TestBrowserLettersNoWiderThanEstimated(t *testing.T) {
	browser := findBrowser()
	if browser == "" {
		t.Skip("no browser found")
	}
	var page strings.Builder
	page.WriteString(`<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>drawings</title><body>`)
	type label struct {
		words string
		long  float64
	}
	var labels []label
	for _, j := range sites {
		for _, d := range everyDrawing(j) {
			drawing, err := Draw(d, j.style)
			require.NoError(t, err)
			page.Write(drawing)
			for _, l := range d.sheet(j.style).Record().Labels {
				labels = append(labels, label{l.Words, max(l.Box.Right-l.Box.Left, l.Box.Bottom-l.Box.Top)})
			}
		}
	}
	page.WriteString(measuring + `</body></html>`)
	folder := t.TempDir()
	file := filepath.Join(folder, "drawings.html")
	require.NoError(t, os.WriteFile(file, []byte(page.String()), 0o600))
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	dump, err := exec.CommandContext(ctx, browser, "--headless", "--no-sandbox", "--disable-gpu", "--font-render-hinting=none",
		"--user-data-dir="+filepath.Join(folder, "profile"), "--dump-dom", "file://"+file).Output()
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(dump), `<pre id="widths">`)
	require.True(t, found)
	list, _, _ := strings.Cut(rest, "</pre>")
	widths := strings.Fields(list)
	require.Len(t, widths, len(labels))
	for i, w := range widths {
		long, err := strconv.ParseFloat(w, 64)
		require.NoError(t, err)
		if long > labels[i].long {
			assert.LessOrEqual(t, long, labels[i].long, labels[i].words)
		}
	}
}

func findBrowser() string {
	for _, name := range []string{"chromium-headless-shell", "chromium", "chromium-browser", "google-chrome"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}
