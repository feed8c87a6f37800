package cover_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"patiocover/cover"
)

// Any field of any cover may be set to anything in its range, or left out: then the
// cover is refused with faults, or answered with a report that holds. A new row in the
// table of fields is covered by this without more ado.
func TestMutatedCoversAreAnswered(t *testing.T) {
	t.Parallel()
	var seeds [][]byte
	for _, name := range demos {
		seeds = append(seeds, marshal(t, demo(t, name)))
	}
	for _, in := range []cover.Input{simple(), overhung(), standing()} {
		full, _ := in.Assume()
		seeds = append(seeds, marshal(t, in), marshal(t, full))
	}
	answers := 0
	rapid.Check(t, func(r *rapid.T) {
		var tree map[string]any
		if err := json.Unmarshal(rapid.SampledFrom(seeds).Draw(r, "cover"), &tree); err != nil {
			r.Fatal(err)
		}
		for range rapid.IntRange(1, 4).Draw(r, "changes") {
			mutate(r, tree)
		}
		in, err := cover.Read(bytes.NewReader(marshal(t, tree)))
		if err != nil {
			refused(t, err)
			return
		}
		answers++
		report := answer(r, in)
		if faults := append(faultsOf(report), lawFaults(report)...); len(faults) > 0 {
			r.Fatal(faults)
		}
		if text := marshal(t, report); bytes.Contains(text, []byte("NaN")) || bytes.Contains(text, []byte("%!")) {
			r.Fatal("the report says something that is no number")
		}
	})
	if answers == 0 {
		t.Error("every mutant was refused")
	}
}

// mutate sets one field that is not in a list of groups, or leaves it out.
func mutate(t *rapid.T, tree map[string]any) {
	f := rapid.SampledFrom(cover.Fields()).Draw(t, "field")
	if strings.Contains(f.Path, "[]") || f.Path == "schema" {
		return
	}
	group, name, _ := strings.Cut(f.Path, ".")
	at, ok := tree[group].(map[string]any)
	if !ok {
		at = map[string]any{}
		tree[group] = at
	}
	if x := drawn(t, f); x != nil && rapid.IntRange(0, 5).Draw(t, "left out") > 0 {
		at[name] = x
		return
	}
	delete(at, name)
}

// drawn draws a value of a field inside its range, at the ends of it as often as not.
func drawn(t *rapid.T, f cover.Field) any {
	switch f.Kind {
	case cover.KindNumber:
		return rapid.OneOf(rapid.Just(f.Low), rapid.Just(f.High), rapid.Float64Range(f.Low, f.High)).Draw(t, f.Path)
	case cover.KindInteger:
		return rapid.IntRange(int(f.Low), int(f.High)).Draw(t, f.Path)
	case cover.KindChoice:
		return rapid.SampledFrom(f.Choices).Draw(t, f.Path)
	case cover.KindFlag:
		return rapid.Bool().Draw(t, f.Path)
	case cover.KindNumbers:
		return [][]float64{{4, 10}, {10}, {0, 9, 18}, {1, 7, 13, 19}, {2, 12}}[rapid.IntRange(0, 4).Draw(t, f.Path)]
	}
	if strings.HasSuffix(f.Path, ".size") {
		return rapid.SampledFrom([]string{"2x4", "2x6", "2x8", "2x12", "4x4", "4x8", "6x6", "6x12"}).Draw(t, f.Path)
	}
	return nil
}
