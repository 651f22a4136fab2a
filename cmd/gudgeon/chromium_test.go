package main

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"
	"time"
)

// chromium is a headless browser that is spoken to over a pipe in the DevTools
// protocol: JSON messages that end in a zero byte, commands with an id,
// answers with the same one, events without.
type chromium struct {
	t       *testing.T
	in      io.WriteCloser
	session string // of the one page
	next    int

	mu      sync.Mutex
	answers map[int]chan answer
	events  []event
	loaded  chan struct{} // one for each page that has loaded
}

type answer struct {
	Result json.RawMessage
	Error  *struct{ Message string }
}

type event struct {
	Method string
	Params json.RawMessage
}

// Patience with the browser, which shares two processors with other tests.
const (
	browserStart  = 60 * time.Second
	browserAnswer = 60 * time.Second
)

// startChromium starts a browser with a page in it.
func startChromium(t *testing.T) *chromium {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Fatal(err)
	}
	theirIn, ourOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	ourIn, theirOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	var stderr bytes.Buffer
	cmd := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--hide-scrollbars",
		"--user-data-dir="+t.TempDir(), "--remote-debugging-pipe", "about:blank")
	cmd.ExtraFiles = []*os.File{theirIn, theirOut} // 3 and 4 over there
	cmd.Stderr = &stderr
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	theirIn.Close()
	theirOut.Close()
	b := &chromium{t: t, in: ourOut, answers: map[int]chan answer{}, loaded: make(chan struct{}, 100)}
	go b.listen(ourIn)
	t.Cleanup(func() {
		b.send("Browser.close", nil)
		gone := make(chan error, 1)
		go func() { gone <- cmd.Wait() }()
		select {
		case <-gone:
		case <-time.After(10 * time.Second):
			cmd.Process.Kill()
			<-gone
		}
		ourOut.Close()
		ourIn.Close()
		if t.Failed() {
			t.Logf("the browser's last words:\n%s", stderr.String()[max(0, stderr.Len()-2000):])
		}
	})
	b.openPage()
	return b
}

// openPage attaches to a page of its own and asks to be told what happens there.
func (b *chromium) openPage() {
	b.t.Helper()
	var target struct{ TargetID string }
	b.within(browserStart, "Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct{ SessionID string }
	b.call("Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	b.session = attached.SessionID
	for _, domain := range []string{"Page", "Runtime", "Log", "Network"} {
		b.call(domain+".enable", nil, nil)
	}
}

// listen sorts what comes in until the pipe is closed.
func (b *chromium) listen(r io.Reader) {
	in := bufio.NewReader(r)
	for {
		raw, err := in.ReadBytes(0)
		if err != nil {
			return
		}
		var m struct {
			ID int
			answer
			event
		}
		if err := json.Unmarshal(raw[:len(raw)-1], &m); err != nil {
			continue
		}
		b.mu.Lock()
		if waiting, ok := b.answers[m.ID]; ok && m.ID > 0 {
			waiting <- m.answer
			delete(b.answers, m.ID)
		} else {
			b.events = append(b.events, m.event)
		}
		b.mu.Unlock()
		if m.Method == "Page.loadEventFired" {
			b.loaded <- struct{}{}
		}
	}
}

// send writes a command and returns where its answer will come.
func (b *chromium) send(method string, params map[string]any) chan answer {
	if params == nil {
		params = map[string]any{}
	}
	waiting := make(chan answer, 1)
	b.mu.Lock()
	defer b.mu.Unlock()
	b.next++
	b.answers[b.next] = waiting
	m := map[string]any{"id": b.next, "method": method, "params": params}
	if b.session != "" {
		m["sessionId"] = b.session
	}
	raw, err := json.Marshal(m)
	if err == nil {
		b.in.Write(append(raw, 0)) // where it fails there is no answer, which is told
	}
	return waiting
}

// call waits for the answer and decodes it into result, where that is not nil.
func (b *chromium) call(method string, params map[string]any, result any) {
	b.t.Helper()
	b.within(browserAnswer, method, params, result)
}

func (b *chromium) within(limit time.Duration, method string, params map[string]any, result any) {
	b.t.Helper()
	select {
	case a := <-b.send(method, params):
		if a.Error != nil {
			b.t.Fatalf("%s: %s", method, a.Error.Message)
		}
		if result != nil {
			if err := json.Unmarshal(a.Result, result); err != nil {
				b.t.Fatalf("%s: %v in %s", method, err, a.Result)
			}
		}
	case <-time.After(limit):
		b.t.Fatalf("%s: no answer in %v", method, limit)
	}
}

// open loads a file from disk and waits until it stands.
func (b *chromium) open(path string) {
	b.t.Helper()
	for len(b.loaded) > 0 {
		<-b.loaded
	}
	b.call("Page.navigate", map[string]any{"url": "file://" + path}, nil)
	select {
	case <-b.loaded:
	case <-time.After(browserAnswer):
		b.t.Fatalf("%s has not loaded in %v", path, browserAnswer)
	}
}

// eval runs an expression in the page and decodes its value into result.
func (b *chromium) eval(expression string, result any) {
	b.t.Helper()
	var answer struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails *struct {
			Text      string
			Exception struct{ Description string }
		}
	}
	b.call("Runtime.evaluate", map[string]any{"expression": expression, "returnByValue": true, "awaitPromise": true}, &answer)
	if e := answer.ExceptionDetails; e != nil {
		b.t.Fatalf("%s: %s %s", expression, e.Text, e.Exception.Description)
	}
	if result != nil {
		if err := json.Unmarshal(answer.Result.Value, result); err != nil {
			b.t.Fatalf("%s: %v in %s", expression, err, answer.Result.Value)
		}
	}
}

// complaints lists what the page threw, logged, or asked the network for
// beside itself.
func (b *chromium) complaints(self string) []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	var list []string
	for _, e := range b.events {
		switch e.Method {
		case "Runtime.exceptionThrown", "Runtime.consoleAPICalled", "Log.entryAdded":
			list = append(list, e.Method+" "+string(e.Params))
		case "Network.requestWillBeSent":
			var p struct{ Request struct{ URL string } }
			json.Unmarshal(e.Params, &p)
			if url, _, _ := strings.Cut(p.Request.URL, "#"); url != "file://"+self && url != "about:blank" {
				list = append(list, "it asks for "+url)
			}
		}
	}
	return list
}

