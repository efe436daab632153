package problem

// JointKind is an index in the table of joints.
type JointKind int

// Hold says which of a body's forces, or moments, a joint holds.
type Hold int8

// What a joint holds.
const (
	HoldNone   Hold = iota
	HoldAll         // every component
	HoldNormal      // one component, along the normal
	HoldAcross      // the components across the axis
	HoldRough       // one along the normal, the others along the surface
)

// Holds is what a joint holds on a sheet in the plane or in space.
type Holds struct {
	Stands          bool // the joint has a meaning there
	Forces, Moments Hold
	Needs           string // "normal", "axis" or ""
}

// JointInfo describes a joint for the reader, the assembly and the help.
type JointInfo struct {
	Name         string
	Aliases      []string
	Plane, Space Holds
	PushOnly     bool // its normal force cannot pull
	MayLack      bool // moments = "none" takes its moments away
	Says         string
}

// Joints is the table of joints: the rows of a textbook's table of supports
// (common practice). Cables and links, the table's first rows, are lines.
func Joints() []JointInfo { return joints }

// Info gives the description of a joint's kind.
func (k JointKind) Info() JointInfo { return joints[k] }

func (k JointKind) String() string { return joints[k].Name }

// Where gives what the kind holds on a sheet in the plane or in space.
func (k JointKind) Where(planar bool) Holds {
	if planar {
		return joints[k].Plane
	}
	return joints[k].Space
}

var joints = []JointInfo{
	{Name: "roller", Plane: Holds{true, HoldNormal, HoldNone, "normal"}, Space: Holds{true, HoldNormal, HoldNone, "normal"},
		PushOnly: true, Says: "one force along the normal, push only"},
	{Name: "rocker", Plane: Holds{true, HoldNormal, HoldNone, "normal"}, Space: Holds{true, HoldNormal, HoldNone, "normal"},
		PushOnly: true, Says: "one force along the normal, push only"},
	{Name: "smooth-surface", Aliases: []string{"smooth", "smooth surface"}, Plane: Holds{true, HoldNormal, HoldNone, "normal"}, Space: Holds{true, HoldNormal, HoldNone, "normal"},
		PushOnly: true, Says: "one force along the normal, push only"},
	{Name: "rough-surface", Aliases: []string{"rough", "rough surface"}, Plane: Holds{true, HoldRough, HoldNone, "normal"}, Space: Holds{true, HoldRough, HoldNone, "normal"},
		PushOnly: true, Says: "a normal force, push only, and friction along the surface"},
	{Name: "pin", Aliases: []string{"smooth pin", "smooth-pin"}, Plane: Holds{true, HoldAll, HoldNone, ""}, Space: Holds{true, HoldAll, HoldAcross, "axis"},
		MayLack: true, Says: "all forces; in space also the moments perpendicular to its axis"},
	{Name: "ball-and-socket", Aliases: []string{"ball and socket", "ball"}, Plane: Holds{true, HoldAll, HoldNone, ""}, Space: Holds{true, HoldAll, HoldNone, ""},
		Says: "all forces, no moment"},
	{Name: "hinge", Plane: Holds{true, HoldAll, HoldNone, ""}, Space: Holds{true, HoldAll, HoldAcross, "axis"},
		MayLack: true, Says: "all forces and the moments perpendicular to its axis; one of an aligned pair has moments = \"none\""},
	{Name: "journal-bearing", Aliases: []string{"journal bearing", "journal"}, Space: Holds{true, HoldAcross, HoldAcross, "axis"},
		MayLack: true, Says: "the forces and the moments perpendicular to its axis; one of an aligned pair has moments = \"none\""},
	{Name: "square-bearing", Aliases: []string{"square-shaft bearing", "square-shaft-bearing", "square bearing"}, Space: Holds{true, HoldAcross, HoldAll, "axis"},
		MayLack: true, Says: "a journal bearing with a square shaft: the forces perpendicular to its axis and all moments"},
	{Name: "thrust-bearing", Aliases: []string{"thrust bearing", "thrust"}, Space: Holds{true, HoldAll, HoldAcross, "axis"},
		MayLack: true, Says: "all forces and the moments perpendicular to its axis; one of an aligned pair has moments = \"none\""},
	{Name: "slider", Aliases: []string{"slot", "pin in slot"}, Plane: Holds{true, HoldAcross, HoldNone, "axis"}, Space: Holds{true, HoldAcross, HoldNone, "axis"},
		Says: "slides along a rod or slot and rotates freely: the forces perpendicular to its axis"},
	{Name: "collar", Plane: Holds{true, HoldAcross, HoldAll, "axis"}, Space: Holds{true, HoldAcross, HoldAcross, "axis"},
		MayLack: true, Says: "rigidly on the body, slides along a smooth rod: the forces and the moments perpendicular to its axis; in the plane a force and a moment"},
	{Name: "fixed", Aliases: []string{"clamp", "built-in"}, Plane: Holds{true, HoldAll, HoldAll, ""}, Space: Holds{true, HoldAll, HoldAll, ""},
		Says: "all forces and all moments"},
}
