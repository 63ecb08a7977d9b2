"""How frames really fitted, set against what was predicted (wear, eq. 6–7)."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from pydantic import BaseModel, ConfigDict, Field

from stylobate.core.errors import RegisterError
from stylobate.record.document import read_document
from stylobate.register.entries import moment, who, words
from stylobate.register.store import Register

LEVEL = 0.95
SEAT = "seat.json"


class _Site(BaseModel):
    model_config = ConfigDict(strict=True, extra="ignore", allow_inf_nan=False)
    site: str
    gap_um: float
    gap_p95_um: float | None = None


class _Seat(BaseModel):
    """What of seat.json is needed."""

    model_config = ConfigDict(strict=True, extra="ignore", allow_inf_nan=False)
    sites: list[_Site]
    probability_within_limits: float | None = Field(default=None, ge=0, le=1)


@dataclass(frozen=True)
class Gap:
    """One gap that was looked at: measured, predicted median and 95 % figure, µm."""

    case: str
    site: str
    measured_um: float
    predicted_um: float
    predicted_p95_um: float | None


@dataclass(frozen=True)
class Fitted:
    """One frame: whether it fitted, and the probability of that as predicted."""

    case: str
    at: str
    fits: bool | None
    probability: float | None
    note: str | None


@dataclass(frozen=True)
class Kept:
    """How often predictions held: `held` of `count`, with the 95 % interval of the rate behind it."""

    held: int
    count: int
    low: float
    high: float


def enter_fit(
    register: Register, case: str, seat: Path, gaps_um: Mapping[str, float], fits: bool | None, at: str,
    note: str | None = None,
) -> list[Gap]:  # fmt: skip
    """Enter how a frame fitted. gaps_um: by site. Raises ResultError, and RegisterError for a site that seat.json lacks
    or when nothing is entered."""
    name = words(case, "case")
    if fits is None and not gaps_um:
        raise RegisterError("nothing to enter: give --fits, --does-not-fit or a --gap")
    path = seat / SEAT if seat.is_dir() else seat
    table = read_document(path, _Seat, "stylobate-seat", 1, "seat")
    predicted = {site.site: site for site in table.sites}
    strange = sorted(set(gaps_um) - set(predicted))
    if strange:
        raise RegisterError(f"{path}: there is no site {', '.join(strange)}; it has: {', '.join(predicted)}")
    found = [
        Gap(name, site, value, predicted[site].gap_um, predicted[site].gap_p95_um) for site, value in gaps_um.items()
    ]
    with register.writing():
        fit = register.add(
            "frame_fit", case_name=name, at=at, entered=moment(), by=who(),
            seat_sha256=hashlib.sha256(path.read_bytes()).hexdigest(), fits=None if fits is None else int(fits),
            predicted_probability=table.probability_within_limits, note=None if note is None else words(note, "note"),
        )  # fmt: skip
        for gap in found:
            register.add(
                "frame_gap", fit=fit, site=gap.site, measured_um=gap.measured_um, predicted_um=gap.predicted_um,
                predicted_p95_um=gap.predicted_p95_um,
            )  # fmt: skip
    return found


def fitted(register: Register) -> tuple[list[Fitted], list[Gap]]:
    """All frames and all gaps that were entered."""
    frames = [
        Fitted(
            row["case_name"], row["at"], None if row["fits"] is None else bool(row["fits"]),
            row["predicted_probability"], row["note"],
        )
        for row in register.rows("SELECT * FROM frame_fit ORDER BY at, id")
    ]  # fmt: skip
    gaps = [
        Gap(row["case_name"], row["site"], row["measured_um"], row["predicted_um"], row["predicted_p95_um"])
        for row in register.rows(
            "SELECT f.case_name, g.* FROM frame_gap AS g JOIN frame_fit AS f ON f.id = g.fit"
            " ORDER BY f.at, f.id, g.site"
        )
    ]
    return frames, gaps


def kept(gaps: Sequence[Gap]) -> Kept | None:
    """How many gaps stayed within their predicted 95 % figure; None where none can be judged."""
    judged = [gap for gap in gaps if gap.predicted_p95_um is not None]
    held = sum(1 for gap in judged if gap.measured_um <= (gap.predicted_p95_um or 0.0))
    return rate(held, len(judged)) if judged else None


def rate(held: int, count: int) -> Kept:
    """A rate with its 95 % interval by Clopper and Pearson (1934)."""
    from scipy.special import betaincinv

    tail = (1.0 - LEVEL) / 2.0
    low = float(betaincinv(held, count - held + 1, tail)) if held else 0.0
    high = float(betaincinv(held + 1, count - held, 1.0 - tail)) if held < count else 1.0
    return Kept(held, count, low, high)


def brier(frames: Sequence[Fitted]) -> float | None:
    """Mean square of (probability − outcome): 0 is perfect, 0.25 is what a coin says (Brier 1950)."""
    pairs = [(f.probability, f.fits) for f in frames if f.probability is not None and f.fits is not None]
    return float(np.mean([(p - float(outcome)) ** 2 for p, outcome in pairs])) if pairs else None