// window sets the size of the window, px, the light or dark of the system, and
// whether it asks for less motion.
func (b *chromium) window(width, height int, scheme string, lessMotion bool) {
	b.t.Helper()
	b.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": height, "deviceScaleFactor": 1, "mobile": false}, nil)
	motion := "no-preference"
	if lessMotion {
		motion = "reduce"
	}
	b.call("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{
		{"name": "prefers-color-scheme", "value": scheme}, {"name": "prefers-reduced-motion", "value": motion},
	}}, nil)
}

// screenshot is the window as PNG; whole: all of the page.
func (b *chromium) screenshot(whole bool) []byte {
	b.t.Helper()
	var shot struct{ Data string }
	b.call("Page.captureScreenshot", map[string]any{"format": "png", "captureBeyondViewport": whole}, &shot)
	return b.decoded(shot.Data)
}

// pdf prints the page with the sizes that its style sheet gives.
func (b *chromium) pdf() []byte {
	b.t.Helper()
	var printed struct{ Data string }
	b.call("Page.printToPDF", map[string]any{"preferCSSPageSize": true, "printBackground": false}, &printed)
	return b.decoded(printed.Data)
}

func (b *chromium) decoded(s string) []byte {
	b.t.Helper()
	data, err := base64.StdEncoding.DecodeString(s)
	if err != nil {
		b.t.Fatal(err)
	}
	return data
}

// key presses a key that is held by no modifier.
func (b *chromium) key(name string, code int) {
	b.t.Helper()
	for _, kind := range []string{"rawKeyDown", "keyUp"} {
		b.call("Input.dispatchKeyEvent", map[string]any{"type": kind, "key": name, "code": name, "windowsVirtualKeyCode": code}, nil)
	}
}

// mouse moves the pointer, or presses and releases it: mouseMoved, click.
func (b *chromium) mouse(kind string, x, y float64) {
	b.t.Helper()
	kinds := []string{kind}
	if kind == "click" {
		kinds = []string{"mousePressed", "mouseReleased"}
	}
	for _, k := range kinds {
		p := map[string]any{"type": k, "x": x, "y": y}
		if kind == "click" {
			p["button"], p["clickCount"] = "left", 1
		}
		b.call("Input.dispatchMouseEvent", p, nil)
	}
}

// kept writes a picture into the folder of -pictures, where that is given.
func kept(t *testing.T, name string, data []byte) {
	t.Helper()
	if *crosscheckPictures == "" {
		return
	}
	if err := os.WriteFile(fmt.Sprintf("%s/%s", *crosscheckPictures, name), data, 0o666); err != nil {
		t.Fatal(err)
	}
}
