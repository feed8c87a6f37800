package cover

import "slices"

// is reports whether a choice was made and is the word.
func is(p *string, word string) bool { return p != nil && *p == word }

// yes reports whether a flag was said and is true.
func yes(p *bool) bool { return p != nil && *p }

// given reports whether every number was said.
func given(all ...*float64) bool { return !slices.Contains(all, nil) }
