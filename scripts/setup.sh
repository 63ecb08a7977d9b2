#!/usr/bin/env bash
# Makes .venv and installs what requirements.lock names, then the package itself in editable form.
set -euo pipefail
cd "$(dirname "$0")/.."
python=${PYTHON:-python3}

as_root() { [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; }
from_debian() { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >/dev/null; }
stop() { echo "setup: $1" >&2; exit 2; }

command -v "$python" >/dev/null || { as_root && from_debian python3 python3-venv; } ||
    stop "$python is not there; install Python 3.11 or newer"
"$python" -c 'import sys; sys.exit(sys.version_info < (3, 11))' ||
    stop "$("$python" --version) is too old; call make with PYTHON=python3.11 or newer"

if ! .venv/bin/python -m pip --version >/dev/null 2>&1; then
    "$python" -c 'import ensurepip, venv' 2>/dev/null || { as_root && from_debian python3-venv; } ||
        stop "Python's venv module is not there; install the package python3-venv, then try again"
    rm -rf .venv
    "$python" -m venv .venv
fi
command -v pdftotext >/dev/null || { as_root && from_debian poppler-utils; } ||
    echo "setup: without Debian's poppler-utils some tests of the report are skipped"
echo "installing into .venv (about 700 MB, some minutes at first)"
.venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
.venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
if ! command -v chromium >/dev/null && ! command -v google-chrome >/dev/null; then
    { as_root && from_debian chromium; } || echo "setup: Chromium is not there; the tests of the page need it" >&2
fi
touch .venv/.ready
