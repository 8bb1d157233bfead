package sizing

import (
	"github.com/stretchr/testify/require"

	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/measure"
	"pierbook/calc/sample"
	"pierbook/calc/statics"
	"pierbook/calc/strength"
)

const in, ft = measure.Inch, measure.Foot

func psf(v float64) measure.Stress { return measure.Stress(v) * measure.PoundPerSquareFt }

func heights(f *frame.Frame, post measure.Length) map[string]statics.Height {
	h := map[string]statics.Height{}
	for _, p := range f.Piers {
		h[p.Name] = statics.Height{Post: post, Dig: 8 * in, Stone: 6 * in}
	}
	return h
}

func work(t require.TestingT, j *job.Job) *strength.Strength {
	f := sample.Frame(j)
	s, faults := strength.Work(strength.Input{Job: j, Frame: f, Heights: heights(f, 9*in)})
	require.NoError(t, faults.Err())
	return s
}
