"""What a comparison of scans says: frozen values."""

from __future__ import annotations

from dataclasses import dataclass

from stylobate.core.types import FloatArray
from stylobate.several.comparing.components import Spread
from stylobate.several.comparing.moved import Moved
from stylobate.several.comparing.pool import Pooled
from stylobate.several.comparing.repeat import PairSpread, Repeats
from stylobate.several.comparing.union import Union


@dataclass(frozen=True)
class Group:
    """Scans of one scanner, material or operator. repeats: their own repeatability."""

    name: str
    scans: tuple[int, ...]
    repeats: Repeats


@dataclass(frozen=True)
class Contrast:
    """Two groups: how their mean distance between two implants differs (mm, second minus first), with 95 % bound."""

    groups: tuple[str, str]
    implants: tuple[int, int]
    difference: float
    u95: float


@dataclass(frozen=True)
class DriftSize:
    """Standard deviation (mm) by which drift changes the distance of the outermost implants, median and 95 % range."""

    implants: tuple[int, int]
    median: float
    low: float
    high: float


@dataclass(frozen=True)
class Agreement:
    """Whether poses from elsewhere and scans differ by no more than is stated: p of all differences together (eq. 16).

    drift: whether the drift of the scans counts. At p below LEVEL they do not agree.
    """

    p: float
    squares: float
    freedom: int
    drift: bool


@dataclass(frozen=True)
class Comparison:
    """Scans compared. residual: (K, 6n) how each pose differs from the mean of all, ξ in the connection frames, moved
    sites too. findable: mm of height per implant that would be named with 95 % probability, NaN: none could.

    agreement: with poses from elsewhere. pooled: None where the scans do not agree, `why_not_pooled` then says so.
    noise_factor: median and 95 % range of what the stated standard uncertainties are to be multiplied with.
    drift_from: what was held likely of drift.
    """

    union: Union
    residual: FloatArray
    repeats: Repeats
    pairs: tuple[PairSpread, ...]
    moved: tuple[Moved, ...]
    tried: int
    findable: tuple[float, ...]
    noise_factor: Spread
    drift: DriftSize | None
    drift_from: str
    groups: tuple[Group, ...]
    contrasts: tuple[Contrast, ...]
    agreement: Agreement | None
    pooled: Pooled | None
    why_not_pooled: str
    notes: tuple[str, ...]
