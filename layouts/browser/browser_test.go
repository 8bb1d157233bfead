package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/layouts/browser"
)

// A file is loaded once for print: what was asked of it before changes nothing
// of the answers after.
func TestPrintedAndMeasuredFromOneLoad(t *testing.T) {
	b := browser.Require(t)
	const page = `<!DOCTYPE html><html lang="en"><title>t</title><style>@media print { .wide { width: 900px } } @page { margin: 20mm }</style><body><p class="wide">broad</p></body></html>`
	before := b.Print(t, []byte(page), browser.Letter)
	for range 2 {
		assert.Len(t, b.TooWide(t, []byte(page)), 1)
	}
	assert.Empty(t, b.TooWide(t, []byte(`<!DOCTYPE html><title>t</title><p>narrow</p>`)))
	assert.Greater(t, b.Show(t, []byte(page), 320).Width, 0)
	after := b.Print(t, []byte(page), browser.Letter)
	assert.Equal(t, before.Pages, after.Pages)
	assert.InDelta(t, 595, b.Print(t, []byte(page), browser.A4).Pages[0].Width, 1)
}
