package layouts

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// colours returns the custom properties of a style sheet that are colours.
func colours(t *testing.T, css string) map[string]string {
	found := map[string]string{}
	for _, match := range regexp.MustCompile(`--([a-z]+): (#[0-9a-f]{3,6});`).FindAllStringSubmatch(css, -1) {
		found[match[1]] = match[2]
	}
	require.GreaterOrEqual(t, len(found), 8)
	return found
}

// luminance of a colour written #rgb or #rrggbb.
func luminance(t *testing.T, colour string) float64 {
	if len(colour) == 4 {
		colour = string([]byte{'#', colour[1], colour[1], colour[2], colour[2], colour[3], colour[3]})
	}
	weights := []float64{0.2126, 0.7152, 0.0722}
	sum := 0.0
	for i, weight := range weights {
		value, err := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		part := float64(value) / 255
		if part <= 0.04045 {
			part /= 12.92
		} else {
			part = math.Pow((part+0.055)/1.055, 2.4)
		}
		sum += weight * part
	}
	return sum
}
