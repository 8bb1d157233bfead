package job

import "pierbook/calc/fault"

func syntaxFaults(src *source, message string) fault.List {
	var list fault.List
	list.Add(fault.Fault{At: src.start(), Wrong: message})
	return list
}
