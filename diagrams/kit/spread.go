package kit

// Spread moves the places of labels apart so that neighbours, in the order
// given, are at least gap from each other, with the least squared moving; the
// places must rise. They stay between low and high when there is room.
//
// Shifting place i by i·gap turns the task into the nearest rising sequence,
// which pooling adjacent violators solves (Ayer and others, 1955; from memory).
func Spread(places []float64, gap, low, high float64) []float64 {
	type pool struct {
		sum   float64
		count int
	}
	var pools []pool
	for i, p := range places {
		pools = append(pools, pool{p - float64(i)*gap, 1})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum/float64(a.count) <= b.sum/float64(b.count) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.count + b.count})
		}
	}
	last := high - float64(len(places)-1)*gap
	out := make([]float64, 0, len(places))
	for _, p := range pools {
		at := max(min(p.sum/float64(p.count), last), low)
		for range p.count {
			out = append(out, at+float64(len(out))*gap)
		}
	}
	return out
}
