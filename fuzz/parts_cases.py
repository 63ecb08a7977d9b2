"""Parts folders by number: a small valid one, its `parts.toml` or one of its surfaces damaged."""

from __future__ import annotations

import traceback
from pathlib import Path

import numpy as np

from fuzz.cases import _damaged
from fuzz.check import refusal_fault
from fuzz.writers import Variant, write
from stylobate.core.errors import PartsError, StylobateError

_TOML = """format = "stylobate-parts"
version = 1
name = "Harbour Street demo parts"
revision = "2026-11"
licence = "CC0-1.0"

[[connection]]
id = "alder"
kind = "internal hex"
index_order = 6
play_deg = 1.5
platform_diameter = 4.2

[[implant]]
id = "alder-42-10"
connection = "alder"
length = 10.0

[[scan_body]]
id = "alder-tall"
seats_on = "alder"
surface = "alder-tall.stl"
scan_region = { above = 4.0 }
material = "titanium, sandblasted"
single_use = false
max_cycles = 50
torque_ncm = [10.0, 15.0]
"""


def _post() -> bytes:
    """A prism of five unequal sides with a flat top, 10 mm high, closed."""
    angle = np.deg2rad([0, 70, 150, 220, 300])
    ring = np.stack([2.2 * np.cos(angle), 2.2 * np.sin(angle)], axis=1)
    points = np.array([[x, y, z] for z in (0.0, 10.0) for x, y in ring])
    n = len(angle)
    sides = [[k, (k + 1) % n, n + (k + 1) % n, n + k] for k in range(n)]
    return write(points, [*sides, list(range(n, 2 * n)), list(range(n))[::-1]], Variant("stl-binary"))


def parts_fault(seed: int, number: int, folder: Path) -> tuple[str | None, bool]:
    """What is wrong with how a damaged parts folder is treated (None: nothing), and whether it was accepted."""
    from stylobate.parts import load_parts  # type: ignore[attr-defined,unused-ignore]

    rng = np.random.default_rng([seed, number, 1])
    toml, post = _TOML.encode(), _post()
    if rng.random() < 0.85:
        toml = _damaged(toml, rng)
    else:
        post = _damaged(post, rng)
    (folder / "parts.toml").write_bytes(toml)
    (folder / "alder-tall.stl").write_bytes(post)
    try:
        load_parts(folder)
    except PartsError as refusal:
        return next((f for f in map(_line_fault, refusal.faults) if f), None) or _line_fault(str(refusal)), False
    except StylobateError as refusal:
        return refusal_fault(refusal), False
    except Exception:
        return "traceback: " + traceback.format_exc(limit=-3), False
    return None, True


def _line_fault(line: str) -> str | None:
    return refusal_fault(StylobateError(line))


def available() -> bool:
    """True once the package can load parts folders."""
    try:
        from stylobate.parts import load_parts  # type: ignore[attr-defined,unused-ignore]  # noqa: F401
    except ImportError:
        return False
    return True
