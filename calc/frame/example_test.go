package frame_test

import (
	"fmt"

	"pierbook/calc/frame"
)

// The running marks of a floor 16 ft long with joists at 16 in, as a tape hooked
// on the frame end reads them. Framing text on pulling a layout from a corner:
// 15 1/4, 31 1/4, 47 1/4, 63 1/4 in, so that panel edges land on the middle of a joist.
func ExampleLay() {
	f, faults := frame.Lay(shed())
	if !faults.Empty() {
		fmt.Println(faults.Err())
		return
	}
	for _, joist := range f.Joists[:5] {
		fmt.Printf("%s at %.2f in, the joist stands %s the mark\n", joist.Name, joist.Near.Inches(), joist.MarkSide)
	}
	// Output:
	// J1 at 0.00 in, the joist stands beyond the mark
	// J2 at 15.25 in, the joist stands beyond the mark
	// J3 at 31.25 in, the joist stands beyond the mark
	// J4 at 47.25 in, the joist stands beyond the mark
	// J5 at 63.25 in, the joist stands beyond the mark
}
