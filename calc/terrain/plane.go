package terrain

import (
	"math"

	"pierbook/calc/measure"
)

// Plane is the least-squares plane through the readings, worked about their
// centroid in the scaled plan.
//
//	z = z̄ + p (u − ū) + q (v − v̄)       s² = Σ residual² / (n − 3)
type Plane struct {
	Count                   int
	SlopeX, SlopeY          float64 // rise per length along x and y
	Squares                 float64 // sum of the squared residuals, m²
	frame                   scaling
	u, v, z                 float64 // centroid, scaled; z in m over frame.base
	p, q                    float64 // slopes in the scaled plan, m
	suu, suv, svv, residual float64 // residual is the standard error of one reading about the plane, m
}

func fitPlane(nodes []Node, frame scaling) Plane {
	n := float64(len(nodes))
	f := Plane{Count: len(nodes), frame: frame}
	for _, node := range nodes {
		u, v := frame.to(node.X, node.Y)
		f.u += u / n
		f.v += v / n
		f.z += (node.Height - frame.base).Metres() / n
	}
	var suz, svz float64
	for _, node := range nodes {
		u, v := frame.to(node.X, node.Y)
		z := (node.Height - frame.base).Metres() - f.z
		f.suu += (u - f.u) * (u - f.u)
		f.suv += (u - f.u) * (v - f.v)
		f.svv += (v - f.v) * (v - f.v)
		suz += (u - f.u) * z
		svz += (v - f.v) * z
	}
	determinant := f.suu*f.svv - f.suv*f.suv
	f.p = (suz*f.svv - svz*f.suv) / determinant
	f.q = (svz*f.suu - suz*f.suv) / determinant
	f.SlopeX, f.SlopeY = f.p/frame.size, f.q/frame.size
	for _, node := range nodes {
		residual := (node.Height - frame.base).Metres() - f.metres(node.X, node.Y)
		f.Squares += residual * residual
	}
	if f.Count > 3 {
		f.residual = math.Sqrt(f.Squares / (n - 3))
	}
	return f
}

// At returns the height of the plane at a place.
func (p Plane) At(x, y measure.Length) measure.Length {
	return p.frame.base + measure.FromMetres(p.metres(x, y))
}

func (p Plane) metres(x, y measure.Length) float64 {
	u, v := p.frame.to(x, y)
	return p.z + p.p*(u-p.u) + p.q*(v-p.v)
}

// linear returns the plane as c0 + c1 u + c2 v in the scaled plan.
func (p Plane) linear() [3]float64 { return [3]float64{p.z - p.p*p.u - p.q*p.v, p.p, p.q} }

// Residual returns the standard error of one reading about the plane, zero when
// there are only three.
func (p Plane) Residual() measure.Length { return measure.FromMetres(p.residual) }

// Leverage returns h, which grows from 1/n at the middle of the readings: the
// variance of the fitted height is s² h, that of one more reading s² (1 + h).
func (p Plane) Leverage(x, y measure.Length) float64 {
	u, v := p.frame.to(x, y)
	u, v = u-p.u, v-p.v
	determinant := p.suu*p.svv - p.suv*p.suv
	return 1/float64(p.Count) + (u*u*p.svv-2*u*v*p.suv+v*v*p.suu)/determinant
}
