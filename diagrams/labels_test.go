package diagrams

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/measure"
)

func manyLabels(n int) Labels {
	var l Labels
	for i := range n {
		l.Labels = append(l.Labels, PieceLabel{Name: fmt.Sprintf("J%d", i+1), Long: 11*measure.Foot + measure.Length(i)*measure.Sixteenth, From: "2x8 no. 3", Place: "joist, near face " + measure.Length(i*int(measure.Foot)).Print(imperial)})
	}
	return l
}

func TestEveryPieceHasOneLabel(t *testing.T) {
	all := manyLabels(300)
	parts := all.Split()
	count := 0
	for _, part := range parts {
		svg, err := Draw(part, imperial)
		require.NoError(t, err)
		for _, label := range part.Labels {
			assert.GreaterOrEqual(t, strings.Count(string(svg), ">"+label.Name+"<"), 1, label.Name)
		}
		size := part.sheet(imperial).Size()
		assert.LessOrEqual(t, size.Bottom, 251.0, "fits the safe box")
		count += len(part.Labels)
	}
	assert.Equal(t, 300, count)
	assert.Len(t, parts, 9, "36 to a page")
}

func TestLongWordsStayInTheirLabel(t *testing.T) {
	l := Labels{Labels: []PieceLabel{{Name: "P12.34/5 offcut", Long: 95*measure.Inch + 15*measure.Sixteenth, Wide: 47*measure.Inch + 7*measure.Sixteenth, From: "a very long name for a stick that somebody wrote on its end", Place: "row 12, from 12′ 0 15/16″ along, 8′ 3 3/16″ across, tongue to the line"}}}
	s := l.sheet(imperial)
	for _, label := range s.Record().Labels {
		assert.LessOrEqual(t, label.Box.Right, 0.5+labelWide, label.Words)
	}
}

// Labels hold whatever a job writes, keep clear of one another, and are empty
// without harm.
func TestLabelsOfOddPieces(t *testing.T) {
	odd := manyLabels(35)
	odd.Labels[3] = PieceLabel{Name: "</text><script>alert(1)</script>", From: "\x00\xff <b>", Place: strings.Repeat("without end ", 20), Long: 4801 * measure.Millimetre, Wide: 1199 * measure.Millimetre}
	odd.Labels[34] = PieceLabel{Name: "B3", From: "cut it from its reading", Place: "post on pier B3"}
	for _, style := range []measure.Style{imperial, metric} {
		for _, l := range []Labels{odd, {}, manyLabels(1), manyLabels(2)} {
			svg, err := Draw(l, style)
			require.NoError(t, err)
			strict(t, string(svg))
			assert.NotContains(t, string(svg), "<script")
			assert.Empty(t, faults(l.sheet(style).Record()))
			assert.Greater(t, len(l.About().Shows), 40)
		}
	}
}
