#!/usr/bin/env bash
# Builds the page anew, beside the one in the package, and says whether they are the same. Needs Node 20 and npm.
set -euo pipefail
cd "$(dirname "$0")/.."
command -v npm >/dev/null || { echo "page: npm is not there; whether the page is as its source says was not checked"; exit 0; }
.venv/bin/python -m scripts.page_api
git diff --quiet -- web/openapi.json || { echo "page: the API has changed; run make web" >&2; exit 1; }
built=$(mktemp -d)
trap 'rm -rf "$built"' EXIT
cd web
npm ci --no-fund --no-audit --silent
npm run --silent types >/dev/null
npx tsc --noEmit
npx vite build --outDir "$built" --logLevel error
git diff --quiet -- src/api.d.ts && diff -r "$built" ../src/stylobate/app/web/static >/dev/null ||
    { echo "page: src/stylobate/app/web/static is not what web/ makes; run make web" >&2; exit 1; }
echo "page: as its source says"
