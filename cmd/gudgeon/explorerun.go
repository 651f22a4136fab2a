package main

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"gudgeon/cmd/internal/diag"
	"gudgeon/cmd/internal/report"
)

// batch is candidates from lo up to hi that one worker works out.
type batch struct {
	lo, hi int
	text   []byte
	tally  tally
	done   chan struct{}
}

// batchSize is how many candidates a worker takes at a time: enough for handing
// them out to cost nothing, few enough for progress to be seen.
const batchSize = 32

// tally counts what came of the candidates.
type tally struct {
	done, meets int
	failed      map[string]int // by status
}

func (t *tally) add(status string, meets bool) {
	t.done++
	if status == "ok" {
		if meets {
			t.meets++
		}
		return
	}
	if t.failed == nil {
		t.failed = map[string]int{}
	}
	t.failed[status]++
}

func (t *tally) merge(u tally) {
	t.done += u.done
	t.meets += u.meets
	if t.failed == nil && u.failed != nil {
		t.failed = map[string]int{}
	}
	for status, n := range u.failed {
		t.failed[status] += n
	}
}

// words tell how many candidates cannot be built, by what is wrong, the most
// frequent first; "" where all can.
func (t *tally) words() string {
	n := 0
	for _, k := range t.failed {
		n += k
	}
	if n == 0 {
		return ""
	}
	list := slices.SortedFunc(maps.Keys(t.failed), func(a, b string) int {
		return cmp.Or(t.failed[b]-t.failed[a], cmp.Compare(a, b))
	})
	for i, status := range list {
		list[i] = fmt.Sprintf("%d %s", t.failed[status], status)
	}
	return fmt.Sprintf("%d of %s cannot be built: %s", n, numberWord(t.done, "candidate"), strings.Join(list, ", "))
}

// run works the candidates from lo up to hi out, on several processors, and
// hands the batches over in order. Each candidate depends on its number alone,
// so the rows are the same for any number of workers; at most a few batches a
// worker wait for their turn.
func (x *explored) run(lo, hi int, work func(w *explorer, b *batch), take func(*batch) error) error {
	jobs := x.jobs.value
	if jobs == 0 {
		jobs = runtime.GOMAXPROCS(0)
	}
	g, ctx := errgroup.WithContext(context.Background())
	queue, order := make(chan *batch), make(chan *batch, 4*jobs)
	g.Go(func() error {
		defer close(queue)
		defer close(order)
		for at := lo; at < hi; at += batchSize {
			b := &batch{lo: at, hi: min(at+batchSize, hi), done: make(chan struct{})}
			for _, c := range []chan *batch{order, queue} {
				select {
				case c <- b:
				case <-ctx.Done():
					return nil
				}
			}
		}
		return nil
	})
	for range jobs {
		g.Go(func() error {
			w := &explorer{explored: x}
			for b := range queue {
				work(w, b)
				close(b.done)
			}
			return nil
		})
	}
	g.Go(func() error {
		for b := range order {
			select {
			case <-b.done:
			case <-ctx.Done():
				return nil
			}
			if err := take(b); err != nil {
				return err
			}
		}
		return nil
	})
	return g.Wait()
}

// rows is the work of a batch: its rows in the format asked for.
func (x *explored) rows(format report.Format) func(*explorer, *batch) {
	values := func() []float64 { return make([]float64, len(x.axes)) }
	return func(w *explorer, b *batch) {
		at := values()
		for i := b.lo; i < b.hi; i++ {
			axis := x.space.At(i, at)
			c := w.evaluate(at)
			b.tally.add(c.status, c.meets)
			line := x.line(i, at, axis, c)
			if format == report.Lines {
				b.text = report.AppendLine(b.text, line)
			} else {
				b.text = report.AppendRow(b.text, line)
			}
		}
	}
}

// writeExplored computes the rows and writes them as they come.
func (a *app) writeExplored(x *explored) error {
	format, err := x.format()
	if err != nil {
		return err
	}
	var sum tally
	out, next, err := a.openExplored(x, format, &sum)
	if err != nil {
		return err
	}
	defer out.abandon()
	p := a.newProgress(x.hi - x.lo)
	p.show(next - x.lo)
	err = x.run(next, x.hi, x.rows(format), func(b *batch) error {
		if err := out.write(b.text); err != nil {
			return err
		}
		sum.merge(b.tally)
		p.show(b.hi - x.lo)
		return nil
	})
	p.clear()
	if err != nil {
		return err
	}
	if err := out.finish(); err != nil {
		return err
	}
	if words := sum.words(); words != "" {
		a.remark("%s", words)
	}
	return x.judge(sum)
}

// openExplored opens where the rows go, with the first line written. next is
// the first candidate that is still to be computed.
func (a *app) openExplored(x *explored, format report.Format, sum *tally) (out *rowFile, next int, err error) {
	first := report.AppendLine(nil, x.head())
	if format == report.CSV {
		first = report.AppendHeader(nil, x.names())
	}
	if x.resume != "" {
		return a.resumeExplored(x, first, sum)
	}
	if out, err = a.openRows(x.loaded.input.file, x.output.file); err != nil {
		return nil, 0, err
	}
	return out, x.lo, out.write(first)
}

// judge ends the command with exit code 1 where something is required and no
// candidate has it. A part is not judged: the candidate may be in another.
func (x *explored) judge(sum tally) error {
	if !x.judged() || x.shard.of > 0 {
		return nil
	}
	return sum.judge(x.loaded.called())
}

// judge is exit code 1 where none of the candidates of a file meets all.
func (t *tally) judge(file string) error {
	if t.meets > 0 || t.done == 0 {
		return nil
	}
	return notMet(diag.List{{Code: "not-met", File: file,
		Message: "a candidate must meet every [[require]] and have joints that hold",
		Found:   fmt.Sprintf("none of %s does", numberWord(t.done, "candidate"))}})
}
