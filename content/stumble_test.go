package content

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pierbook/calc/fault"
)

// Pages are read side by side; what goes wrong with one of them must reach
// whoever asked for the pages, who can catch it, and not end the program.
func TestMistakeOfTheProgramAtAPageReachesTheCaller(t *testing.T) {
	var err error
	func() {
		defer fault.Catch(&err)
		book := Book{pages: []*page{nil}}
		book.readPages(&fault.List{})
	}()
	assert.ErrorContains(t, err, "nil pointer")
}
