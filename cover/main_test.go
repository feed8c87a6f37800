package cover_test

import (
	"flag"
	"fmt"
	"os"
	"testing"
)

// draws is how many random covers a property is tried on unless -rapid.checks says
// otherwise. Each is sized whole, several times, in both design methods.
const draws = "12"

// TestMain sets the number of draws.
func TestMain(m *testing.M) {
	flag.Parse()
	said := false
	flag.Visit(func(f *flag.Flag) { said = said || f.Name == "rapid.checks" })
	if !said {
		if err := flag.Set("rapid.checks", draws); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	os.Exit(m.Run())
}
