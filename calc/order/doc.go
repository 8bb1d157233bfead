// Package order makes the one list of everything to buy, own or hire: timber
// from the cutting plans, sheets or boards, hardware, fasteners by the
// fastening schedule, stone in sold units, ground cloth, and tools; with
// counts, spares, the weight of every line and of each lift, loads for the
// vehicle, and money where the price is known.
//
// Fastening follows the schedules of the model codes named beside each row;
// the maker's instructions for a connector and the local code rule.
package order
