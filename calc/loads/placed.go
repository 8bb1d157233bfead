package loads

import "pierbook/calc/measure"

// Patch is a load at a place of the floor that may be there or not.
type Patch struct {
	Name          string
	X, Y          measure.Length // its corner nearest the frame corner by A1
	Length, Width measure.Length // along x and y
	Load          measure.Force
}

// PlacedWall is a straight wall along x or along y, by its centre line.
type PlacedWall struct {
	Name             string
	X1, Y1, X2, Y2   measure.Length
	CarriesRoof      bool          // an eaves wall
	ShareOfRoof      measure.Ratio // of the roof's whole load
	ShareOfWallsMass measure.Ratio
}

// Long returns the length of the wall.
func (w PlacedWall) Long() measure.Length { return max((w.X2 - w.X1).Abs(), (w.Y2 - w.Y1).Abs()) }
