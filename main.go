// Command patiocover sizes patio covers: in a browser, or a job file at a time.
package main

import (
	"bytes"
	"context"
	_ "embed" // the demonstration
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"patiocover/calc"
	"patiocover/cover"
	"patiocover/cover/table"
	"patiocover/server"
	"patiocover/web"
)

// Exit codes: all is OK; a fault of this program; the command or the job is wrong; done, and something is not OK.
const allOK, ownFault, badInput, notOK = 0, 1, 2, 3

//go:embed testdata/covers/desert.json
var demo []byte

// errNotOK says that a report was printed whose verdict is not OK.
var errNotOK = errors.New("something is not OK")

// A fault is an error that no input should cause.
type fault struct{ error }

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// run carries out one command and returns the exit code.
func run(ctx context.Context, args []string, in io.Reader, out, report io.Writer) (code int) {
	defer func() {
		if p := recover(); p != nil { // Go would leave with 2, which means bad input
			fmt.Fprintf(report, "internal error: %v\n%s", p, debug.Stack())
			code = ownFault
		}
	}()
	root := &cobra.Command{
		Use: "patiocover", Short: "Size a wood patio cover and check every part of it", Long: cover.Notice,
		SilenceUsage: true, SilenceErrors: true, Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.AddCommand(serveCommand(report), sizeCommand(in), compareCommand(in), optionsCommand(in))
	root.AddCommand(tableCommand(in, report), surveyCommand(in))
	root.AddCommand(&cobra.Command{
		Use: "schema", Short: "Print the JSON Schema of a job", Args: cobra.NoArgs,
		Run: func(c *cobra.Command, _ []string) { c.Print(string(cover.Schema())) },
	})
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(report)
	return explain(root.ExecuteContext(ctx), report)
}

// explain prints an error, one line for each wrong field, and returns its exit code.
func explain(err error, report io.Writer) int {
	var wrong *calc.InputError
	switch {
	case err == nil:
		return allOK
	case errors.Is(err, errNotOK):
		return notOK
	case errors.As(err, &wrong):
		for _, f := range wrong.Faults {
			fmt.Fprintln(report, f)
		}
		return badInput
	case errors.As(err, new(fault)):
		fmt.Fprintln(report, "internal error:", err)
		return ownFault
	}
	fmt.Fprintln(report, err)
	return badInput
}

func serveCommand(report io.Writer) *cobra.Command {
	c := &cobra.Command{Use: "serve", Short: "Serve the calculator to browsers and programs", Args: cobra.NoArgs}
	addr := c.Flags().String("addr", "127.0.0.1:8080", "host and port; the default is reached from this machine only")
	c.RunE = func(c *cobra.Command, _ []string) error {
		in, err := cover.Read(bytes.NewReader(demo))
		if err != nil {
			return fault{fmt.Errorf("reading the demonstration: %w", err)}
		}
		log := slog.New(slog.NewTextHandler(report, nil))
		return server.Run(c.Context(), *addr, server.New(server.Config{Demo: in, Log: log}), log)
	}
	return c
}

func sizeCommand(in io.Reader) *cobra.Command {
	c := &cobra.Command{Use: "size JOB", Short: "Size the cover in the file JOB, - for standard input", Args: cobra.ExactArgs(1)}
	asJSON := c.Flags().Bool("json", false, "print the report as JSON")
	written := c.Flags().Bool("calc", false, "print the written calculations too")
	margins := c.Flags().Bool("margins", false, "find how far spans, spacing and loads may go before a check is over")
	buy := c.Flags().Bool("buy", false, "print what to buy as comma separated values, and nothing else")
	c.MarkFlagsMutuallyExclusive("json", "calc", "buy")
	c.MarkFlagsMutuallyExclusive("margins", "buy")
	c.RunE = func(c *cobra.Command, args []string) error {
		job, err := read(args[0], in)
		if err != nil {
			return err
		}
		way := cover.Size
		if *margins {
			way = cover.SizeAndMargins
		}
		r, err := way(job)
		switch {
		case err != nil: // as it must not be: a job that was read is valid
		case *buy:
			err = web.BuyList(c.OutOrStdout(), r)
		default:
			err = show(c.OutOrStdout(), r, *asJSON, *written)
		}
		if err != nil {
			return fault{err}
		}
		if r.Verdict != cover.OK {
			return errNotOK
		}
		return nil
	}
	return c
}

func surveyCommand(in io.Reader) *cobra.Command {
	c := &cobra.Command{
		Use: "survey JOB", Short: "Judge the joints of the old roof in the file JOB, - for standard input", Args: cobra.ExactArgs(1),
	}
	joints := c.Flags().String("csv", "", "take the joints from this table instead, a spreadsheet's file or paste, - for standard input")
	asJSON := c.Flags().Bool("json", false, "print the survey as JSON")
	asCSV := c.Flags().Bool("as-csv", false, "print the joints with their verdicts as a table that --csv reads back")
	written := c.Flags().Bool("calc", false, "print the written calculations too")
	c.MarkFlagsMutuallyExclusive("json", "as-csv", "calc")
	c.RunE = func(c *cobra.Command, args []string) error {
		job, err := read(args[0], in)
		if err == nil && *joints != "" {
			err = withJoints(&job, *joints, in)
		}
		if err != nil {
			return err
		}
		r, err := cover.SurveyOnly(job)
		var wrong *calc.InputError
		if errors.As(err, &wrong) {
			return err
		}
		if err == nil {
			err = showSurvey(c.OutOrStdout(), r, *asJSON, *asCSV, *written)
		}
		if err != nil {
			return fault{err}
		}
		if r.Survey.Verdict != cover.OK {
			return errNotOK
		}
		return nil
	}
	return c
}

// withJoints puts the joints of a table in place of those of the job.
func withJoints(job *cover.Input, path string, in io.Reader) error {
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		in = f
	}
	joints, err := cover.ReadJoints(in)
	if err != nil {
		return err
	}
	job.House.Joints = joints
	return nil
}

