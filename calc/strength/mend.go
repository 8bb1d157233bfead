package strength

// Remedy is one change of the frame.
type Remedy struct{ Change string }

func (s *Strength) mend(Input) {}
