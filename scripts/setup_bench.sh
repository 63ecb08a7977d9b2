#!/usr/bin/env bash
# Puts the peers that `make bench` compares with, and what bench.fused cuts its scans with, as requirements-bench.lock
# names them, into .venv-bench, an environment of their own that sees .venv's packages: what they bring along must not
# reach the tests and the type checker.
# A peer that does not run here (no wheel, a system library missing) is said so in the tables.
set -euo pipefail
cd "$(dirname "$0")/.."

as_root() { [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; }
if ! ldconfig -p 2>/dev/null | grep -q 'libusb-1.0\.so' && as_root; then # Open3D needs it to start
    apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends libusb-1.0-0 \
        libgl1 libgomp1 libx11-6 >/dev/null || echo "setup: libusb-1.0 could not be installed; Open3D may not start" >&2
fi
.venv/bin/python -m venv .venv-bench
where='import sysconfig; print(sysconfig.get_path("purelib"))'
echo "import site; site.addsitedir('$(.venv/bin/python -c "$where")')" >"$(.venv-bench/bin/python -c "$where")/venv.pth"
echo "installing the peers into .venv-bench (about 600 MB)"
.venv-bench/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements-bench.lock
touch .venv-bench/.ready
