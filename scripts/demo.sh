#!/usr/bin/env bash
# One invented case from scan to positions: simulate, measure, draw. Usage: scripts/demo.sh FOLDER
set -euo pipefail
out=${1:-demo-output}
stylobate=.venv/bin/stylobate
echo "1. A scan of an invented case, and the parts folder that goes with it"
"$stylobate" simulate --out "$out/case" --arch quadrant --bodies 3 --seed 7
echo
echo "2. Implant positions from the scan"
"$stylobate" measure "$out/case/scan.stl" --parts "$out/case/parts" --work bridge --picture --out "$out/result"
echo "Open $out/result/picture.png; the coloured surfaces and result.json lie beside it."
