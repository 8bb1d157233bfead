package trade

// The numbers that calculations take; pages print these and the rest by key.
const (
	BearingLeast Length = "bearing_least"
	BedDo        Length = "bed_do"
	BoardClear   Length = "board_clear"
	BoardLong    Length = "board_long"
	DeepHole     Length = "deep_hole"
	EdgeBearing  Length = "edge_bearing"
	EdgeDistance Length = "edge_distance"
	FloorAccept  Length = "floor_accept"
	FloorStep    Length = "floor_step"
	FloorDo      Length = "floor_do"
	GivenUp      Length = "given_up"
	GuardHeight  Length = "guard_height"
	GuardReach   Length = "guard_reach"
	HumpAccept   Length = "hump_accept"
	HumpDo       Length = "hump_do"
	KnotTail     Length = "knot_tail"
	LongStick    Length = "long_stick"
	PanelLeast   Length = "panel_least"
	PlaneMost    Length = "plane_most"
	PostServes   Length = "post_serves"
	RiserMost    Length = "riser_most"
	SeatAccept   Length = "seat_accept"
	ShimMost     Length = "shim_most"

	LiftAlone Mass = "lift_alone"
)
