package main

import (
	"math"
	"strconv"
)

// This file works a job's frame and heights a second time, from the rules alone
// and without a line of the program's: plain floats in millimetres, and every
// hole found by trying all corners of what the rules allow. It is slow and
// naive on purpose. The numbers of each job are typed in again in
// [handJobs], so that the reading of the job file is checked as well.

const (
	handInch = 25.4
	handFoot = 304.8
)

// handJob is a job as a person with a pencil would note it, in millimetres.
type handJob struct {
	length, width             float64
	surface, joist, beam, cap float64 // thicknesses and depths that make the build-up; joist 0 between the beams
	joistWidth, rimWidth      float64
	joistSpacing              float64
	between                   bool
	beamWidth, inset, setBack float64
	lines, perLine            int
	first, last               float64 // outer pier centres from the beam ends
	shortest, longest, clear  float64
	blockHeight, seat, base   float64
	leastStone, mostStone     float64
	margin, embed, aboveGrade float64
	soilBeside                bool
	leastDig, deepest, frost  float64 // frost only where beds must reach it
	swell                     float64
	roundUp                   float64
	room                      float64 // of a seat, up or down
	mark                      float64 // finest printed mark
	floor                     float64 // when given
	floorGiven                bool
	benchMark                 float64
	setUps                    [][]handSight
	spots                     map[string][2]float64
	probes                    map[string]handProbe
	beds                      map[string]float64
	// What came back from the site: depths of the beams by line, depths of the
	// holes and heights of the seats by pier.
	beams, dug, seats map[string]float64
}

type handSight struct {
	at   string
	read float64
}

type handProbe struct {
	depth float64
	rock  bool
}

type handPier struct {
	name                                 string
	x, y, ground, dig, stone, seat, post float64
	read                                 bool
}

// handFigures works the job and returns the figures by key: numbers as
// float64, words as string.
func handFigures(j handJob) map[string]any {
	f := map[string]any{
		"frame.length": j.length, "frame.width": j.width,
		"frame.diagonal": math.Hypot(j.length, j.width),
		"build_up":       j.buildUp(),
		"beam.length":    j.length - 2*j.setBack,
		"joist.spacing":  j.joistSpacing,
	}
	if !j.between || j.inset > 0 {
		f["rim.length"] = j.length
	}
	j.layJoists(f)
	piers := j.layPiers()
	across, along := piers[len(piers)-1].y-piers[0].y, piers[len(piers)-1].x-piers[0].x
	f["piers.diagonal"] = math.Hypot(across, along)
	heights := j.reduce()
	j.readGround(piers, heights)
	floor, governs := j.chooseFloor(piers, heights)
	if !j.floorGiven {
		f["floor.governed_by"] = governs
	}
	f["floor.height"] = floor
	f["post_tops.height"] = j.onMark(floor - j.buildUp())
	j.digHoles(piers, floor)
	for _, p := range piers {
		key := "pier." + p.name + "."
		f[key+"x"], f[key+"y"], f[key+"ground"] = p.x, p.y, p.ground
		f[key+"dig"], f[key+"stone"], f[key+"seat"], f[key+"post"] = p.dig, p.stone, p.seat, p.post
		f[key+"ground_from"] = "estimated"
		if p.read {
			f[key+"ground_from"] = "read"
		}
	}
	j.volumes(f, piers)
	return f
}

// buildUp is taken as the tape reads it, to a whole mark.
func (j handJob) buildUp() float64 { return j.wholeMarks(j.surface + j.joist + j.beam + j.cap) }

// wholeMarks counts the marks of the tape and takes half a mark as one.
func (j handJob) wholeMarks(length float64) float64 {
	return math.Floor(length/j.mark+0.5+1e-6) * j.mark
}

// onMark puts a height where the rod, held on the bench mark, has a whole mark.
func (j handJob) onMark(height float64) float64 {
	return j.benchMark + j.wholeMarks(height-j.benchMark)
}

