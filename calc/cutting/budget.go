package cutting

// budget counts the work of a plan in steps of about a nanosecond, one entry of
// a row or a table each, so that a limit means about the same time whatever the
// size of the job, and yet the same plan on every machine.
type budget struct{ used, limit int64 }

// newBudget returns a budget of so many steps.
func newBudget(steps int64) *budget { return &budget{limit: steps} }

func (b *budget) use(steps int) { b.used += int64(steps) }

func (b *budget) over() bool { return b.used >= b.limit }

func (b *budget) left() int64 { return max(0, b.limit-b.used) }

// within runs with no more than so many steps.
func (b *budget) within(steps int64, run func() bool) bool {
	limit := b.limit
	b.limit = min(limit, b.used+steps)
	closed := run()
	b.limit = limit
	return closed
}
