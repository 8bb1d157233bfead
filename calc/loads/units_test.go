package loads

import "pierbook/calc/measure"

const ft = measure.Foot
