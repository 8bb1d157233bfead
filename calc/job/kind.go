package job

import (
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"pierbook/calc/bidi"
	"pierbook/calc/fault"
	"pierbook/calc/measure"
)

// Kind says what a value may be and how it is written.
type Kind struct {
	Name    string // "a length"
	Example string // as it would be written
	read    func(v *value, text string) error
	shape   shape // scalarShape unless the kind reads lists or tables itself
	nodes   func(r *reader, path string, n *node, v *value) bool
}

// value is what was read for one key.
type value struct {
	text    string
	word    string // the value when it is one of the key's choices
	length  measure.Length
	over    measure.Length // of an accuracy
	number  float64        // in the SI unit of the kind
	count   int
	yes     bool
	size    Section
	lengths []measure.Length
	setUps  [][]Sight
	stock   []StockLength
	spot    Spot
	piers   []string
	names   []string       // what stood for the stars of the path
	bare    measure.Length // unit of a bare length, 0 when there is none
	at      fault.Place
}

// The kinds of value.
var (
	Text     = Kind{Name: "a text", Example: "Garden shed", read: readText}
	Word     = Kind{Name: "a word of a list", read: func(*value, string) error { return nil }}
	Date     = Kind{Name: "a date", Example: "2027-05-01", read: readDate}
	YesNo    = Kind{Name: "yes or no", Example: "yes", read: readYesNo}
	Count    = Kind{Name: "a count", Example: "3", read: readCount}
	Length   = Kind{Name: "a length", Example: `3 1/2"`, read: lengthReader(1, "more than 0")}
	Distance = Kind{Name: "a length or 0", Example: `2"`, read: lengthReader(0, "0 or more")}
	Height   = Kind{Name: "a height, above or below", Example: `-2"`, read: lengthReader(math.MinInt64, "")}
	Reading  = Kind{Name: "a rod reading", Example: `4' 2 1/4"`, read: lengthReader(0, "0 or more")}
	Size     = Kind{Name: "a size of timber", Example: "2x6", read: readSize}
	Accuracy = Kind{Name: "an accuracy", Example: `1/8" in 100'`, read: readAccuracy}
	Load     = Kind{Name: "a load on an area", Example: "50 psf", read: numberReader(measure.ParseStress, 0, "0 or more")}
	Stress   = Kind{Name: "a pressure or stress", Example: "1500 psf", read: numberReader(measure.ParseStress, least, "more than 0")}
	Force    = Kind{Name: "a force", Example: "2000 lb", read: numberReader(measure.ParseForce, least, "more than 0")}
	Mass     = Kind{Name: "a weight", Example: "48 lb", read: numberReader(measure.ParseMass, least, "more than 0")}
	Volume   = Kind{Name: "a volume", Example: "1/2 yd3", read: numberReader(measure.ParseVolume, least, "more than 0")}
	Density  = Kind{Name: "a density", Example: "35 pcf", read: numberReader(measure.ParseDensity, least, "more than 0")}
	Speed    = Kind{Name: "a speed", Example: "115 mph", read: numberReader(measure.ParseSpeed, least, "more than 0")}
	Percent  = Kind{Name: "a percentage", Example: "8%", read: numberReader(measure.ParsePercent, 0, "0 or more")}
	Ratio    = Kind{Name: "a plain number", Example: "1.3", read: numberReader(measure.ParseRatio, least, "more than 0")}
	Hours    = Kind{Name: "hours of work", Example: "2.5", read: numberReader(measure.ParseHours, 0, "0 or more")}
	Money    = Kind{Name: "an amount of money", Example: "7.20", read: numberReader(measure.ParseMoney, 0, "0 or more")}
	File     = Kind{Name: "a folder beside the file", Example: "our-pages", read: readFolder}
	Lengths  = Kind{Name: "a list of lengths", Example: `[8', 31"]`, shape: listShape, nodes: readLengths}
	Sights   = Kind{Name: "a list of set-ups, each a list of rod readings", Example: `[[bench_mark: 4' 2", A1: 4' 9"]]`, shape: listShape, nodes: readSights}
	Stock    = Kind{Name: "stock lengths, with prices or without, and with how many there are where they are few", Example: `{8': 7.20, 10': {price: 9.10, sticks: 12}}`, shape: tableShape, nodes: readStock}
	PierList = Kind{Name: "a list of piers", Example: pierListExample, shape: listShape, nodes: readPiers}
	Goods    = Kind{Name: "a count, or for timber how many sticks of which length", Example: `{16': 6}`, read: readCount, shape: tableShape, nodes: readGoods}
	SpotAt   = Kind{Name: "a place in plan, the height of a further bench mark, or turning_point", Example: `{x: 3' 6", y: -3'}`, shape: tableShape, nodes: readSpot}
)

// least is the smallest number that counts as more than 0.
const least = math.SmallestNonzeroFloat64

func slip(wrong, remedy string) error { return &measure.ParseError{Wrong: wrong, Remedy: remedy} }

// readText takes any text; line breaks and blanks become single blanks. It is
// set apart from whatever will be printed beside it.
func readText(v *value, text string) error {
	v.text = bidi.Isolated(strings.Join(strings.Fields(text), " "))
	if strings.TrimFunc(v.text, func(r rune) bool { return !unicode.IsPrint(r) }) == "" {
		return slip("the text is empty", "write some words, or leave the key out")
	}
	return nil
}

