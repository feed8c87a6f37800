package calc_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/calc"
)

var statuses = []struct {
	status calc.Status
	name   string
}{
	{calc.Recalled, "recalled"}, {calc.Computed, "computed"}, {calc.Read, "read"},
}

func TestStatusRoundTrip(t *testing.T) {
	for _, c := range statuses {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.name, c.status.String())
			text, err := json.Marshal(c.status)
			require.NoError(t, err)
			assert.Equal(t, `"`+c.name+`"`, string(text))
			back := calc.Status(200)
			require.NoError(t, json.Unmarshal(text, &back))
			assert.Equal(t, c.status, back)
		})
	}
}

func TestStatusRefusesOtherWords(t *testing.T) {
	for _, word := range []string{"", "Read", "READ", "verified", " read", "V", "Status(3)"} {
		s := calc.Read
		assert.ErrorContains(t, s.UnmarshalText([]byte(word)), "not one of recalled, computed, read", word)
		assert.Equal(t, calc.Read, s, "a refused word changes nothing")
	}
	_, err := calc.Status(3).MarshalText()
	assert.EqualError(t, err, "Status(3) is not one of recalled, computed, read")
}

func TestStatusZeroValueIsTheWeakest(t *testing.T) {
	var zero calc.Status
	assert.Equal(t, calc.Recalled, zero)
	for _, c := range statuses {
		assert.Equal(t, calc.Recalled, zero.Weakest(c.status))
	}
}

func TestWeakestIsSymmetric(t *testing.T) {
	for i, a := range statuses {
		for j, b := range statuses {
			want := statuses[min(i, j)].status
			assert.Equal(t, want, a.status.Weakest(b.status), "%s with %s", a.name, b.name)
		}
	}
}