// buildUpAt takes the depth of the beam as it was delivered.
func (j handJob) buildUpAt(pier string) float64 {
	if depth, measured := j.beams[pier[:1]]; measured {
		return j.wholeMarks(j.surface + j.joist + depth + j.cap)
	}
	return j.buildUp()
}

func (j handJob) layJoists(f map[string]any) {
	positions := 2 // one at each end, and none so near the last that no half inch is left between
	for k := 1; float64(k)*j.joistSpacing+j.joistWidth/2+handInch/2 <= j.length-j.joistWidth; k++ {
		positions++
	}
	f["joist.count"], f["joist.length"] = float64(positions), j.width-2*j.rimWidth
	if j.between {
		apart := (j.width - 2*j.inset - j.beamWidth) / float64(j.lines-1)
		f["joist.count"], f["joist.length"] = float64(positions*(j.lines-1)), apart-j.beamWidth
	}
}

func (j handJob) layPiers() []handPier {
	var piers []handPier
	firstX, lastX := j.setBack+j.first, j.length-j.setBack-j.last
	firstY, lastY := j.inset+j.beamWidth/2, j.width-j.inset-j.beamWidth/2
	for line := range j.lines {
		for n := range j.perLine {
			piers = append(piers, handPier{
				name: string(rune('A'+line)) + strconv.Itoa(n+1),
				x:    firstX + (lastX-firstX)*float64(n)/float64(j.perLine-1),
				y:    firstY + (lastY-firstY)*float64(line)/float64(j.lines-1),
			})
		}
	}
	return piers
}

// reduce turns the readings into heights by rise and fall, and shares the
// closing error out by set-ups. Places read twice do not occur in these jobs.
func (j handJob) reduce() map[string]float64 {
	raw, setUpOf := map[string]float64{}, map[string]int{}
	back, closing := j.benchMark, 0.0
	for i, setUp := range j.setUps {
		height, before := back, setUp[0].read
		for _, s := range setUp[1:] {
			height += before - s.read
			before = s.read
			if s.at == "bench_mark" {
				closing = height - j.benchMark
				continue
			}
			raw[s.at], setUpOf[s.at] = height, i+1
		}
		back = height
	}
	heights := map[string]float64{}
	for name, height := range raw {
		heights[name] = height - closing*float64(setUpOf[name])/float64(len(j.setUps))
	}
	return heights
}

// readGround gives every pier its ground: as read, else from the surface that
// bends least through all readings (a thin plate), by plain elimination.
func (j handJob) readGround(piers []handPier, heights map[string]float64) {
	var nodes [][3]float64 // metres
	for _, p := range piers {
		if h, ok := heights[p.name]; ok {
			nodes = append(nodes, [3]float64{p.x / 1000, p.y / 1000, h / 1000})
		}
	}
	for name, at := range j.spots {
		nodes = append(nodes, [3]float64{at[0] / 1000, at[1] / 1000, heights[name] / 1000})
	}
	surface := thinPlate(nodes)
	for i := range piers {
		p := &piers[i]
		if p.ground, p.read = heights[p.name]; !p.read {
			p.ground = 1000 * surface(p.x/1000, p.y/1000)
		}
	}
}

// thinPlate solves Σ w r² ln r + a + b x + c y = z at the nodes, with
// Σ w = Σ w x = Σ w y = 0.
func thinPlate(nodes [][3]float64) func(x, y float64) float64 {
	n := len(nodes)
	bend := func(x, y float64) float64 {
		r2 := x*x + y*y
		if r2 == 0 {
			return 0
		}
		return r2 * math.Log(math.Sqrt(r2))
	}
	rows := make([][]float64, n+3)
	for i := range rows {
		rows[i] = make([]float64, n+4)
	}
	for i, p := range nodes {
		for k, q := range nodes {
			rows[i][k] = bend(p[0]-q[0], p[1]-q[1])
		}
		for k, v := range []float64{1, p[0], p[1]} {
			rows[i][n+k], rows[n+k][i] = v, v
		}
		rows[i][n+3] = p[2]
	}
	w := eliminate(rows)
	return func(x, y float64) float64 {
		z := w[n] + w[n+1]*x + w[n+2]*y
		for i, p := range nodes {
			z += w[i] * bend(x-p[0], y-p[1])
		}
		return z
	}
}

