# make demo, make test: each works alone on a fresh machine (Debian, Python >= 3.11).
SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help

PY := .venv/bin/python
READY := .venv/.ready
BENCH_READY := .venv-bench/.ready
DEMO := demo-output
TESTS ?= tests
FUZZ ?=
BENCH ?=
FUSED ?= 0 4
STUDY ?=

.PHONY: help setup demo test check format fuzz bench fused lock docs web clean study sabotage

help: ## list the targets
	@sed -n 's/^\([a-z]*\):.*## /\1\t/p' $(MAKEFILE_LIST) | expand -t 10

$(READY): pyproject.toml requirements.lock scripts/setup.sh
	@scripts/setup.sh

setup: $(READY) ## make .venv and install what the lock file names

demo: $(READY) ## simulate a case, measure it, draw it: demo-output/
	@scripts/demo.sh $(DEMO)

test: $(READY) ## every test, on two processes
	$(PY) -m pytest -n 2 -q $(TESTS)

check: $(READY) ## format, lint, strict types, import contracts
	.venv/bin/ruff format --check .
	.venv/bin/ruff check .
	.venv/bin/mypy
	.venv/bin/lint-imports --no-logo

format: $(READY) ## put the code in form
	.venv/bin/ruff format .
	.venv/bin/ruff check --fix .

fuzz: $(READY) ## broken files, a bounded run
	$(PY) -m fuzz $(FUZZ)

$(BENCH_READY): $(READY) requirements-bench.lock scripts/setup_bench.sh
	@scripts/setup_bench.sh

bench: $(BENCH_READY) ## ours and peers on the same scenes; options: make bench BENCH="--scenes 100 --out FILE"
	.venv-bench/bin/python -m bench $(BENCH)

fused: $(BENCH_READY) ## ours on scans fused from depth maps, by seeds; options: make fused FUSED="0 20 --out FILE"
	.venv-bench/bin/python -m bench.fused $(FUSED)

web: $(READY) ## build the page of the browser from web/ (needs Node 20 and npm)
	$(PY) -m scripts.page_api
	cd web && npm ci --no-fund --no-audit --silent && npm run --silent build

study: $(READY) ## are the bounds, findings and verdicts true? fresh scenes, resumable; writes docs/trust
	$(PY) -m study $(STUDY)

sabotage: $(READY) ## spoil one line at a time: each must turn a named test red
	$(PY) -m sabotage

docs: $(READY) ## paste the current --help texts into docs/
	$(PY) scripts/paste_help.py

lock: $(READY) ## write the lock files anew from pyproject.toml
	scripts/lock.sh

clean: ## remove what the targets made, the environment included
	rm -rf .venv .venv-bench $(DEMO) bench-output build dist .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
