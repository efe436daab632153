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
	Noun     string // in a sentence, before the name of a line
	Means    string // its magnitude, of the line %[1]s that acts on a body%[2]s
	Sign     string // in which sense that is positive, where it has to be said
}

// Kinds is the table of kinds.
func Kinds() []KindInfo { return kinds }

// Info gives the description of a kind.
func (k Kind) Info() KindInfo { return kinds[k] }

func (k Kind) String() string { return kinds[k].Name }

var kinds = []KindInfo{
	{Cable, "cable", PullOnly, "tension", "compression", true, "a rope or cable: can pull, not push", "cable", "the tension in %[1]s", ""},
	{Strut, "strut", PushOnly, "compression", "tension", true, "a prop: can push, not pull", "strut", "the compression in %[1]s", ""},
	{Link, "link", Tension, "tension", "compression", true, "a two-force member: either sense, tension positive", "member", "the force in %[1]s", "in tension"},
	{SpringKind, "spring", Tension, "tension", "compression", true, "stiffness × (length - natural): tension positive", "spring", "the force in %[1]s", "in tension"},
	{Force, "force", Along, "along its direction", "against its direction", false, "a force by direction and magnitude, or by components", "force", "the magnitude of %[1]s%[2]s", "in the direction of its arrow in the figure"},
	{Weight, "weight", Along, "downwards", "upwards", false, "along gravity; a mass is multiplied by g", "weight", "the weight that acts%[2]s", ""},
	{Contact, "contact", PressOnly, "push", "pull", false, "a smooth surface: can push, not pull", "the contact", "the contact force%[2]s", "as a push"},
	{BeltKind, "belt", PullOnly, "tension", "compression", true, "a rope or belt round a rough drum: of R the tensions R1, R2", "belt", "the tension in %[1]s", ""},
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
