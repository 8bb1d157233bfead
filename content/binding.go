package content

// binding is the order in which the pages are bound. A shop's page that is not
// named here is bound after the last step.
var binding = []string{
	"cover", "pocket", "ask", "assumptions", "materials", "cuts",
	"set-out", "survey", "choose-height", "mark-piers", "dig", "stone", "blocks", "posts", "beams",
	"square-again", "ground-cloth", "joists", "surface", lastStep,
	"instrument-check", "level-book", "sides-and-diagonals", "post-table",
	"loads", "load-path", "checks",
	"cautions", "deferral", "care", "glossary",
}

// lastStep is the step after which a shop's own pages follow.
const lastStep = "final-check"

// clientBinding is the order of the pages that the client gets.
var clientBinding = []string{"client", "care"}
