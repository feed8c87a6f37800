package table

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"patiocover/cover"
)

// A State says how far the file of a table is made.
type State struct {
	Program  string   `json:"program"`    // name and version of the program
	Criteria string   `json:"criteria"`   // hash of the criteria
	From     int      `json:"from"`       // number of the first cell of the file
	To       int      `json:"to"`         // number after its last cell
	Done     [][2]int `json:"done"`       // ranges that are written: from, and the number after
	Bytes    int64    `json:"size_bytes"` // length of the file that these make
}

// next is the number of the first cell that is not written.
func (s *State) next() int {
	if len(s.Done) == 0 {
		return s.From
	}
	return s.Done[len(s.Done)-1][1]
}

// StateOf names the file that keeps the state of a table file.
func StateOf(path string) string { return path + ".state" }

// WriteFile makes the job's part of the table in a file. Beside it stands a state file
// with the ranges that are written; where that state is of the same criteria and the same
// job, by the same version of the program, the work goes on behind it. The file of a job that begins at 0 has the head; parts
// are joined in the order of their numbers. progress is told how many cells of the job
// are written; it may be nil.
func (t *Table) WriteFile(ctx context.Context, path string, j Job, progress func(done, all int)) (err error) {
	state, f, err := t.open(path, j)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	count := &counter{w: f, n: state.Bytes}
	if state.Bytes == 0 && j.From == 0 {
		if _, err := io.WriteString(count, t.Head()); err != nil {
			return err
		}
	}
	rest := j
	rest.From = state.next()
	var failed error
	rest.Done = func(next int) {
		state.Done, state.Bytes = [][2]int{{j.From, next}}, count.n
		failed = errors.Join(failed, state.keep(path))
		if progress != nil {
			progress(next-j.From, j.To-j.From)
		}
	}
	return errors.Join(t.Write(ctx, count, rest), failed)
}

// open opens the file where its state left off, or new.
func (t *Table) open(path string, j Job) (State, *os.File, error) {
	state := State{Program: cover.Program, Criteria: t.hash, From: j.From, To: j.To}
	text, err := os.ReadFile(StateOf(path))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Stat(path); err == nil {
			return state, nil, fmt.Errorf("%s is there already and has no %s: remove it to begin anew", path, StateOf(path))
		}
	case err != nil:
		return state, nil, err
	default:
		var old State
		if err := json.Unmarshal(text, &old); err != nil {
			return state, nil, fmt.Errorf("reading %s: %w", StateOf(path), err)
		}
		if old.Program != cover.Program {
			return state, nil, fmt.Errorf("%s is of %q, and this is %q: remove it to begin anew", StateOf(path), old.Program, cover.Program)
		}
		if old.Criteria != t.hash || old.From != j.From || old.To != j.To {
			return state, nil, fmt.Errorf("%s is of other criteria or another range: remove it to begin anew", StateOf(path))
		}
		state = old
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return state, nil, err
	}
	if err := resume(f, state.Bytes); err != nil {
		return state, nil, errors.Join(fmt.Errorf("taking up %s: %w", path, err), f.Close())
	}
	return state, f, nil
}

// resume cuts the file to what its state vouches for and goes to its end.
func resume(f *os.File, size int64) error {
	at, err := f.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	if at < size {
		return fmt.Errorf("it has %d bytes and its state %d", at, size)
	}
	if err := f.Truncate(size); err != nil {
		return err
	}
	_, err = f.Seek(size, io.SeekStart)
	return err
}

// keep writes the state beside the file, whole or not at all.
func (s *State) keep(path string) error {
	text, err := json.Marshal(s)
	if err != nil {
		return err
	}
	fresh := StateOf(path) + ".new"
	if err := os.WriteFile(fresh, append(text, '\n'), 0o644); err != nil {
		return err
	}
	return os.Rename(fresh, StateOf(path))
}

// A counter counts the bytes that it writes.
type counter struct {
	w io.Writer
	n int64
}

// Write passes the bytes on.
func (c *counter) Write(b []byte) (int, error) {
	n, err := c.w.Write(b)
	c.n += int64(n)
	return n, err
}
