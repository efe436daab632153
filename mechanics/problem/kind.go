package problem

// Kind is the kind of a line.
type Kind int

// The kinds of a line, in the order of the help.
const (
	Cable Kind = iota
	Strut
	Link
	SpringKind
	Force
	Weight
	Contact
	BeltKind
)

// Sense is what a positive magnitude means, and whether a negative one can be.
type Sense int

// The senses.
const (
	Along     Sense = iota // along the direction; either sign
	Tension                // pulls its ends together; either sign
	PullOnly               // tension, never negative
	PushOnly               // compression, never negative
	PressOnly              // along the direction, never negative
)

// KindInfo describes a kind for the reader, the help and the panes.
type KindInfo struct {
	Kind     Kind
	Name     string
	Sense    Sense
	Positive string // what a positive magnitude is called: "tension"
	Negative string // what a negative one is called
	Path     bool   // takes a path of two points or more
	Holds    string // one line for the help
}

// Kinds is the table of kinds.
func Kinds() []KindInfo { return kinds }

// Info gives the description of a kind.
func (k Kind) Info() KindInfo { return kinds[k] }

func (k Kind) String() string { return kinds[k].Name }

var kinds = []KindInfo{
	{Cable, "cable", PullOnly, "tension", "compression", true, "a rope or cable: can pull, not push"},
	{Strut, "strut", PushOnly, "compression", "tension", true, "a prop: can push, not pull"},
	{Link, "link", Tension, "tension", "compression", true, "a two-force member: either sense, tension positive"},
	{SpringKind, "spring", Tension, "tension", "compression", true, "stiffness × (length - natural): tension positive"},
	{Force, "force", Along, "along its direction", "against its direction", false, "a force by direction and magnitude, or by components"},
	{Weight, "weight", Along, "downwards", "upwards", false, "along gravity; a mass is multiplied by g"},
	{Contact, "contact", PressOnly, "push", "pull", false, "a smooth surface: can push, not pull"},
	{BeltKind, "belt", PullOnly, "tension", "compression", true, "a rope or belt round a rough drum: of R the tensions R1, R2"},
}

// AKind is a kind of line, joint or load with its article.
func AKind(kind string) string {
	switch kind {
	case "fixed":
		return "a fixed support"
	case "":
		return "a load without a kind"
	}
	return "a " + kind
}
