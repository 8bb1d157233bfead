package timber

import "pierbook/calc/measure"

const in = measure.Inch

func psf(v float64) measure.Stress { return measure.Stress(v) * measure.PoundPerSquareFt }
