"""Several implants, several scans: what no single site can show. Verbs are loaded when first used."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from stylobate.several.comparing.verb import compare
    from stylobate.several.drifting.read import read_profile
    from stylobate.several.drifting.verb import profile
    from stylobate.several.elsewhere.verb import poses
    from stylobate.several.joined.verb import join
    from stylobate.several.made.verb import frame
    from stylobate.several.seating.verb import seat

__all__ = ["compare", "frame", "join", "poses", "profile", "read_profile", "seat"]

_HOMES = {
    "compare": "stylobate.several.comparing.verb",
    "frame": "stylobate.several.made.verb",
    "join": "stylobate.several.joined.verb",
    "poses": "stylobate.several.elsewhere.verb",
    "profile": "stylobate.several.drifting.verb",
    "read_profile": "stylobate.several.drifting.read",
    "seat": "stylobate.several.seating.verb",
}


def __getattr__(name: str) -> Any:
    """Load a verb from the module that holds it (PEP 562)."""
    if name not in _HOMES:
        raise AttributeError(f"module 'stylobate.several' has no attribute {name!r}")
    verb = getattr(import_module(_HOMES[name]), name)
    globals()[name] = verb
    return verb
