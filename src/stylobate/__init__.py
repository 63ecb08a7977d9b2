"""From a scan to trusted implant positions. The library's verbs, each loaded when first used.

    result = stylobate.measure("arch.stl", "parts/")

`simulate` is a package of verbs of its own.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from stylobate import simulate
    from stylobate.build.placing import place
    from stylobate.measuring import measure
    from stylobate.parts import load_parts
    from stylobate.scan import read_scan

__version__ = "0.1.0"
__all__ = ["__version__", "load_parts", "measure", "place", "read_scan", "simulate"]

_HOMES = {
    "measure": "stylobate.measuring",
    "place": "stylobate.build.placing",
    "read_scan": "stylobate.scan",
    "load_parts": "stylobate.parts",
}


def __getattr__(name: str) -> Any:
    """Load a verb from the module that holds it (PEP 562), so that `import stylobate` itself costs nothing."""
    if name == "simulate":
        return import_module("stylobate.simulate")
    if name not in _HOMES:
        raise AttributeError(f"module 'stylobate' has no attribute {name!r}")
    verb = getattr(import_module(_HOMES[name]), name)
    globals()[name] = verb
    return verb


def __dir__() -> list[str]:
    return sorted(__all__)
