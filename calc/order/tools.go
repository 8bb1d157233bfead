package order

import "pierbook/calc/measure"

// tools lists what the crew must own or hire. Compiled from the steps of the
// work (common practice, no source).
func tools(in Input) []Tool {
	list := []Tool{
		{"tape, longer than the diagonal, and a second one", "setting out", false},
		{"sledge or maul for stakes, plumb bob, marking paint", "setting out", false},
		{instrumentName(in.Job.Ground.Instrument.Kind), "levels", true},
		{"levelling rod or a straight stick with a tape on it", "levels", false},
		{"spade, digging bar, mattock, barrow, sheet for the turf", "digging", false},
		{"hand tamper, rake, bucket of known volume, watering can", "stone", false},
		{"torpedo level, 4 ft level, straight board, rubber mallet", "blocks", false},
		{"saw with guard, square, clamps, sawhorses, pencil", "cutting", false},
		{"hammer, drill-driver, nail puller, chalk line, clamps", "framing", false},
		{"ratchet strap to rack the frame", "square again", false},
		{"eye, ear, hand and foot protection; dust mask for cutting", "all steps", false},
	}
	if in.Frame != nil && len(in.Frame.Surface.Panels) > 0 {
		list = append(list, Tool{"panel lifter or a second pair of hands, scrap block and maul", "surface", false})
	}
	if in.Bed != nil && measure.Volume(in.Bed.Units)*in.Bed.Unit > 1.5 {
		list = append(list, Tool{"small plate compactor", "stone", true})
	}
	return list
}

func instrumentName(kind string) string {
	switch kind {
	case "builders_level":
		return "builder's level with its tripod"
	case "water_level":
		return "water level"
	case "string_level":
		return "string and line level"
	case "line_laser":
		return "line laser with its tripod"
	default:
		return "rotary laser with receiver and tripod"
	}
}
