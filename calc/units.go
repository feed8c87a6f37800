package calc

// Units of length, force and pressure in inches and pounds. Multiply to bring a
// number in, divide to take it out: span := 12 * calc.Ft; feet := span / calc.Ft.
const (
	In   = 1.0                 // inch
	Ft   = 12 * In             // foot
	Lb   = 1.0                 // pound of force
	Kip  = 1000 * Lb           // thousand pounds
	PSI  = Lb / (In * In)      // pound per square inch
	PSF  = Lb / (Ft * Ft)      // pound per square foot
	PLF  = Lb / Ft             // pound per foot of length
	PCF  = Lb / (Ft * Ft * Ft) // pound per cubic foot
	SqFt = Ft * Ft             // square foot
	LbFt = Lb * Ft             // pound-foot
)
