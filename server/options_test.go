package server_test

import (
	"context"
	"html"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"patiocover/beam/lumber"
	"patiocover/cover"
)

// huge is an address of a search of more combinations than are taken.
func huge() string {
	var woods, sizes []string
	for _, species := range lumber.Species() {
		for _, grade := range lumber.Grades(species) {
			woods = append(woods, species+" "+grade)
		}
	}
	for _, s := range lumber.Sections() {
		sizes = append(sizes, s.Name)
	}
	q := url.Values{}
	for _, e := range cover.SpaceEntries() {
		switch {
		case strings.HasSuffix(e.Name, "_woods"):
			q.Set(e.Name, strings.Join(woods, ", "))
		case strings.HasSuffix(e.Name, "_sizes"):
			q.Set(e.Name, strings.Join(sizes, ", "))
		}
	}
	return q.Encode() + "&"
}

// A space that is too large is answered at once.
func TestTrapHugeSpaceHoldsTheServerUp(t *testing.T) {
	e, _ := started(t)
	began := time.Now()
	got := ask(e, request("GET", "/options?"+huge()+form(input(t, "desert")).Encode(), "", nil))
	assert.Equal(t, http.StatusUnprocessableEntity, got.Code)
	assert.Less(t, time.Since(began), 5*time.Second)
}

// A search that takes longer than an answer may ends, and the page says what to do and keeps
// what was typed.
func TestTrapSearchBeyondItsTime(t *testing.T) {
	e, log := started(t)
	late, cancel := context.WithTimeout(context.Background(), time.Nanosecond)
	defer cancel()
	<-late.Done()
	r := request("GET", "/options?space.beam_sizes=4x6,+4x8&"+form(input(t, "ranch")).Encode(), "", nil).WithContext(late)
	got := ask(e, r)
	assert.Equal(t, http.StatusServiceUnavailable, got.Code)
	says(t, got, "Shorten a list")
	says(t, got, "As drawn")
	says(t, got, ">4x6, 4x8</textarea>")
	assert.NotContains(t, log.String(), `"ERROR"`)
}

// A search ends when the client is gone, and that is no fault of the program.
func TestTrapSearchForNobody(t *testing.T) {
	e, log := started(t)
	gone, leave := context.WithCancel(context.Background())
	r := request("GET", "/options?"+form(input(t, "ranch")).Encode(), "", nil).WithContext(gone)
	leave()
	assert.Equal(t, http.StatusServiceUnavailable, ask(e, r).Code)
	assert.NotContains(t, log.String(), `"ERROR"`)
}

// Whatever is typed into the entries of a search or of the job comes back as text.
func TestTrapMarkupInASearch(t *testing.T) {
	const tag = `"></textarea><script>alert(1)</script>`
	e, _ := started(t)
	job := form(input(t, "desert"))
	job.Set("job.name", tag)
	job.Set("job.note", tag)
	for _, s := range cover.SpaceEntries() {
		one := url.Values{s.Name: {tag}}
		got := ask(e, request("GET", "/options?"+one.Encode()+"&"+job.Encode(), "", nil))
		assert.Equal(t, http.StatusUnprocessableEntity, got.Code, s.Name)
		assert.False(t, strings.Contains(got.Body.String(), "<script>alert"), s.Name)
	}
	few := url.Values{"space.beam_sizes": {"4x6"}, "space.rafter_sizes": {"2x6"}}
	got := ask(e, request("POST", "/options", echo.MIMEApplicationForm, strings.NewReader(few.Encode()+"&"+job.Encode())))
	assert.Equal(t, http.StatusOK, got.Code)
	assert.False(t, strings.Contains(got.Body.String(), "<script>alert"))
	says(t, got, "&lt;script&gt;alert")
	got = ask(e, request("GET", "/options?"+url.QueryEscape("space."+tag)+"=1&"+job.Encode(), "", nil))
	assert.Equal(t, http.StatusUnprocessableEntity, got.Code)
	assert.False(t, strings.Contains(got.Body.String(), "<script>alert"))
}

// The pages lead to each other: the report and the comparison to the search, and back.
func TestPagesLeadToTheSearchAndBack(t *testing.T) {
	e, _ := started(t)
	filled := form(input(t, "coast")).Encode()
	for from, to := range map[string][]string{
		"/?": {"/options?", "/compare?"}, "/compare?spacing=16&wood=Hem-Fir+No.2&": {"/options?", "/?"},
		"/options?space.beam_sizes=4x6&": {"/?", "/compare?"},
	} {
		page := ask(e, request("GET", from+filled, "", nil)).Body.String()
		for _, address := range to {
			_, rest, found := strings.Cut(page, `href="`+address)
			require.True(t, found, "%s to %s", from, address)
			query, _, _ := strings.Cut(rest, `"`)
			got := ask(e, request("HEAD", address+html.UnescapeString(query), "", nil))
			assert.Equal(t, http.StatusOK, got.Code, "%s to %s", from, address)
		}
	}
}
