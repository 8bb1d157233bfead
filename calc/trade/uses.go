package trade

// Use is a way to use the platform, with the live load of its floor.
type Use struct {
	Name   string
	Load   Both // rounded up in the other system
	Source string
	Memory bool
}

func readUses(rows []row) []Use {
	list := make([]Use, len(rows))
	for i, r := range rows {
		list[i] = Use{r.text("use"), r.both("load"), r.text("source"), r.yes("memory")}
	}
	return list
}

// Uses returns the uses that the floor load is known for.
func Uses() []Use { return facts().uses }

// FindUse returns the use of a name and whether there is one.
func FindUse(name string) (Use, bool) {
	return find(facts().uses, func(u Use) bool { return u.Name == name })
}
