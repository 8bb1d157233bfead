package trade

import "pierbook/calc/measure"

// Use is a way to use the platform, with the live load of its floor.
type Use struct {
	Name     string
	Load     Both      // rounded up in the other system
	Building *Building // that stands on such a floor; nil for one that lies open
	Source   string
	Memory   bool
}

// Building is what usually stands on a platform, by its weight on the floor's area.
type Building struct {
	Name        string
	Least, Most measure.Stress // at its lightest, which holds it down, and at its heaviest
	Source      string
}

// framed is the building of a floor whose use does not tell of another.
const framed = "framed"

func readUses(rows []row, buildings []Building) []Use {
	list := make([]Use, len(rows))
	for i, r := range rows {
		list[i] = Use{Name: r.text("use"), Load: r.both("load"), Source: r.text("source"), Memory: r.yes("memory")}
		if name := r.text("building"); name != "" {
			b, known := findBuilding(buildings, name)
			if !known {
				panic(r.at + "no building is named " + name)
			}
			list[i].Building = &b
		}
	}
	return list
}

func readBuildings(rows []row) []Building {
	list := make([]Building, len(rows))
	for i, r := range rows {
		list[i] = Building{Name: r.text("building"), Least: r.stress("least"), Most: r.stress("most"), Source: r.text("source")}
	}
	return list
}

func findBuilding(list []Building, name string) (Building, bool) {
	return find(list, func(b Building) bool { return b.Name == name })
}

// Uses returns the uses that the floor load is known for.
func Uses() []Use { return facts().uses }

// FindUse returns the use of a name and whether there is one.
func FindUse(name string) (Use, bool) {
	return find(facts().uses, func(u Use) bool { return u.Name == name })
}

// BuildingOf returns the building that stands on a floor of a use, and whether
// one does. A floor without a known use has the ordinary one, of a timber frame.
func BuildingOf(use string) (Building, bool) {
	u, known := FindUse(use)
	if known && u.Building == nil {
		return Building{}, false
	}
	if known {
		return *u.Building, true
	}
	return findBuilding(facts().buildings, framed)
}
