package job

import (
	"strings"

	"pierbook/calc/measure"
)

// quantity returns a value as one that prints itself: the figure that a page
// may ask for by the path of the key. Lists and tables have none.
func (v value) quantity(k *Key) measure.Quantity {
	if v.word != "" {
		return measure.Word(spoken(v.word))
	}
	switch k.Kind.Name {
	case Text.Name, Word.Name, Date.Name, Size.Name, Accuracy.Name:
		return measure.Word(v.text)
	case YesNo.Name:
		if v.yes {
			return measure.Word("yes")
		}
		return measure.Word("no")
	case Count.Name:
		return measure.Count(v.count)
	case Length.Name, Distance.Name, Height.Name:
		return measure.Exact(v.length)
	case Reading.Name:
		return measure.Reading(v.length)
	case Load.Name, Stress.Name:
		return measure.Stress(v.number)
	case Force.Name:
		return measure.Force(v.number)
	case Mass.Name:
		return measure.Mass(v.number)
	case Volume.Name:
		return measure.Volume(v.number)
	case Density.Name:
		return measure.Density(v.number)
	case Speed.Name:
		return measure.Speed(v.number)
	case Percent.Name:
		return measure.Percent(v.number)
	case Ratio.Name:
		return measure.Ratio(v.number)
	case Hours.Name:
		return measure.Hours(v.number)
	case Money.Name:
		return measure.Money(v.number)
	}
	return nil
}

// spoken returns a word of a list as it is printed.
func spoken(word string) string {
	if word == "builders_level" {
		return "builder's level"
	}
	return strings.ReplaceAll(word, "_", " ")
}
