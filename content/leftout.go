package content

import "strings"

// leftOut sees that what a job leaves out asks for figures that there are, so
// that a wrong key shows at once and not in the first job that binds its part.
func (b *binder) leftOut(pieces []piece) {
	for _, p := range pieces {
		switch h := p.hole.(type) {
		case figureText:
			b.wouldKnow(h.key, h.at)
		case figureName:
			b.wouldKnow(h.key, h.at)
		case when:
			b.wouldKnow(h.condition.key, h.condition.at)
			b.leftOut(h.body)
		case group:
			b.leftOut(h.body)
		case unlessAsked:
			b.leftOut(h.body)
		case call:
			b.leftOut(h.caption)
		case rows:
			h.leftOut(b)
		}
	}
}

// leftOutPage does the same for a page that is not bound.
func (b *binder) leftOutPage(p *page) {
	for _, pieces := range [][]piece{p.title, p.people, p.time, p.tools, p.overnight, p.body} {
		b.leftOut(pieces)
	}
	for _, r := range append(p.needs[:len(p.needs):len(p.needs)], p.feeds...) {
		b.leftOut(r.text)
	}
}

// wouldKnow reports a key that no job has. One of a pier or a line that this job
// does not have is none: the condition may ask for just those.
func (b *binder) wouldKnow(key string, at span) {
	if _, ok := b.figures.Get(key); ok {
		return
	}
	if family, rest, named := member(key); named {
		for _, f := range b.figures.All() {
			if otherFamily, otherRest, ok := member(f.Key); ok && otherFamily == family && otherRest == rest {
				return
			}
		}
	}
	b.figure(key, at)
}

// member parts the key of one pier, line or the like into what it is one of and
// what of it: pier and post of pier.A1.post.
func member(key string) (family, rest string, ok bool) {
	family, named, ok := strings.Cut(key, ".")
	_, rest, more := strings.Cut(named, ".")
	switch family {
	case "pier", "line", "spot", "joist", "setup":
		return family, rest, ok && more
	}
	return "", "", false
}
