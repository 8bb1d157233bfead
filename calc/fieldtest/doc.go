// Package fieldtest is for tests of the packages between the rod and the holes:
// an invented site, its job worked through all of them, and the published cases
// that several of them are held against.
package fieldtest
