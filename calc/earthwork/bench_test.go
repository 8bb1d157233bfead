package earthwork_test

import (
	"fmt"
	"testing"

	"pierbook/calc/fieldtest"
	"pierbook/calc/frame"
	"pierbook/calc/job"
	"pierbook/calc/levelling"
	"pierbook/calc/measure"
)

// largeSite has 200 piers and 400 readings: every second pier is read, and as
// many spots again three times over, on ground that falls and rolls.
func largeSite() (*job.Job, *frame.Frame) {
	f := fieldtest.GridFrame(120*measure.Foot, 60*measure.Foot, 10, 20)
	j := fieldtest.TermsJob()
	j.Ground.Spots = map[string]job.Spot{}
	j.Frame.Posts.Longest = 20 * measure.Foot
	setUp := []job.Sight{{Point: levelling.BenchMark, Reading: fieldtest.In(60)}}
	read := func(name string, x, y measure.Length, n int) {
		height := x.Scale(0.02) - y.Scale(0.01) + fieldtest.In(float64(n*7%11)/4)
		setUp = append(setUp, job.Sight{Point: name, Reading: fieldtest.In(60) - height})
	}
	for i, p := range f.Piers {
		if i%2 == 0 {
			read(p.Name, p.X, p.Y, i)
		}
		name := fmt.Sprintf("spot%d", i)
		j.Ground.Spots[name] = job.Spot{X: p.X + fieldtest.In(17), Y: p.Y + fieldtest.In(11)}
		read(name, j.Ground.Spots[name].X, j.Ground.Spots[name].Y, i+3)
		if i%2 == 1 {
			read(name, j.Ground.Spots[name].X, j.Ground.Spots[name].Y, i+3)
		}
	}
	j.Ground.SetUps = [][]job.Sight{append(setUp, job.Sight{Point: levelling.BenchMark, Reading: fieldtest.In(60)})}
	return j, f
}

func BenchmarkSample(b *testing.B) {
	j, f := fieldtest.SampleJob(), fieldtest.SampleFrame()
	b.ReportAllocs()
	for b.Loop() {
		g := fieldtest.Work(b, j, f)
		g.Figures(j)
	}
}

func BenchmarkLargeSite(b *testing.B) {
	j, f := largeSite()
	b.ReportAllocs()
	for b.Loop() {
		g := fieldtest.Work(b, j, f)
		g.Figures(j)
	}
}
