// Package crew estimates hours by step, as a range, and lays the steps over
// the days.
//
// Hours are crew hours of one person. An estimate is a fixed set-up, so much
// for each pier, each cubic metre, each piece and each square metre. The lower
// end is a practised pair of hands, the upper end a first-timer, about four times
// slower where levelling and fiddling dominate (common practice, no source). The shop's own rates, from its own job records, rule.
package crew
