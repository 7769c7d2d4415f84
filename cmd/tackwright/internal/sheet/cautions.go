package sheet

// Cautions are what every sheet for the barn carries (common practice).
var Cautions = []string{
	"Girths are re-checked by the instructor before anyone mounts and again after a few minutes of walk.",
	"A pad never stays on a horse without the saddle.",
	"Stay where the horse can see you or keep a hand on it, and never go under its belly.",
	"Tighten a girth in steps: snug enough that nothing slips, no more until the instructor's check.",
}

// Deferral says who decides what this program does not.
const Deferral = "A fit is for a saddle fitter, lameness for a vet, a rider's health for a physician, " +
	"and the go-ahead for the instructor; local codes come first."
