package job

import (
	"fmt"
	"strconv"

	"pierbook/calc/measure"
)

// Parts are the parts that the yard's price list may name.
func Parts() []string {
	return []string{"panel", "board", "block", "cap", "hanger", "strap", "brace", "nails", "screws", "stone", "clean_stone", "cloth", "coating", "anchor", "delivery"}
}

func yardKeys() []Key {
	return []Key{
		{Path: "yard.currency", Kind: Text, Letters: 8, Default: either("$", "", "our own choice: the currency of imperial price lists here"), Means: "sign or letters of the currency", put: func(j *Job, v value) { j.Yard.Currency = v.text }},
		{Path: "yard.kerf", Kind: Distance, AtMost: measure.Inch, Default: either(`1/8"`, "3 mm", practice), Means: "width of a saw cut", put: func(j *Job, v value) { j.Yard.Kerf = v.length }},
		{Path: "yard.end_trim", Kind: Distance, AtMost: measure.Foot, Default: same("0", practice), Means: "cut off a stick's end before anything else", put: func(j *Job, v value) { j.Yard.EndTrim = v.length }},
		{Path: "yard.stock.*", Stars: []string{"size"}, Kind: Stock, Means: "stock lengths of this size, with the price of a stick", put: func(j *Job, v value) { j.Yard.Stock = with(j.Yard.Stock, v.names[0], v.stock) }},
		{Path: "yard.on_hand.*", Stars: []string{"size"}, Kind: Lengths, Means: "sticks and offcuts on hand", put: func(j *Job, v value) { j.Yard.OnHand = with(j.Yard.OnHand, v.names[0], v.lengths) }},
		{Path: "yard.prices.*", Stars: []string{"part"}, Kind: Money, Means: "price of one", put: func(j *Job, v value) { j.Yard.Prices = with(j.Yard.Prices, v.names[0], measure.Money(v.number)) }},
		{Path: "yard.placard", Kind: Mass, Means: "what people and goods may weigh together, as the placard on the vehicle's door says", put: func(j *Job, v value) { j.Yard.Placard = measure.Mass(v.number) }},
		{Path: "yard.aboard", Kind: Count, Least: 1, Most: 20, Default: same("2", "our own choice: a builder and a helper"), When: hasPlacard, Whose: withPlacard, Means: "people who ride in the vehicle", put: func(j *Job, v value) { j.Yard.Aboard = v.count }},
		{Path: "yard.person", Kind: Mass, Default: memory(either("150 lb", "68 kg", "49 CFR 571.110 and 575.6 (2015), steps for the load limit")), When: hasPlacard, Whose: withPlacard, Means: "weight of one who rides", put: func(j *Job, v value) { j.Yard.Person = measure.Mass(v.number) }},
		{Path: "yard.payload", Kind: Mass, From: payloadOf, FromSays: "yard.placard", Means: "goods the vehicle may carry", put: func(j *Job, v value) { j.Yard.Payload = measure.Mass(v.number) }},
		{Path: "yard.cloth.width", Kind: Length, AtLeast: leastStep, AtMost: longestSide, Default: either(`3'`, "1 m", practice), Means: "width of a roll of ground cloth", put: func(j *Job, v value) { j.Yard.Roll.Width = v.length }},
		{Path: "yard.cloth.length", Kind: Length, AtLeast: leastStep, Default: either(`50'`, "15 m", practice), Means: "length of a roll of ground cloth", put: func(j *Job, v value) { j.Yard.Roll.Length = v.length }},
		{Path: "yard.cloth.lap", Kind: Distance, AtMost: measure.Metre, Default: either(`6"`, "150 mm", practice), Means: "lap of two widths of cloth", put: func(j *Job, v value) { j.Yard.Roll.Lap = v.length }},
	}
}

const withPlacard = "a vehicle whose placard is given"

func hasPlacard(j *Job) bool { return j.Yard.Placard > 0 }

// payloadOf takes the people off the figure of the placard.
//
//	goods = placard − people × weight of one
func payloadOf(j *Job) Default {
	if !hasPlacard(j) {
		return either("1500 lb", "680 kg", practice+": the low end of half-ton pick-ups; the placard on the vehicle decides, give it as yard.placard")
	}
	goods := j.Yard.Placard - measure.Mass(j.Yard.Aboard)*j.Yard.Person
	if goods <= 0 {
		return Default{}
	}
	pounds, kilograms := strconv.FormatFloat(float64(goods/measure.Pound), 'f', 1, 64)+" lb", strconv.FormatFloat(float64(goods), 'f', 1, 64)+" kg"
	style := j.Style()
	return either(pounds, kilograms, fmt.Sprintf("derived: placard less people, %s − %d × %s", j.Yard.Placard.Print(style), j.Yard.Aboard, j.Yard.Person.Print(style)))
}

func crewKeys() []Key {
	answer := func(j *Job, v value, change func(*Answer)) {
		a := j.Asked[v.names[0]]
		change(&a)
		j.Asked = with(j.Asked, v.names[0], a)
	}
	question := []string{"question"}
	return []Key{
		{Path: "crew.people", Kind: Count, Least: 1, Most: 20, Default: same("2", "our own choice: a builder and a helper"), Means: "people at work", put: func(j *Job, v value) { j.Crew.People = v.count }},
		{Path: "crew.starts", Kind: Date, Means: "first day of the work", put: func(j *Job, v value) { j.Crew.Starts = v.text }},
		{Path: "crew.rates.*", Stars: []string{"step"}, Kind: Hours, Means: "the shop's own hours for a step", put: func(j *Job, v value) { j.Crew.Rates = with(j.Crew.Rates, v.names[0], measure.Hours(v.number)) }},
		{Path: "asked.*", Stars: question, Kind: Text, Letters: 200, Means: "what the authority answered, in short", put: func(j *Job, v value) { answer(j, v, func(a *Answer) { a.Answer = v.text }) }},
		{Path: "asked.*.answer", Stars: question, Kind: Text, Letters: 200, Means: "what the authority answered", put: func(j *Job, v value) { answer(j, v, func(a *Answer) { a.Answer = v.text }) }},
		{Path: "asked.*.by", Stars: question, Kind: Text, Letters: 80, Means: "who answered", put: func(j *Job, v value) { answer(j, v, func(a *Answer) { a.By = v.text }) }},
		{Path: "asked.*.number", Stars: question, Kind: Text, Letters: 60, Means: "number of the ticket or permit", put: func(j *Job, v value) { answer(j, v, func(a *Answer) { a.Number = v.text }) }},
		{Path: "asked.*.date", Stars: question, Kind: Date, Means: "date of the answer", put: func(j *Job, v value) { answer(j, v, func(a *Answer) { a.Date = v.text }) }},
		{Path: "client_page.money", Kind: YesNo, Default: same("no", "our own choice: shown only when the job says so"), Means: "whether the client's page shows money", put: func(j *Job, v value) { j.ClientPage.Money = v.yes }},
		{Path: "client_page.address", Kind: YesNo, Default: same("no", "our own choice: shown only when the job says so"), Means: "whether the client's page shows the address", put: func(j *Job, v value) { j.ClientPage.Address = v.yes }},
	}
}
