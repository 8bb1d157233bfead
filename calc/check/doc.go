// Package check is the record of one check: what is asked of a part over what it
// can do, with its clause and its working, and the list that gathers them. Every
// craft that checks something, timber or support, returns findings of this kind.
package check
