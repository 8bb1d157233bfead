package diagrams

import "pierbook/calc/measure"

func sampleRectangles(j site) Rectangles {
	corners := j.grid().corners()
	names := [4]string{corners[0].Name, corners[1].Name, corners[2].Name, corners[3].Name}
	long, wide := j.long-2*j.inset(), j.wide-2*j.inset()
	return Rectangles{
		Frame:       Rectangle{names, j.long, j.wide, measure.Hypot(j.long, j.wide)},
		Piers:       Rectangle{names, long, wide, measure.Hypot(long, wide)},
		LinesGoLeft: j.left, AcrossToPier: j.inset(), ForwardToPier: j.inset(),
	}
}
