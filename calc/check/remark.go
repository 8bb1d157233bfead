package check

// Standing is one of the three words under which a sheet says what the checks do
// not settle. Nothing is left out in silence.
type Standing string

// The three words.
const (
	Fails      Standing = "fails"       // it does not hold, and nothing is built before it is mended
	ByOthers   Standing = "by others"   // somebody qualified settles it
	NotCounted Standing = "not counted" // it was left out, or taken on trust
)

// Remark is something that the checks do not settle, with what to do about it.
type Remark struct {
	Standing Standing
	Words    string
}
