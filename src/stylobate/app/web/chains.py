"""Chains of parts as words, the way `stylobate place --site` takes them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path


def chain_word(site: str, chain: Sequence[tuple[str, int]]) -> str:
    """A site's chain as `stylobate place --site` takes it."""
    return f"{site}=" + ",".join(f"{part}@{turn}" for part, turn in chain)


def chains_of(folder: Path) -> tuple[str, ...]:
    """The chains in a folder that `place` wrote, () where it cannot be read."""
    try:
        sites = json.loads((folder / "place.json").read_bytes())["sites"]
        return tuple(
            chain_word(site["site"], [(step["part"], step["turn"]) for step in site["chain"]])
            for site in sites if site["chain"]
        )  # fmt: skip
    except (OSError, ValueError, KeyError, TypeError):
        return ()
