"""What a user asks for, from text to values: which parts on which site, at which turn, and which aim."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from stylobate.build.cone import unit
from stylobate.core.errors import UsageError
from stylobate.core.types import FloatArray

_STEP = re.compile(r"(?P<part>[^@,=\s]+)(?:@(?P<turn>[^@,=\s]+))?")


@dataclass(frozen=True)
class Step:
    """One part asked for. turn: None where the best is to be taken."""

    part: str
    turn: int | None = None


def chain_of(text: str, said: str) -> tuple[Step, ...]:
    """PART[@TURN][,PART[@TURN]]… said: how to show it in a refusal. Raises UsageError."""
    steps = []
    for word in text.split(","):
        match = _STEP.fullmatch(word.strip())
        if match is None:
            raise UsageError(f"{said}: '{word.strip()}' is not PART or PART@TURN; write it like 1=alder-base-10@2.")
        turn = match["turn"]
        if turn is not None and not (turn.isascii() and turn.isdigit() and len(turn) <= 4):
            raise UsageError(f"{said}: the turn '{turn}' is not a whole number from 0 on, like {match['part']}@2.")
        steps.append(Step(match["part"], None if turn is None else int(turn)))
    return tuple(steps)


def by_site(option: str, texts: Sequence[str]) -> dict[str, str]:
    """SITE=REST of a repeated option, by site. Raises UsageError where one is no such text or a site comes twice."""
    found: dict[str, str] = {}
    for text in texts:
        site, equals, rest = text.partition("=")
        site, rest = site.strip(), rest.strip()
        if not equals or not site or not rest:
            raise UsageError(f"{option} '{text}' is not SITE=…; write the site, =, and the rest without spaces around.")
        if site in found:
            raise UsageError(f"{option}: site {site} is named twice; name it once.")
        found[site] = rest
    return found


def require_sites(option: str, named: Mapping[str, object], known: Sequence[str]) -> None:
    """Raises UsageError where a site is named that the result does not have."""
    for name in named:
        if name not in known:
            raise UsageError(
                f"{option} {name}=…: the result has no site '{name}'; it has {', '.join(known) or 'none'}."
            )


def aim_of(text: str) -> tuple[str | None, FloatArray]:
    """[SITE:]X,Y,Z → site (None: all) and unit direction (3,). Raises UsageError."""
    site, colon, rest = text.rpartition(":")
    try:
        numbers = [float(word) for word in rest.split(",")]
    except ValueError:
        numbers = []
    if len(numbers) != 3 or not all(map(math.isfinite, numbers)) or (colon and not site.strip()):
        raise UsageError(f"--aim={text}: not a direction; write three numbers, like --aim=0,0,1 or --aim=2:0,0.1,1.")
    direction = np.array(numbers)
    largest = float(np.abs(direction).max())
    if largest == 0.0:
        raise UsageError(f"--aim={text}: all three numbers are zero; write a direction, like --aim=0,0,1.")
    return (site.strip() if colon else None), unit(direction / largest)
