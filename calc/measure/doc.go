// Package measure holds lengths, areas, volumes, weights, forces, stresses and
// the rest as types that know their unit, and reads and prints them as builders
// write them: feet, inches and fractions, tenths of a foot, or metric.
//
// Lengths are exact, see [Length]. The other quantities are floating numbers in
// SI units. Conversion: the inch is 25.4 mm and the pound 0.45359237 kg exactly
// (international yard and pound agreement, 1959); gravity is 9.80665 m/s2
// (CGPM 1901). Nothing here knows what a value is used for.
package measure
