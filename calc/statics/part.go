package statics

// cut returns the part of a run between two places with the loads on it. A
// point load on the border belongs to the part on its left, or, at the very
// beginning of the run, to the first.
func cut(loads []Push, from, to float64, first bool) part {
	p := part{From: from, Long: to - from}
	for _, l := range loads {
		if l.IsPoint() {
			if l.From > from && l.From <= to || first && l.From == from {
				p.loads = append(p.loads, Push{l.From - from, l.From - from, l.Size})
			}
			continue
		}
		a, b := max(l.From, from), min(l.To, to)
		if a < b {
			p.loads = append(p.loads, Push{a - from, b - from, l.Size})
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
		arm := (l.From+l.To)/2 - x
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
		sum += l.total() * (p.Long - (l.From+l.To)/2) / p.Long
	}
	return sum
}

// fixedEnds returns the sagging end moments of the part with both ends held.
//
//	Fa = −∫ w·x·(L−x)²/L² dx   Fb = −∫ w·x²·(L−x)/L² dx
func (p *part) fixedEnds() (a, b float64) {
	L := p.Long
	left := func(x float64) float64 { return x * x * (L*L/2 - 2*L*x/3 + x*x/4) }
	right := func(x float64) float64 { return x * x * x * (L/3 - x/4) }
	for _, l := range p.loads {
		if l.IsPoint() {
			x, y := l.From, L-l.From
			a -= l.Size * x * y * y / (L * L)
			b -= l.Size * x * x * y / (L * L)
			continue
		}
		a -= l.Size * (left(l.To) - left(l.From)) / (L * L)
		b -= l.Size * (right(l.To) - right(l.From)) / (L * L)
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
func (l Push) before(x float64) float64 {
	switch {
	case x < l.From:
		return 0
	case l.IsPoint() || x >= l.To:
		return l.total()
	}
	return l.Size * (x - l.From)
}

// first returns the moment at x of what stands left of it.
func (l Push) first(x float64) float64 { return l.power(x, 1) }

// power returns the load's n-th bracket: P·⟨x−a⟩ⁿ/n!, or the difference of
// w·⟨x−a⟩ⁿ⁺¹/(n+1)! between its two ends.
func (l Push) power(x float64, n int) float64 {
	if x <= l.From {
		return 0
	}
	if l.IsPoint() {
		return l.Size * bracket(x-l.From, n)
	}
	v := bracket(x-l.From, n+1)
	if x > l.To {
		v -= bracket(x-l.To, n+1)
	}
	return l.Size * v
}

func bracket(x float64, n int) float64 {
	v := 1.0
	for i := 1; i <= n; i++ {
		v *= x / float64(i)
	}
	return v
}
