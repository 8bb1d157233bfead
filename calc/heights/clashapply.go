package heights

import (
	"maps"
	"strings"

	"pierbook/calc/job"
)

// In returns the job with the change made.
func (l Loosening) In(j *job.Job) *job.Job {
	changed := *j
	switch l.Path {
	case "frame.posts.longest":
		changed.Frame.Posts.Longest = l.To
	case "frame.posts.shortest":
		changed.Frame.Posts.Shortest = l.To
	case "dig.deepest":
		changed.Dig.Deepest = l.To
	case "dig.least":
		changed.Dig.Least = l.To
	case "stone.most":
		changed.Stone.Most = l.To
	case "stone.least":
		changed.Stone.Least = l.To
	case "stone.above_ground":
		changed.Stone.AboveGround = l.To
	case "stone.embed":
		changed.Stone.Embed = l.To
	case "frame.clear":
		changed.Frame.Clear = l.To
	case "platform.floor.height":
		changed.Platform.Floor = job.Floor{Height: l.To}
	case "platform.floor.round_up":
		changed.Platform.Floor.RoundUp = l.To
	default: // the bed under one pier, see thinnerBed
		pier := strings.TrimSuffix(strings.TrimPrefix(l.Path, "piers."), ".bed")
		changed.Piers = maps.Clone(j.Piers)
		if changed.Piers == nil {
			changed.Piers = map[string]job.Exception{}
		}
		exception := changed.Piers[pier]
		exception.Bed = &l.To
		changed.Piers[pier] = exception
	}
	return &changed
}
