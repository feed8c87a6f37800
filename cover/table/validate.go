package table

import (
	"fmt"
	"slices"
	"strconv"

	"patiocover/beam/lumber"
	"patiocover/calc"
	"patiocover/cover"
	"patiocover/loads"
)

// Limits of this program and of the method behind it.
const (
	maxRange = 60         // elements of one range
	maxCells = 50_000_000 // cells of one table
	steepest = 3.0        // in of fall per ft: beyond, the force along the slope, which the table leaves out, counts
)

// Validate lists every fault of the criteria at once, as a [*calc.InputError].
func (c Criteria) Validate() error {
	var f calc.Fields
	if c.Schema != Schema {
		f.Add("schema", strconv.Itoa(c.Schema), strconv.Itoa(Schema))
	}
	f.OneOf("standard", c.Standard, loads.ASCE716.String(), loads.ASCE722.String())
	c.checkLoads(&f)
	c.checkWind(f.In("wind"))
	c.checkService(f.In("service"))
	f.Within("limits.live", c.Limits.Live, 120, 720, "")
	f.Within("limits.total", c.Limits.Total, 60, 480, "")
	if r := c.Rafters; r != nil {
		at := f.In("rafters")
		checkWoods(at, r.Woods, r.Sizes)
		checkRange(at, "spacings_in", r.Spacings, 6, 48, "in")
		at.Within("seat_in", r.Seat, 1.5, 12, "in")
		at.Within("bottom_brace_ft", r.Brace, 0, 40, "ft")
	}
	if b := c.Beams; b != nil {
		at := f.In("beams")
		checkWoods(at, b.Woods, b.Sizes)
		checkRange(at, "rafter_spans_ft", b.Spans, 2, 40, "ft")
		checkRange(at, "post_spacings_ft", b.Bays, 2, 40, "ft")
		at.Within("overhang_ft", b.Overhang, 0, 8, "ft")
		at.Within("seat_in", b.Seat, 1.5, 24, "in")
	}
	if p := c.Posts; p != nil {
		at := f.In("posts")
		checkWoods(at, p.Woods, p.Sizes)
		checkRange(at, "areas_sqft", p.Areas, 1, 1000, "ft²")
		checkRange(at, "heights_ft", p.Heights, 1, 20, "ft")
	}
	c.checkGround(&f)
	if t := c.Ties; t != nil {
		at := f.In("ties")
		checkRange(at, "rafter_spans_ft", t.Spans, 2, 40, "ft")
		checkRange(at, "spacings_in", t.Spacings, 6, 48, "in")
		at.Within("overhang_ft", t.Overhang, 0, 8, "ft")
	}
	if c.Rafters == nil && c.Beams == nil && c.Posts == nil && c.Footings == nil && c.Ties == nil {
		f.Missing("rafters", "one of rafters, beams, posts, footings, ties")
	}
	if n := c.Len(); !f.Any() && n > maxCells {
		f.Add("", strconv.Itoa(n)+" cells", "up to "+strconv.Itoa(maxCells))
	}
	return f.Err()
}

func (c Criteria) checkLoads(f *calc.Fields) {
	checkCount(f, "loads", len(c.Loads))
	for i, l := range c.Loads {
		at := f.At("loads", i)
		at.Within("dead_psf", l.Dead, 0, 100, "psf")
		at.Within("sure_dead_psf", l.Sure, 0, min(100, max(0, l.Dead)), "psf")
		at.Within("live_psf", l.Live, 0, 100, "psf")
		at.Within("snow_psf", l.Snow, 0, 300, "psf")
		if !(max(l.Live, l.Snow) > 0) {
			at.Missing("live_psf", "a roof live load or snow")
		}
	}
}

func (c Criteria) checkWind(f *calc.Fields) {
	checkRange(f, "speeds_mph", c.Wind.Speeds, 85, 200, "mph")
	f.OneOf("exposure", c.Wind.Exposure, "B", "C", "D")
	f.Within("topographic_factor", c.Wind.Hill, 1, 3, "")
	f.Within("roof_height_ft", c.Wind.Height, 6, 60, "ft")
	f.Within("slope_in_per_ft", c.Wind.Slope, 0.125, steepest, "in/ft")
	f.OneOf("flow", c.Wind.Flow, "clear", "obstructed", "enveloped")
}

func (c Criteria) checkService(f *calc.Fields) {
	s := c.Service
	for _, x := range []struct {
		name string
		flag *bool
	}{{"wet", s.Wet}, {"green", s.Green}, {"incised", s.Incised}, {"deck_joined", s.Joined}, {"worker", s.Worker}} {
		if x.flag == nil {
			f.Missing(x.name, "true or false")
		}
	}
	f.Within("framing_psf", s.Framing, 0, 50, "psf")
	f.OneOf("sustained_heat", s.Heat, "to_100F", "to_125F", "to_150F")
	f.Within("longest_stock_ft", s.Longest, 4, 60, "ft")
}

func (c Criteria) checkGround(f *calc.Fields) {
	g := c.Footings
	if g == nil {
		return
	}
	at := f.In("footings")
	at.OneOf("shape", g.Shape, "square", "round")
	checkRange(at, "areas_sqft", g.Areas, 1, 1000, "ft²")
	checkRange(at, "soils_psf", g.Soils, 500, 12000, "psf")
	at.Within("frost_in", g.Frost, 0, 120, "in")
	at.Within("depth_in", g.Depth, max(12, g.Frost), 180, "in")
	at.Within("post_width_in", g.Post, 1.5, 12, "in")
}

// checkCount wants a range that is neither empty nor too long.
func checkCount(f *calc.Fields, name string, n int) {
	switch {
	case n == 0:
		f.Missing(name, "a list of 1 to "+strconv.Itoa(maxRange))
	case n > maxRange:
		f.Add(name, strconv.Itoa(n)+" elements", "a list of 1 to "+strconv.Itoa(maxRange))
	}
}

// checkRange wants numbers within limits that rise.
func checkRange(f *calc.Fields, name string, all []float64, low, high float64, unit string) {
	checkCount(f, name, len(all))
	for i, x := range all {
		f.Within(name+"["+strconv.Itoa(i)+"]", x, low, high, unit)
		if i > 0 && !(x > all[i-1]) {
			f.Add(name, fmt.Sprint(all), "a list that rises from each number to the next")
			return
		}
	}
}

// checkWoods wants woods and sizes for which the tables have values.
func checkWoods(f *calc.Fields, woods []cover.Wood, sizes []string) {
	checkCount(f, "woods", len(woods))
	checkCount(f, "sizes", len(sizes))
	var known []lumber.Section
	for i, size := range sizes {
		s, err := lumber.SectionNamed(size)
		if err != nil {
			f.Add("sizes["+strconv.Itoa(i)+"]", strconv.Quote(size), "a nominal size of the tables, such as 2x6")
			continue
		}
		known = append(known, s)
	}
	for i, w := range woods {
		at := f.At("woods", i)
		if !slices.Contains(lumber.Species(), w.Species) {
			at.OneOf("species", w.Species, lumber.Species()...)
			continue
		}
		for _, s := range known {
			if _, err := lumber.Find(w.Species, w.Grade, s); err != nil {
				at.Add("grade", strconv.Quote(w.Grade), "a grade with published values for "+s.Name)
				break
			}
		}
	}
}
