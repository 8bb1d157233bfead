package support

import "pierbook/calc/measure"

const ft, lbf = measure.Foot, measure.PoundForce

func psf(v float64) measure.Stress { return measure.Stress(v) * measure.PoundPerSquareFt }
