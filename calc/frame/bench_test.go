package frame_test

import (
	"testing"

	"pierbook/calc/frame"
)

func BenchmarkLay(b *testing.B) {
	j := shed()
	b.ReportAllocs()
	for b.Loop() {
		frame.Lay(j)
	}
}

// A search over sizes lays the skeleton again and again.
func BenchmarkSkeleton(b *testing.B) {
	j := shed()
	b.ReportAllocs()
	for b.Loop() {
		frame.Skeleton(j)
	}
}

// The worst for the choice of splices: three plies over many piers.
func BenchmarkSkeletonWithManySplices(b *testing.B) {
	j := shed()
	j.Platform.Length, j.Frame.Piers.PerLine = 40*ft, 11
	j.Frame.Beams.Width, j.Frame.Beams.Plies = in, 3
	j.Frame.Beams.Lines = 4
	j.Yard.Stock["4x6"] = lengths(8, 12)
	b.ReportAllocs()
	for b.Loop() {
		frame.Skeleton(j)
	}
}

func BenchmarkFigures(b *testing.B) {
	j := shed()
	f := lay(b, j)
	b.ReportAllocs()
	for b.Loop() {
		f.Figures(j)
	}
}
