package trade

import "slices"

// find returns the first of a list for which ok holds and whether there is one.
func find[T any](list []T, ok func(T) bool) (T, bool) {
	if at := slices.IndexFunc(list, ok); at >= 0 {
		return list[at], true
	}
	var none T
	return none, false
}

// names returns the names of a list.
func names[T any](list []T, name func(T) string) []string {
	all := make([]string, len(list))
	for i, one := range list {
		all[i] = name(one)
	}
	return all
}