// showSurvey prints the survey of a report as JSON, as a table, or as text with or
// without its calculations.
func showSurvey(out io.Writer, r cover.Report, asJSON, asCSV, written bool) error {
	switch {
	case asJSON:
		return json.NewEncoder(out).Encode(r.SurveyAnswer())
	case asCSV:
		return cover.WriteSurvey(out, r)
	}
	if err := web.SurveyText(out, r); err != nil || !written {
		return err
	}
	return web.SurveyCalculations(out, r)
}

func compareCommand(in io.Reader) *cobra.Command {
	c := &cobra.Command{
		Use: "compare JOB", Short: "Set rafter spacings and woods side by side for the cover in the file JOB, - for standard input",
		Args: cobra.ExactArgs(1),
	}
	asJSON := c.Flags().Bool("json", false, "print the comparison as JSON")
	asCSV := c.Flags().Bool("csv", false, "print the options as comma separated values")
	spacings := c.Flags().String("spacing", "",
		"rafter spacings in inches with commas between; the usual ones and that of the job when left out")
	woods := c.Flags().StringArray("wood", nil,
		"species and grade of the rafters, such as \"Hem-Fir No.2\", once for each; that of the job and the common ones when left out")
	c.MarkFlagsMutuallyExclusive("json", "csv")
	c.RunE = func(c *cobra.Command, args []string) error {
		job, err := read(args[0], in)
		if err != nil {
			return err
		}
		choice, err := cover.NewChoice(*spacings, *woods)
		if err != nil {
			return err
		}
		out, err := cover.Compare(job, choice)
		if err != nil {
			return err
		}
		switch {
		case *asJSON:
			err = json.NewEncoder(c.OutOrStdout()).Encode(out)
		case *asCSV:
			err = web.ComparedCSV(c.OutOrStdout(), out)
		default:
			err = web.Compared(c.OutOrStdout(), out)
		}
		if err != nil {
			return fault{err}
		}
		if out.Options[0].Verdict != cover.OK {
			return errNotOK
		}
		return nil
	}
	return c
}

