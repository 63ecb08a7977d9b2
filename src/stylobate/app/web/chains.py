"""Chains of parts as words, the way `stylobate place --site` takes them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path


def chain_word(site: str, chain: Sequence[tuple[str, int]]) -> str:
    """A site's chain as `stylobate place --site` takes it."""
    return f"{site}=" + ",".join(f"{part}@{turn}" for part, turn in chain)


def read_word(word: str) -> tuple[str, tuple[tuple[str, int], ...]]:
    """The site and the chain of such a word."""
    site, _, rest = word.partition("=")
    steps = (step.rpartition("@") for step in rest.split(","))
    return site, tuple((part, int(turn)) for part, _, turn in steps)


def chains_of(folder: Path) -> tuple[str, ...]:
    """The chosen chains in a folder that `place` wrote, () where it cannot be read.

    One that does not say which were chosen is older: then all of them were.
    """
    try:
        sites = json.loads((folder / "place.json").read_bytes())["sites"]
        return tuple(
            chain_word(site["site"], [(step["part"], step["turn"]) for step in site["chain"]])
            for site in sites if site["chain"] and site.get("chosen", True)
        )  # fmt: skip
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return ()
