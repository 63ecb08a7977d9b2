"""`python -m sabotage`: each spoiling in a copy of the source; status 1 where a test does not turn red."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from sabotage.cases import SPOILINGS, Spoiling

ROOT = Path(__file__).parents[1]
FAILED = 1  # pytest: tests ran, some failed


def run(test: str, source: Path) -> int:
    """pytest's status on one test with the package taken from `source`."""
    command = [sys.executable, "-m", "pytest", "-q", "-x", "-p", "no:cacheprovider", test]
    environment = {**os.environ, "PYTHONPATH": str(source)}
    return subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, check=False).returncode


def red(spoiling: Spoiling) -> bool:
    """Whether the named test fails on the spoilt copy. Raises ValueError where the text is not there just once."""
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder) / "src"
        shutil.copytree(ROOT / "src", source, ignore=shutil.ignore_patterns("__pycache__"))
        file = source / "stylobate" / spoiling.file
        text = file.read_text(encoding="utf-8")
        if text.count(spoiling.old) != 1:
            raise ValueError(
                f"{spoiling.file}: '{spoiling.old}' stands there {text.count(spoiling.old)} times, not once"
            )
        file.write_text(text.replace(spoiling.old, spoiling.new), encoding="utf-8")
        return run(spoiling.test, source) == FAILED


def main() -> int:
    """Spoil, test and tell."""
    missed = 0
    for spoiling in SPOILINGS:
        seen = red(spoiling)
        missed += not seen
        print(f"{'red ' if seen else 'NOT SEEN'}  {spoiling.name}: {spoiling.test}", flush=True)
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