// optionsCommand finds every cover of a space that no other one beats.
func optionsCommand(in io.Reader) *cobra.Command {
	c := &cobra.Command{
		Use:   "options JOB",
		Short: "Find every cover that no other one beats in cost, sag, posts, ties and depth for the file JOB, - for standard input",
		Args:  cobra.ExactArgs(1),
	}
	asJSON := c.Flags().Bool("json", false, "print the options as JSON")
	asCSV := c.Flags().Bool("csv", false, "print the options as comma separated values")
	typed := map[string]*string{}
	for _, e := range cover.SpaceEntries() {
		typed[e.Name] = c.Flags().String(e.Flag(), "", e.Label+": "+e.Allowed)
	}
	c.MarkFlagsMutuallyExclusive("json", "csv")
	c.RunE = func(c *cobra.Command, args []string) error {
		job, err := read(args[0], in)
		if err != nil {
			return err
		}
		entries := map[string]string{}
		for name, text := range typed {
			entries[name] = *text
		}
		search, _, err := cover.NewSearch(job, entries)
		if err != nil {
			return err
		}
		f, err := search.Run(c.Context(), job, nil)
		if err != nil {
			return err
		}
		switch {
		case *asJSON:
			err = json.NewEncoder(c.OutOrStdout()).Encode(f)
		case *asCSV:
			err = web.FoundCSV(c.OutOrStdout(), f)
		default:
			err = web.FoundText(c.OutOrStdout(), f)
		}
		if err != nil {
			return fault{err}
		}
		if len(f.Points) == 0 {
			return errNotOK
		}
		return nil
	}
	return c
}

func tableCommand(in io.Reader, report io.Writer) *cobra.Command {
	c := &cobra.Command{
		Use: "table CRITERIA", Short: "Make the prescriptive table of a jurisdiction from the criteria in a file, - for standard input",
		Long: "Makes the prescriptive table of a jurisdiction as comma separated values. Every cell has a number: a part of\n" +
			"them is made with --from and --to, and parts are joined in the order of the numbers. Into a file, what was\n" +
			"interrupted is taken up again.",
		Args: cobra.MaximumNArgs(1),
	}
	file := c.Flags().StringP("output", "o", "", "write to this file, with its state beside it, instead of standard output")
	workers := c.Flags().Int("workers", runtime.GOMAXPROCS(0), "how many to work at once")
	from := c.Flags().Int("from", 0, "number of the first cell")
	to := c.Flags().Int("to", 0, "number after the last cell; all when left out")
	count := c.Flags().Bool("count", false, "print how many cells there are, and make none")
	example := c.Flags().Bool("example", false, "print complete criteria to begin from, and nothing else")
	c.RunE = func(c *cobra.Command, args []string) error {
		switch {
		case *example && len(args) == 0:
			c.Print(table.Demo())
			return nil
		case len(args) != 1:
			return fmt.Errorf("name one file of criteria, or - for standard input; --example prints one")
		}
		t, err := readTable(args[0], in)
		if err != nil {
			return err
		}
		if *count {
			c.Println(t.Len())
			return nil
		}
		job := table.Job{From: *from, To: *to, Workers: *workers}
		if !c.Flags().Changed("to") {
			job.To = t.Len()
		}
		if job.From < 0 || job.To > t.Len() || job.From >= job.To || job.Workers < 1 {
			return fmt.Errorf("--from is below --to, and both are 0 to %d; --workers is 1 or more", t.Len())
		}
		progress := func(done, all int) { fmt.Fprintf(report, "\r%d of %d cells", done, all) }
		if *file != "" {
			err = t.WriteFile(c.Context(), *file, job, progress)
			fmt.Fprintln(report)
			if errors.Is(err, context.Canceled) {
				return errors.New("stopped: the same command goes on from here")
			}
			return err
		}
		if job.From == 0 {
			c.Print(t.Head())
		}
		return t.Write(c.Context(), c.OutOrStdout(), job)
	}
	return c
}

// readTable prepares the table of the criteria at a path, or from in when the path is a
// dash.
func readTable(path string, in io.Reader) (*table.Table, error) {
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	criteria, err := table.Read(in)
	if err != nil {
		return nil, err
	}
	return table.New(criteria)
}

// read reads the job at a path, or from in when the path is a dash.
func read(path string, in io.Reader) (cover.Input, error) {
	if path == "-" {
		return cover.Read(in)
	}
	f, err := os.Open(path)
	if err != nil {
		return cover.Input{}, err
	}
	defer f.Close()
	return cover.Read(f)
}

// show prints a report as JSON, or as text with or without its calculations.
func show(out io.Writer, r cover.Report, asJSON, written bool) error {
	if asJSON {
		return json.NewEncoder(out).Encode(r)
	}
	if err := web.Text(out, r); err != nil || !written {
		return err
	}
	return web.Calculations(out, r)
}
