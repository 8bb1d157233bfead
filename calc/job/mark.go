package job

import "pierbook/calc/measure"

// Mark returns the finest length that a saw or a tape is set to: the printed
// fraction of an inch, or a millimetre.
func (j *Job) Mark() measure.Length {
	switch {
	case j.Units == measure.Metric:
		return measure.Millimetre
	case j.Fraction <= 0:
		return measure.Sixteenth
	}
	return j.Fraction
}
