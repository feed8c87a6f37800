package cover_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"patiocover/calc/calctest"
	"patiocover/cover"
)

// demos are the inputs in testdata/covers.
var demos = []string{"desert", "snow", "coast", "survey", "drift", "glued", "ranch", "garden"}

// demoPath is the path of a file in testdata/covers.
func demoPath(t testing.TB, file string) string {
	return filepath.Join(calctest.Root(t), "testdata", "covers", file)
}

// demo reads one of the demos.
func demo(t testing.TB, name string) cover.Input {
	t.Helper()
	text, err := os.ReadFile(demoPath(t, name+".json"))
	require.NoError(t, err)
	in, err := cover.Read(bytes.NewReader(text))
	require.NoError(t, err, name)
	return in
}

// simple is a cover that can be followed by hand: a ledger, one beam line, two posts
// at the roof edges, no overhang, 10 ft by 20 ft, rafters at 24 in., all but flat,
// wind speed and exposure of the demonstration in the desert, a layer of 5 psf. Sizes
// are given.
func simple() cover.Input {
	wood, grade := "Douglas Fir-Larch", "No.2"
	return cover.Input{
		Schema: cover.SchemaVersion,
		Site: cover.Site{
			WindSpeed: new(105.0), Exposure: new("C"), RoofSnow: new(0.0), FrostDepth: new(0.0), Climate: new("dry"),
		},
		Cover: cover.Cover{
			Attachment: new("ledger"), Projection: new(10.0), Width: new(20.0), Overhang: new(0.0), Slope: new(0.125),
			HighEdge: new(9.0), Covering: new("solid"),
			Layers: []cover.Layer{{Name: new("deck and roofing"), Weight: new(5.0), Certain: new(true)}},
		},
		Rafters:    cover.Rafters{Species: &wood, Grade: &grade, Size: new("2x8"), Spacing: new(24.0)},
		Beams:      cover.Beams{Species: &wood, Grade: &grade, Size: new("6x16")},
		Posts:      cover.Posts{Count: new(2), Species: &wood, Grade: &grade, Size: new("6x6")},
		Foundation: cover.Foundation{Kind: new("footing")},
		Lateral:    cover.Lateral{Along: new("house_diaphragm"), Out: new("house_diaphragm")},
		House:      cover.House{Wall: new("studs")},
	}
}

// overhung is the simple cover with a beam line at 10 ft and 2 ft beyond it.
func overhung() cover.Input {
	in := simple()
	in.Cover.Projection, in.Cover.Overhang = new(12.0), new(2.0)
	return in
}

// standing is the simple cover on two beam lines of its own.
func standing() cover.Input {
	in := overhung()
	in.Cover.Attachment = new("freestanding")
	in.Cover.Projection = new(14.0)
	in.Lateral = cover.Lateral{Along: new("knee_braces"), Out: new("knee_braces")}
	in.House = cover.House{}
	return in
}

// size answers a valid input.
func size(t testing.TB, in cover.Input) cover.Report {
	t.Helper()
	r, err := cover.Size(in)
	require.NoError(t, err)
	return r
}

// member finds a member by its mark.
func member(t testing.TB, r cover.Report, mark string) cover.Member {
	t.Helper()
	for _, m := range r.Members {
		if m.Mark == mark {
			return m
		}
	}
	require.Fail(t, "no member "+mark)
	return cover.Member{}
}

// check finds a check of a member by its name.
func check(t testing.TB, r cover.Report, mark, name string) cover.MemberCheck {
	t.Helper()
	for _, c := range member(t, r, mark).Checks {
		if c.Name == name {
			return c
		}
	}
	require.Fail(t, "no check "+name+" of "+mark)
	return cover.MemberCheck{}
}

// value is the number of the last line with the symbol.
func value(t testing.TB, c cover.MemberCheck, symbol string) float64 {
	t.Helper()
	for i := len(c.Check.Lines) - 1; i >= 0; i-- {
		if c.Check.Lines[i].Symbol == symbol {
			return c.Check.Lines[i].X
		}
	}
	require.Fail(t, c.Name+" has no line "+symbol)
	return 0
}

// linkOf finds a link by its mark.
func linkOf(t testing.TB, r cover.Report, mark string) cover.Link {
	t.Helper()
	for _, l := range r.Links {
		if l.Mark == mark {
			return l
		}
	}
	require.Fail(t, "no link "+mark)
	return cover.Link{}
}

// reaction finds what a support receives.
func reaction(t testing.TB, r cover.Report, support string) cover.Reaction {
	t.Helper()
	for _, x := range r.Reactions {
		if x.Support == support {
			return x
		}
	}
	require.Fail(t, "no reaction at "+support)
	return cover.Reaction{}
}

// byCase is the force of the first load case whose name starts so, lb.
func byCase(t testing.TB, x cover.Reaction, name string) float64 {
	t.Helper()
	for _, c := range x.ByCase {
		if strings.HasPrefix(c.Case, name) {
			return c.Force
		}
	}
	require.Fail(t, x.Support+" has no case "+name)
	return 0
}

// skipped reports whether the report says that it does not answer a subject.
func skipped(r cover.Report, words string) bool {
	for _, s := range r.NotChecked {
		if strings.Contains(s.What+": "+s.Why, words) {
			return true
		}
	}
	return false
}

// marshal writes anything as JSON.
func marshal(t testing.TB, x any) []byte {
	t.Helper()
	text, err := json.Marshal(x)
	require.NoError(t, err)
	return text
}
