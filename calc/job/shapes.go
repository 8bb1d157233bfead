package job

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"pierbook/calc/measure"
)

// The values that are not single texts. Each reader reports what is wrong and
// says whether the value can be used.

func readLengths(r *reader, path string, n *node, v *value) bool {
	for i, item := range n.items {
		itemPath := fmt.Sprintf("%s.%d", path, i+1)
		if item.shape != scalarShape {
			r.wrong(itemPath, item.at, "here stands "+item.shape.String(), "write a length, such as 31\"")
			continue
		}
		one := value{bare: v.bare}
		if err := Length.read(&one, item.text); err != nil {
			r.slip(itemPath, item.at, err)
			continue
		}
		v.lengths = append(v.lengths, one.length)
	}
	return true
}

// readStock takes a list of lengths, or a map from length to price, or to price
// and sticks.
func readStock(r *reader, path string, n *node, v *value) bool {
	if n.shape == listShape {
		readLengths(r, path, n, v)
		for _, length := range v.lengths {
			v.stock = append(v.stock, StockLength{Length: length})
		}
	}
	for _, p := range n.pairs {
		one := value{bare: v.bare}
		if err := Length.read(&one, p.key); err != nil {
			r.slip(path, p.at, err)
			continue
		}
		if s, ok := readStick(r, path, p); ok {
			s.Length = one.length
			v.stock = append(v.stock, s)
		}
	}
	if len(n.pairs) == 0 && len(n.items) == 0 && n.shape != scalarShape {
		r.wrong(path, n.at, "the size is listed without a length", "write its stock lengths, such as {8': 7.20, 12': 10.90}, or leave the size out")
		return false
	}
	slices.SortStableFunc(v.stock, func(a, b StockLength) int { return cmp.Compare(a.Length, b.Length) })
	for i := 1; i < len(v.stock); i++ {
		if v.stock[i].Length == v.stock[i-1].Length {
			r.wrong(path, n.at, fmt.Sprintf("the length %s stands twice", v.stock[i].Length), "keep one of the two")
			return false
		}
	}
	return true
}

// mostSticks is how many sticks of one length a yard can be said to have.
const mostSticks = 10_000

// readStick takes the price of one stick of a length, or a table with the price
// and how many sticks the yard has.
func readStick(r *reader, path string, p pair) (s StockLength, ok bool) {
	const forms = "write the price of one stick, such as 7.20, or {price: 7.20, sticks: 12} when the yard has only so many"
	switch p.value.shape {
	case scalarShape:
		s.Price, ok = readPrice(r, path, p.value)
		return s, ok
	case listShape:
		r.wrong(path, p.value.at, "here stands "+p.value.shape.String(), forms)
		return s, false
	}
	ok = len(p.value.pairs) > 0
	if !ok {
		r.wrong(path, p.value.at, "the length stands without a price", forms)
	}
	for _, q := range p.value.pairs {
		at := fmt.Sprintf("%s.%s.%s", path, p.key, q.key)
		switch {
		case q.key != "price" && q.key != "sticks":
			r.wrong(at, q.at, fmt.Sprintf("%q is not a key of a stock length", q.key), forms)
			ok = false
		case q.value.shape != scalarShape:
			r.wrong(at, q.value.at, "here stands "+q.value.shape.String(), forms)
			ok = false
		case q.key == "price":
			price, priced := readPrice(r, at, q.value)
			s.Price, ok = price, ok && priced
		default:
			count := value{}
			if err := readCount(&count, strings.TrimSpace(q.value.text)); err != nil {
				r.slip(at, q.value.at, err)
				ok = false
			} else if count.count < 1 || count.count > mostSticks {
				r.wrong(at, q.value.at, fmt.Sprintf("the yard cannot be said to have %d sticks", count.count), fmt.Sprintf("write 1 to %d, leave sticks out for any number, or leave the length out when there is none", mostSticks))
				ok = false
			}
			s.Sticks = count.count
		}
	}
	return s, ok
}

// readGoods takes the sticks of a delivery: a list of lengths, or a map from length
// to how many of them came. What is no timber is a count, which readCount takes.
func readGoods(r *reader, path string, n *node, v *value) bool {
	if n.shape == listShape {
		return readLengths(r, path, n, v)
	}
	ok := true
	for _, p := range n.pairs {
		long, count := value{bare: v.bare}, value{}
		if err := Length.read(&long, p.key); err != nil {
			r.slip(path, p.at, err)
			ok = false
			continue
		}
		if p.value.shape != scalarShape {
			r.wrong(path, p.value.at, "here stands "+p.value.shape.String(), "write how many sticks of this length came, such as 6")
			ok = false
			continue
		}
		if err := readCount(&count, strings.TrimSpace(p.value.text)); err != nil {
			r.slip(path, p.value.at, err)
			ok = false
			continue
		}
		if count.count > mostSticks {
			r.wrong(path, p.value.at, fmt.Sprintf("%d sticks of one length cannot have come", count.count), fmt.Sprintf("write at most %d", mostSticks))
			ok = false
			continue
		}
		for range count.count {
			v.lengths = append(v.lengths, long.length)
		}
	}
	return ok
}

