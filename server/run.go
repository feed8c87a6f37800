package server

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// Times that a connection is given.
const (
	headerTime = 5 * time.Second  // to send the head of a request
	readTime   = 15 * time.Second // to send all of it
	writeTime  = 30 * time.Second // to take the answer
	idleTime   = 60 * time.Second // between two requests
	stopTime   = 10 * time.Second // for requests under way when the server stops
)

// Run serves h at addr, host and port, until ctx is done, then lets the requests
// under way finish. The error says why it could not listen, or could not stop.
func Run(ctx context.Context, addr string, h http.Handler, log *slog.Logger) error {
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return fmt.Errorf("listening: %w", err)
	}
	s := limited(h, log)
	stopped := make(chan error, 1)
	stop := context.AfterFunc(ctx, func() {
		late, cancel := context.WithTimeout(context.WithoutCancel(ctx), stopTime)
		defer cancel()
		stopped <- s.Shutdown(late)
	})
	defer stop()
	log.Info("listening", "address", "http://"+listener.Addr().String())
	if err := s.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("serving: %w", err)
	}
	return <-stopped
}

// limited is a server that no slow client can hold up.
func limited(h http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler: h, ErrorLog: slog.NewLogLogger(log.Handler(), slog.LevelWarn),
		ReadHeaderTimeout: headerTime, ReadTimeout: readTime, WriteTimeout: writeTime, IdleTimeout: idleTime,
	}
}
