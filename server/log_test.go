package server_test

import (
	"bytes"
	"sync"
)

// lines is what a process writes while a test reads it.
type lines struct {
	mu   sync.Mutex
	text bytes.Buffer
}

// Write takes what the process writes.
func (l *lines) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.Write(p)
}

// String returns what was written so far.
func (l *lines) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.text.String()
}
