// Package sample holds invented jobs that tests of several packages lay out and
// check, and reads the files of published values. The program does not import it.
package sample
