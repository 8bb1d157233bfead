package measure

// The units of figures.json.

// Base returns a in m2.
func (a Area) Base() (float64, string) { return float64(a), "m2" }

// Base returns v in m3.
func (v Volume) Base() (float64, string) { return float64(v), "m3" }

// Base returns m in kg.
func (m Mass) Base() (float64, string) { return float64(m), "kg" }

// Base returns f in N.
func (f Force) Base() (float64, string) { return float64(f), "N" }

// Base returns p in kPa.
func (p Stress) Base() (float64, string) { return float64(p / Kilopascal), "kPa" }

// Base returns t in kPa.
func (t TimberStress) Base() (float64, string) { return float64(t) / float64(Kilopascal), "kPa" }

// Base returns w in N/m.
func (w LineLoad) Base() (float64, string) { return float64(w), "N/m" }

// Base returns m in N m.
func (m Moment) Base() (float64, string) { return float64(m), "N m" }

// Base returns d in kg/m3.
func (d Density) Base() (float64, string) { return float64(d), "kg/m3" }

// Base returns v in m/s.
func (v Speed) Base() (float64, string) { return float64(v), "m/s" }

// Base returns r, a plain number.
func (r Ratio) Base() (float64, string) { return float64(r), "" }

// Base returns p as a fraction of one: 0.08 for 8%.
func (p Percent) Base() (float64, string) { return float64(p), "" }

// Base returns h in hours.
func (h Hours) Base() (float64, string) { return float64(h), "h" }

// Base returns m in the currency of the price list.
func (m Money) Base() (float64, string) { return float64(m), "" }

// Base returns c, a plain number.
func (c Count) Base() (float64, string) { return float64(c), "" }

// Base returns 0: a word has no number. Its text is what [Word.Print] returns.
func (w Word) Base() (float64, string) { return 0, "" }