func readDate(v *value, text string) error {
	v.text = text
	if _, err := time.Parse("2006-01-02", text); err != nil {
		return slip(fmt.Sprintf("%q is not a date", text), "write year, month and day, such as 2027-05-01")
	}
	return nil
}

func readYesNo(v *value, text string) error {
	switch strings.ToLower(text) {
	case "yes", "true":
		v.yes = true
	case "no", "false":
	default:
		return slip(fmt.Sprintf("%q is not yes or no", text), "write yes or no")
	}
	return nil
}

var plainCount = regexp.MustCompile(`^(0|[1-9][0-9]{0,5})$`)

// readCount takes plain decimal digits only: 010 and 0x10 mean different
// numbers to different readers.
func readCount(v *value, text string) error {
	if !plainCount.MatchString(text) {
		return slip(fmt.Sprintf("%q is not a count", text), "write a whole number in plain digits, such as 3")
	}
	v.count, _ = strconv.Atoi(text)
	return nil
}

// longest bounds lengths, so that no sum of them can pass the end of int64.
const longest = 10_000 * measure.Metre

func lengthReader(from measure.Length, rule string) func(*value, string) error {
	return func(v *value, text string) (err error) {
		v.length, err = measure.ParseLengthIn(text, v.bare)
		switch {
		case err != nil:
			return err
		case v.length < from:
			return slip(fmt.Sprintf("%q is too small", text), "write a length of "+rule)
		case v.length.Abs() > longest:
			return slip(fmt.Sprintf("%q is too long", text), "is the unit right?")
		}
		return nil
	}
}

func numberReader[T ~float64](parse func(string) (T, error), from float64, rule string) func(*value, string) error {
	return func(v *value, text string) error {
		number, err := parse(text)
		v.number = float64(number)
		switch {
		case err != nil:
			return err
		case v.number < from:
			return slip(fmt.Sprintf("%q is too small", text), "write a value of "+rule)
		}
		return nil
	}
}

func readAccuracy(v *value, text string) (err error) {
	v.length, v.over, err = measure.ParseAccuracy(text)
	return err
}

func readSize(v *value, text string) error {
	section, ok := ParseSize(text)
	if !ok {
		return slip(fmt.Sprintf("%q is not a size of timber", text), "write one of: "+strings.Join(SizeNames(), ", ")+"; or width and depth, such as 45x145 mm or 1 3/4\" x 9 1/2\"")
	}
	v.size = section
	return nil
}

// readFolder takes any name; whether it may be read is for [joiner.pages] to say.
func readFolder(v *value, text string) error {
	if text == "" {
		return slip("the name is empty", "name a folder beside this file or below, such as our-pages")
	}
	v.text = text
	return nil
}

// readScalar reads a text as the key wants it: one of the choices, or the kind.
func (k *Key) readScalar(v *value, text string) error {
	text = k.answer(text)
	v.text = text
	if slices.Contains(k.Choices, text) {
		v.word = text
		return nil
	}
	if k.Kind.Name == Word.Name {
		return k.notAChoice(text)
	}
	if k.Kind.read == nil {
		return slip(fmt.Sprintf("%q is not %s", text, k.Kind.Name), "write it like this: "+k.Kind.Example)
	}
	if letters := utf8.RuneCountInString(text); k.Letters > 0 && letters > k.Letters {
		return slip(fmt.Sprintf("%d letters are more than have room", letters), fmt.Sprintf("write at most %d", k.Letters))
	}
	if err := k.Kind.read(v, text); err != nil {
		if near := fault.Nearest(text, k.Choices); near != "" {
			return slip(err.Error(), "did you mean "+near+"?")
		}
		return err
	}
	if k.Most > 0 && (v.count > k.Most || v.count < k.Least) {
		return slip(fmt.Sprintf("%d is out of range", v.count), fmt.Sprintf("write a count from %d to %d", k.Least, k.Most))
	}
	if k.AtMost > 0 && v.length > k.AtMost {
		return slip(fmt.Sprintf("%q is too long", text), "write at most "+k.AtMost.String()+"; is the unit right?")
	}
	if k.AtLeast > 0 && v.length < k.AtLeast {
		return slip(fmt.Sprintf("%q is too small", text), "write at least "+k.AtLeast.String()+"; is the unit right?")
	}
	return nil
}

// answer takes true for yes and false for no, also with capitals, where these are
// among the choices.
func (k *Key) answer(text string) string {
	if !slices.Contains(k.Choices, "yes") || !slices.Contains(k.Choices, "no") {
		return text
	}
	switch lower := strings.ToLower(text); lower {
	case "true", "yes":
		return "yes"
	case "false", "no":
		return "no"
	}
	return text
}

func (k *Key) notAChoice(text string) error {
	remedy := "write one of: " + strings.Join(k.Choices, ", ")
	if near := cmp.Or(fault.Nearest(text, k.Choices), fault.Nearest(strings.ToLower(text), k.Choices)); near != "" {
		remedy = "did you mean " + near + "? " + strings.ToUpper(remedy[:1]) + remedy[1:]
	}
	return slip(fmt.Sprintf("%q is not in the list", text), remedy)
}
