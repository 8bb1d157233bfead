package figure

// Issue is what figures.json says of a binder besides its figures.
type Issue struct {
	Job      Heading
	Program  string // version of the program that made it
	Progress string
	Sheets   []Sheet
	Since    *Since // nil for a first issue
}

// Heading is what figures.json says about the job itself.
type Heading struct {
	Name     string `json:"name"`
	Revision string `json:"revision"`
}

// Sheet is one sheet of the binder, for the next issue to tell which sheets of
// this one are to be thrown away.
type Sheet struct {
	Name   string `json:"name"`
	Number int    `json:"number"`
	Title  string `json:"title"`
	Mark   string `json:"mark"` // of all that the sheet prints; empty while it is not known
}

// Since is what changed since the issue before. It is kept with the issue, so
// that the same binder made once more still tells it.
type Since struct {
	Revision   string        `json:"revision"`
	Progress   string        `json:"progress"`
	Program    string        `json:"program,omitempty"` // version of the program that made it; empty when it did not say
	By         string        `json:"by,omitempty"`      // version of the program that made the issue in which this was told first
	Changes    []Change      `json:"changes"`
	Sheets     []SheetChange `json:"sheets"`
	Unrecorded bool          `json:"unrecorded,omitempty"` // the issue before kept no record of its sheets
}

// Change is a figure that reads otherwise than in the issue before. One that is
// new was "", and one that is gone is "" and means nothing.
type Change struct {
	Key   string `json:"key"`
	Means string `json:"means"`
	Was   string `json:"was"`
	Is    string `json:"is"`
}

// SheetChange is a sheet that is not as it was in the issue before. Was is its
// number then, 0 for a sheet that is new, and Is its number now, 0 for one that
// is not bound any more.
type SheetChange struct {
	Title string `json:"title"`
	Was   int    `json:"was"`
	Is    int    `json:"is"`
}