func readPrice(r *reader, path string, n *node) (*measure.Money, bool) {
	price := value{}
	if err := Money.read(&price, n.text); err != nil {
		r.slip(path, n.at, err)
		return nil, false
	}
	amount := measure.Money(price.number)
	return &amount, true
}

// readSpot takes {x: …, y: …}, {height: …}, or the words turning_point.
func readSpot(r *reader, path string, n *node, v *value) bool {
	const forms = "write {x: 3' 6\", y: -3'}, turning_point, or {height: 3' 2\"} for a further bench mark"
	found := 0
	var height measure.Length
	for _, p := range n.pairs {
		one := value{bare: v.bare}
		into := map[string]*measure.Length{"x": &v.spot.X, "y": &v.spot.Y, "height": &height}[p.key]
		switch {
		case into == nil:
			r.wrong(path, p.at, fmt.Sprintf("%q is not a key of a spot", p.key), "write x and y, from the frame corner beside A1, or height for a further bench mark")
			continue
		case p.value.shape != scalarShape:
			r.wrong(path+"."+p.key, p.value.at, "here stands "+p.value.shape.String(), "write a length")
			continue
		}
		if err := Height.read(&one, p.value.text); err != nil {
			r.slip(path+"."+p.key, p.value.at, err)
			continue
		}
		*into = one.length
		if into == &height {
			v.spot.Known = into
		}
		found++
	}
	switch {
	case v.spot.Known != nil && len(n.pairs) > 1:
		r.wrong(path, n.at, "a further bench mark has its height and no place in plan", forms)
	case v.spot.Known == nil && found < 2 && len(n.pairs) < 2:
		r.wrong(path, n.at, "the spot needs an x and a y", forms)
	}
	return true // even when it is faulty, so that its name is known to the sights
}

// readSights takes one list for each set-up, in the order taken. A set-up is a
// list of single pairs, or a map in that order.
func readSights(r *reader, path string, n *node, v *value) bool {
	all := r.faults.Len()
	for i, item := range n.items {
		itemPath := fmt.Sprintf("%s.%d", path, i+1)
		var sights []Sight
		bare := v.bare
		before := r.faults.Len()
		switch item.shape {
		case tableShape:
			sights = r.sightsOf(itemPath, item, &bare)
		case listShape:
			for _, pairs := range item.items {
				if pairs.shape != tableShape {
					r.wrong(itemPath, pairs.at, fmt.Sprintf("%q is not a sight", pairs.text), "a comma parts two sights: write the point, a colon, a blank and the reading, such as A1: 4' 9\"")
					continue
				}
				sights = append(sights, r.sightsOf(itemPath, pairs, &bare)...)
			}
		default:
			r.wrong(itemPath, item.at, fmt.Sprintf("%q is not a set-up", item.text), "write a list of sights: [bench_mark: 4' 2\", A1: 4' 9\"]")
			continue
		}
		if len(sights) < 2 && r.faults.Len() == before {
			r.wrong(itemPath, item.at, "a set-up needs a sight to a known point and at least one more", "write the sights of one set-up in one list")
		}
		v.setUps = append(v.setUps, sights)
	}
	if len(n.items) == 0 {
		r.wrong(path, n.at, "the list of set-ups is empty", "write the readings, or leave the key out until they are taken")
	}
	r.bad[path] = r.faults.Len() > all
	return true
}

// sightsOf returns the sights among the pairs of one set-up. The pair "unit: mm"
// names the unit of the readings after it.
func (r *reader) sightsOf(path string, n *node, bare *measure.Length) []Sight {
	var sights []Sight
	for _, p := range n.pairs {
		if p.key == "unit" {
			r.unit(path, p.value, bare)
			continue
		}
		if !r.name(path, p, "point") {
			continue
		}
		if p.value.shape != scalarShape {
			r.wrong(path, p.value.at, "here stands "+p.value.shape.String(), "write a rod reading, such as 4' 9\"")
			continue
		}
		one, kind := value{bare: *bare}, Reading
		if !pierName.MatchString(p.key) {
			kind = Height // a rod held upside down under a mark reads below zero; on the ground none does
		}
		if err := kind.read(&one, p.value.text); err != nil {
			r.slip(path+"."+p.key, p.value.at, err)
			continue
		}
		sights = append(sights, Sight{Point: p.key, Reading: one.length, At: p.at})
	}
	return sights
}

func (r *reader) unit(path string, n *node, bare *measure.Length) {
	unit, known := readingUnits[n.text]
	if !known {
		r.wrong(path+".unit", n.at, fmt.Sprintf("%q is not in the list", n.text), "write one of: "+strings.Join(readingUnitNames, ", "))
		return
	}
	*bare = unit
}
