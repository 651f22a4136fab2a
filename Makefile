# Two cores and three minutes are enough for `make test`.

GO ?= go

.PHONY: build test lint bench crosscheck

build:
	$(GO) build -o bin/gudgeon ./cmd/gudgeon

# ./... leaves testdata out, so it is named; the race detector watches what starts goroutines
test:
	@test -z "$$(gofmt -s -l $$(git ls-files '*.go'))" || { gofmt -s -d $$(git ls-files '*.go'); exit 1; }
	$(GO) vet ./... ./testdata
	$(GO) test ./... ./testdata
	$(GO) test -race -run '^Test(Interrupt|Place|Nothing|Exit|ExploreJobs)' ./cmd/gudgeon

# format, vet, and which package may import which
lint:
	@test -z "$$(gofmt -s -l $$(git ls-files '*.go'))" || { gofmt -s -d $$(git ls-files '*.go'); exit 1; }
	$(GO) vet ./... ./testdata
	$(GO) test -run '^TestImports' ./cmd/gudgeon

bench:
	$(GO) test -run '^$$' -bench . -benchmem ./...

# holds what gudgeon writes against programs that others wrote
crosscheck: rsvg-convert chromium
	$(GO) test -count=1 -run '^TestCrosscheck' ./cmd/gudgeon -crosscheck

.PHONY: rsvg-convert chromium
rsvg-convert:
	@command -v rsvg-convert >/dev/null || { apt-get update -q && apt-get install -qy librsvg2-bin; }
chromium:
	@command -v chromium >/dev/null || { apt-get update -q && apt-get install -qy chromium; }
