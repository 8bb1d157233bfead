package earthwork

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Sample is what a few measured values say about those still to come, which are
// taken as normal with unknown scatter.
type Sample struct {
	Count   int
	Mean    float64
	Scatter float64 // standard deviation, n − 1 in the denominator
}

// SampleOf returns the mean and the scatter of values.
func SampleOf(values []float64) Sample {
	s := Sample{Count: len(values)}
	for _, v := range values {
		s.Mean += v / float64(len(values))
	}
	if len(values) < 2 {
		return s
	}
	for _, v := range values {
		s.Scatter += (v - s.Mean) * (v - s.Mean)
	}
	s.Scatter = math.Sqrt(s.Scatter / float64(len(values)-1))
	return s
}

// Honest holds when the sample says anything of chance: one value, or values that
// are all the same, would promise certainty.
func (s Sample) Honest() bool { return s.Count >= 2 && s.Scatter > 0 }

// Total returns what the sum of m more values stays below with a chance p.
//
//	m mean + t s √(m + m² / n)        t one-sided, n − 1 degrees of freedom
//
// With m = 1 it is the limit for the next value. Source: Montgomery and Runger,
// Applied Statistics and Probability for Engineers, prediction of a future
// observation; ISO 16269-8 for the mean of several.
func (s Sample) Total(m int, p float64) float64 {
	return float64(m)*s.Mean + s.student().Quantile(p)*s.totalError(m)
}

// Chance returns how likely the sum of m more values stays below a total.
func (s Sample) Chance(m int, total float64) float64 {
	return s.student().CDF((total - float64(m)*s.Mean) / s.totalError(m))
}

func (s Sample) totalError(m int) float64 {
	more, n := float64(m), float64(s.Count)
	return s.Scatter * math.Sqrt(more+more*more/n)
}

func (s Sample) student() distuv.StudentsT {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(s.Count - 1)}
}
