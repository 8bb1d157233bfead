package strength

import "pierbook/calc/measure"

const lbf = measure.PoundForce
