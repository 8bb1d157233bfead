package strength

// cut returns the part of a run between two places with the loads on it. A
// point load on the border belongs to the part on its left, or, at the very
// beginning of the run, to the first.
func cut(loads []push, from, to float64, first bool) part {
	p := part{from: from, long: to - from}
	for _, l := range loads {
		if l.point() {
			if l.from > from && l.from <= to || first && l.from == from {
				p.loads = append(p.loads, push{l.from - from, l.from - from, l.size})
			}
			continue
		}
		a, b := max(l.from, from), min(l.to, to)
		if a < b {
			p.loads = append(p.loads, push{a - from, b - from, l.size})
		}
	}
	return p
}

func (p *part) total() float64 {
	sum := 0.0
	for _, l := range p.loads {
		sum += l.total()
	}
	return sum
}

// about returns the sagging moment of the part's loads about a place at one of
// its ends, as a free arm has it, and their sum.
func (p *part) about(x float64) (moment, sum float64) {
	for _, l := range p.loads {
		arm := (l.from+l.to)/2 - x
		if arm < 0 {
			arm = -arm
		}
		moment -= l.total() * arm
		sum += l.total()
	}
	return moment, sum
}

func (p *part) momentAtRoot() float64 {
	m, _ := p.about(0)
	return m
}

// simpleLeft returns the left reaction of the part as a simple span.
func (p *part) simpleLeft() float64 {
	sum := 0.0
	for _, l := range p.loads {
		sum += l.total() * (p.long - (l.from+l.to)/2) / p.long
	}
	return sum
}

// fixedEnds returns the sagging end moments of the part with both ends held.
//
//	Fa = −∫ w·x·(L−x)²/L² dx   Fb = −∫ w·x²·(L−x)/L² dx
func (p *part) fixedEnds() (a, b float64) {
	L := p.long
	left := func(x float64) float64 { return x * x * (L*L/2 - 2*L*x/3 + x*x/4) }
	right := func(x float64) float64 { return x * x * x * (L/3 - x/4) }
	for _, l := range p.loads {
		if l.point() {
			x, y := l.from, L-l.from
			a -= l.size * x * y * y / (L * L)
			b -= l.size * x * x * y / (L * L)
			continue
		}
		a -= l.size * (left(l.to) - left(l.from)) / (L * L)
		b -= l.size * (right(l.to) - right(l.from)) / (L * L)
	}
	return a, b
}

// at returns shear, moment and deflection times EI at x from the part's left
// end, just right of a point load there.
func (p *part) at(x float64) (shear, moment, sag float64) {
	shear, moment = p.shear, p.moment+p.shear*x
	for _, l := range p.loads {
		shear -= l.before(x)
		moment -= l.first(x)
	}
	_, twice := p.integrals(x)
	return shear, moment, p.sag + p.slope*x - twice
}

// integrals returns the moment integrated once and twice from the left end to x.
func (p *part) integrals(x float64) (once, twice float64) {
	once = p.moment*x + p.shear*x*x/2
	twice = p.moment*x*x/2 + p.shear*x*x*x/6
	for _, l := range p.loads {
		once -= l.power(x, 2)
		twice -= l.power(x, 3)
	}
	return once, twice
}

// before returns how much of the load stands left of x.
func (l push) before(x float64) float64 {
	switch {
	case x < l.from:
		return 0
	case l.point() || x >= l.to:
		return l.total()
	}
	return l.size * (x - l.from)
}

// first returns the moment at x of what stands left of it.
func (l push) first(x float64) float64 { return l.power(x, 1) }

// power returns the load's n-th bracket: P·⟨x−a⟩ⁿ/n!, or the difference of
// w·⟨x−a⟩ⁿ⁺¹/(n+1)! between its two ends.
func (l push) power(x float64, n int) float64 {
	if x <= l.from {
		return 0
	}
	if l.point() {
		return l.size * bracket(x-l.from, n)
	}
	v := bracket(x-l.from, n+1)
	if x > l.to {
		v -= bracket(x-l.to, n+1)
	}
	return l.size * v
}

func bracket(x float64, n int) float64 {
	v := 1.0
	for i := 1; i <= n; i++ {
		v *= x / float64(i)
	}
	return v
}
