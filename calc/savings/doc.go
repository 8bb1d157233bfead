// Package savings tries changes of a job that would cost less: a line or a pier
// more or fewer, a side a little smaller, a stock length that the yard does not
// list. Each is laid out and cut anew, and one that saves is checked for strength
// as the job itself was; so frame, yard and strength run once more here, after
// they have run for the plan.
package savings
