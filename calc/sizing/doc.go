// Package sizing searches: the cheapest frame that passes every check where a job
// leaves sizes open, before anything else is worked; and, after a frame was
// checked and failed, the changes that would mend it. Both lay frames out on
// trial and ask the checks of package strength; they hold no check of their own.
package sizing