// eliminate solves linear equations whose last column is the right side.
func eliminate(rows [][]float64) []float64 {
	n := len(rows)
	for c := range n {
		best := c
		for r := c + 1; r < n; r++ {
			if math.Abs(rows[r][c]) > math.Abs(rows[best][c]) {
				best = r
			}
		}
		rows[c], rows[best] = rows[best], rows[c]
		for r := range n {
			if r == c {
				continue
			}
			times := rows[r][c] / rows[c][c]
			for k := c; k <= n; k++ {
				rows[r][k] -= times * rows[c][k]
			}
		}
	}
	solution := make([]float64, n)
	for i := range n {
		solution[i] = rows[i][n] / rows[i][i]
	}
	return solution
}

// halfPlane is a rule for one hole: a D + b c ≤ r.
type halfPlane struct{ a, b, r float64 }

// rules are what the job asks of dig D and stone c at one pier, apart from the post.
func (j handJob) rules(p handPier) []halfPlane {
	probe := j.probes[p.name]
	deepest, leastStone := j.deepest, j.leastStone
	if probe.rock {
		deepest = math.Min(deepest, probe.depth)
	}
	if bed, ok := j.beds[p.name]; ok {
		leastStone = bed
	}
	if depth, dug := j.dug[p.name]; dug { // it may be dug deeper, and not be filled with soil
		probe = handProbe{depth: depth}
		deepest = math.Max(j.deepest, depth)
	}
	return []halfPlane{
		{-1, 0, -math.Max(j.leastDig, math.Max(probe.depth, j.frost))}, // D ≥ least, firm, frost
		{1, 0, deepest},                // D ≤ deepest
		{-1, 1, -j.embed},              // D ≥ c + embed, which also keeps the top of the stone at g − embed or lower
		{0, -1, -leastStone},           // c ≥ least
		{0, 1, j.mostStone},            // c ≤ most
		{1, -1, j.seat - j.aboveGrade}, // b = g − D + c + seat ≥ g + above ground
	}
}

// corners returns every corner of the region that the rules leave.
func corners(rules []halfPlane) [][2]float64 {
	const slack = 1e-7
	var found [][2]float64
	for i, p := range rules {
		for _, q := range rules[i+1:] {
			det := p.a*q.b - q.a*p.b
			if det == 0 {
				continue
			}
			d, c := (p.r*q.b-q.r*p.b)/det, (p.a*q.r-q.a*p.r)/det
			fits := true
			for _, o := range rules {
				fits = fits && o.a*d+o.b*c <= o.r+slack
			}
			if fits {
				found = append(found, [2]float64{d, c})
			}
		}
	}
	return found
}

// seatsAt returns the lowest and the highest seat that the rules leave a pier.
func (j handJob) seatsAt(p handPier) (lowest, highest float64) {
	lowest, highest = math.Inf(1), math.Inf(-1)
	for _, corner := range corners(j.rules(p)) {
		seat := p.ground - corner[0] + corner[1] + j.seat
		lowest, highest = math.Min(lowest, seat), math.Max(highest, seat)
	}
	return lowest, highest
}

// windowOf returns the posts that leave a seat its room to come out higher or
// lower than meant.
func (j handJob) windowOf() (shortest, longest float64) {
	room := math.Min(j.room, math.Floor((j.longest-j.shortest)/2/j.mark+1e-6)*j.mark)
	return j.shortest + room, j.longest - room
}

