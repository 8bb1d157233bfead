package frame

import "pierbook/calc/measure"

// leastBays is how many joist bays a piece of panel or board has to cover: span
// ratings hold for pieces over two or more spans (APA Form E30V, 2011, p. 32).
// It is also how far, in joists, end joints of neighbouring rows stay apart.
const leastBays = 2

// surface lays the floor in pieces.
func (l *layout) surface() {
	switch l.job.Platform.Surface.Kind {
	case "panels":
		l.panels()
	case "boards":
		l.boards()
	default:
		l.wrong("platform.surface.kind", "write panels or boards", "%q is no surface that can be laid", l.job.Platform.Surface.Kind)
	}
}

// positions returns how many joists stand side by side along the length.
func (f *Frame) positions() int { return f.Joists[len(f.Joists)-1].Number }

// marks returns the near faces of the joists along the length.
func (f *Frame) marks() []measure.Length {
	near := make([]measure.Length, f.positions())
	for i := range near {
		near[i] = f.Joists[i].Near
	}
	return near
}
