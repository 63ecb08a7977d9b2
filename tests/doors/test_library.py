"""`import stylobate` costs nothing, and its verbs are there when called for."""

from __future__ import annotations

import subprocess

import pytest

from tests.doors.running import REAL, ROOT, environment


def prints(code: str) -> str:
    """What a fresh Python prints."""
    return subprocess.run(
        [REAL[0], "-c", code], capture_output=True, text=True, env=environment(), cwd=ROOT, check=True
    ).stdout.strip()


def test_the_import_loads_nothing() -> None:
    code = "import sys, stylobate; print([m for m in ('numpy', 'numba', 'click', 'pydantic') if m in sys.modules])"
    assert prints(code) == "[]"


@pytest.mark.parametrize("order", ["import stylobate.measuring", "from stylobate.measuring import measure as _m", ""])
def test_measure_is_a_function_whatever_was_imported_first(order: str) -> None:
    assert prints(f"{order}\nimport stylobate; print(type(stylobate.measure).__name__)") == "function"


def test_every_name_is_there() -> None:
    code = "import stylobate; print([type(getattr(stylobate, name)).__name__ for name in dir(stylobate)])"
    assert prints(code) == "['str', 'function', 'function', 'function', 'function', 'module']"


def test_another_name_is_refused() -> None:
    import stylobate

    with pytest.raises(AttributeError, match="no attribute 'prescribe'"):
        _ = stylobate.prescribe
