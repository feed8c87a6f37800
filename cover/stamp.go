package cover

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"patiocover/loads"
)

// Notice is what every output carries.
const Notice = "This is a calculation aid, not a sealed design. Structural work must be approved by a licensed engineer " +
	"and by the local building department; local codes govern. What was not checked is listed and must be settled by others."

// Program names this program in the stamp of a report.
const Program = "patiocover 0.1"

// stamp identifies the report of an input.
func stamp(in Input) (Stamp, error) {
	text, err := json.Marshal(in)
	if err != nil {
		return Stamp{}, fmt.Errorf("writing the input for its hash: %w", err)
	}
	sum := sha256.Sum256(text)
	standard := loads.ASCE716.String()
	if in.Site.Standard != nil {
		standard = *in.Site.Standard
	}
	method := "allowable stress design"
	if is(in.Site.Method, "LRFD") {
		method = "members by load and resistance factor design, the rest by " + method
	}
	return Stamp{
		Program: Program, Schema: SchemaVersion, InputHash: hex.EncodeToString(sum[:]),
		Standards: standard + ", NDS 2018, IRC 2021; " + method,
	}, nil
}