// chooseFloor returns the floor, and the place that keeps it from being lower.
// Every seat gets room to come out high, up to half of what there is between the
// lowest floor and the highest; the floor itself is a whole mark.
func (j handJob) chooseFloor(piers []handPier, heights map[string]float64) (float64, string) {
	lowest, governs := math.Inf(-1), ""
	ask := func(name string, floor float64) {
		if floor > lowest+1e-9 {
			lowest, governs = floor, name
		}
	}
	roomy, highest := math.Inf(-1), math.Inf(1)
	shortest, _ := j.windowOf()
	for _, p := range piers {
		low, high := j.seatsAt(p)
		ask(p.name, j.buildUp()+math.Max(low+j.shortest, p.ground+j.clear))
		roomy = math.Max(roomy, j.buildUp()+math.Max(low+shortest, p.ground+j.clear))
		highest = math.Min(highest, j.buildUp()+high+j.longest)
	}
	for name, at := range j.spots {
		if at[0] >= 0 && at[0] <= j.length && at[1] >= 0 && at[1] <= j.width {
			ask(name, j.buildUp()+heights[name]+j.clear)
			roomy = math.Max(roomy, j.buildUp()+heights[name]+j.clear)
		}
	}
	if j.floorGiven {
		return j.floor, governs
	}
	upTo := func(floor float64) float64 {
		for _, step := range []float64{j.roundUp, j.mark} {
			if step > 0 {
				floor = math.Ceil(floor/step-1e-6) * step
			}
		}
		return floor
	}
	floor := upTo(math.Min(roomy, math.Max(lowest, (lowest+highest)/2)))
	if floor > highest+1e-6 {
		floor = upTo(lowest)
	}
	return floor, governs
}

// digHoles digs for the timber as drawn. A beam that came deeper or thinner is
// taken up by the post; only where the post could not, the hole follows the beam.
func (j handJob) digHoles(piers []handPier, floor float64) {
	for i := range piers {
		p := &piers[i]
		tops := j.onMark(floor - j.buildUpAt(p.name))
		j.digHole(p, j.onMark(floor-j.buildUp()))
		if post := tops - p.seat; !(post > j.shortest-j.mark/2-1e-6 && post < j.longest+j.mark/2-1e-6) {
			j.digHole(p, tops)
		}
		if seat, read := j.seats[p.name]; read {
			p.seat = seat
		}
		p.post = tops - p.seat
	}
}

// digHole takes the least dig and then the least stone that put a post of allowed
// length under the tops, with room for the seat where the pier has it, else with as
// much as it has.
func (j handJob) digHole(p *handPier, tops float64) {
	p.dig, p.stone = math.Inf(1), math.Inf(1)
	lowest, highest := j.seatsAt(*p)
	shortest, longest := j.windowOf()
	from, to := tops-longest, tops-shortest // the seats that have their room
	switch {
	case lowest > tops-j.shortest+1e-6 || highest < tops-j.longest-1e-6:
		from, to = math.Inf(1), math.Inf(-1) // none serves
	case lowest > to:
		from, to = lowest, lowest
	case highest < from:
		from, to = highest, highest
	}
	// from ≤ g − D + c + seat ≤ to
	rules := append(j.rules(*p), halfPlane{-1, 1, to - p.ground - j.seat}, halfPlane{1, -1, p.ground + j.seat - from})
	if from <= to {
		for _, corner := range corners(rules) {
			if corner[0] < p.dig-1e-6 || corner[0] < p.dig+1e-6 && corner[1] < p.stone {
				p.dig, p.stone = corner[0], corner[1]
			}
		}
	}
	p.seat = j.onMark(p.ground - p.dig + p.stone + j.seat)
}

// volumes adds up stone and spoil, in cubic metres.
func (j handJob) volumes(f map[string]any, piers []handPier) {
	side := j.base + 2*j.margin
	var bed, beside, dug float64
	for _, p := range piers {
		cover := p.dig - p.stone
		sunk := math.Min(cover, j.blockHeight)
		bed += side * side * p.stone
		beside += side*side*cover - j.base*j.base*sunk
		dug += side * side * p.dig
	}
	const (
		cubicMetre = 1e9
		trodden    = 0.95 // of the bank volume: the soil table's for sand and gravel, printed on the assumptions sheet
	)
	left := dug
	if j.soilBeside {
		f["stone.compacted"] = bed / cubicMetre
		left = dug - beside/trodden
	} else {
		f["stone.compacted"] = (bed + beside) / cubicMetre
	}
	f["spoil.loose"] = left * j.swell / cubicMetre
	f["spoil.packed"] = left * trodden / cubicMetre
}
