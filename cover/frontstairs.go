package cover

import "slices"

// What covers are compared by.
const (
	costMeasure = iota
	sagMeasure
	postsMeasure
	ratingMeasure
	depthMeasure
	allMeasures
)

// measures tells which of them count.
type measures [allMeasures]bool

// measureNames are the keys of what is compared.
var measureNames = [allMeasures]string{"cost", "beam_sag_in", "posts", "tie_rating_lb", "depth_in"}

// stairs are the covers found so far that none of them beats, a flight for every set of
// posts, rating and depth: within it cost rises and sag falls from step to step, so that
// one search tells whether another cover is beaten.
type stairs struct {
	counts  measures
	flights []flight
}

// A flight is the covers alike in posts, rating and depth.
type flight struct {
	alike [allMeasures - postsMeasure]float64
	steps []step
}

// A step is one cover.
type step struct {
	cost, sag float64
	point     FrontPoint
}

// matches reports whether some cover found is as good as p in all that counts.
func (s *stairs) matches(p *FrontPoint) bool { return s.any(p, false) }

// beats reports whether some cover found is as good as p in all that counts, and better in
// something or cheaper.
func (s *stairs) beats(p *FrontPoint) bool { return s.any(p, true) }

// any reports whether some cover is as good as p, or better where strict.
func (s *stairs) any(p *FrontPoint, strict bool) bool {
	v := p.values(s.counts)
	for i := range s.flights {
		f := &s.flights[i]
		if f.alike[0] > v[postsMeasure] || f.alike[1] > v[ratingMeasure] || f.alike[2] > v[depthMeasure] {
			continue
		}
		n := f.upTo(v[costMeasure])
		if n == 0 {
			continue
		}
		switch at := &f.steps[n-1]; {
		case at.sag > v[sagMeasure]:
		case !strict || at.sag < v[sagMeasure] || at.point.Cost < p.Cost:
			return true
		case f.alike != [...]float64{v[postsMeasure], v[ratingMeasure], v[depthMeasure]}:
			return true
		}
	}
	return false
}

// upTo counts the steps that cost no more.
func (f *flight) upTo(cost float64) int {
	low, high := 0, len(f.steps)
	for low < high {
		if mid := (low + high) / 2; f.steps[mid].cost <= cost {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return low
}

// add puts a cover that none beats on its step, and takes away those of its flight that it
// beats. Of two that are alike the one earlier in the space stays.
func (s *stairs) add(p FrontPoint) {
	v := p.values(s.counts)
	alike := [...]float64{v[postsMeasure], v[ratingMeasure], v[depthMeasure]}
	i := slices.IndexFunc(s.flights, func(f flight) bool { return f.alike == alike })
	if i < 0 {
		i = len(s.flights)
		s.flights = append(s.flights, flight{alike: alike})
	}
	f := &s.flights[i]
	at := f.upTo(v[costMeasure])
	if at > 0 && f.steps[at-1].cost == v[costMeasure] {
		at--
	}
	end := at
	for end < len(f.steps) && f.steps[end].sag >= v[sagMeasure] {
		if old := &f.steps[end].point; old.before(&p, s.counts) < 0 {
			return // alike, and earlier
		}
		end++
	}
	f.steps = slices.Replace(f.steps, at, end, step{v[costMeasure], v[sagMeasure], p})
}

// points lists the covers, flight by flight.
func (s *stairs) points() []FrontPoint {
	var out []FrontPoint
	for i := range s.flights {
		for k := range s.flights[i].steps {
			out = append(out, s.flights[i].steps[k].point)
		}
	}
	return out
}
