#!/usr/bin/env bash
# Writes the lock files: exact versions and hashes, for every platform, with no address in them.
set -euo pipefail
cd "$(dirname "$0")/.."
compile() {
    .venv/bin/uv pip compile pyproject.toml --universal --python-version 3.11 --generate-hashes \
        --no-emit-index-url --no-emit-find-links --no-annotate --no-header --quiet "$@"
}
[ -x .venv/bin/uv ] || .venv/bin/python -m pip install --quiet uv
compile --extra dev --output-file requirements.lock
compile --extra dev --extra bench --constraints requirements.lock --output-file requirements-bench.lock
