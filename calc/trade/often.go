package trade

import "pierbook/calc/measure"

// Often is how sure the program is of what it sets aside where it has to foresee:
// enough nine times in ten. Common practice, no source.
const Often measure.Percent = 0.9

// OftenDeviate is the standard normal deviate that stays below [Often].
const OftenDeviate = 1.2815515655446004
