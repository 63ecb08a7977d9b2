"""Numbers as they are printed: true minus signs, units after a space, a dash for what is not known."""

from __future__ import annotations

import math

from stylobate.core.result import Bounds

DASH = "–"


def number(value: float | None, decimals: int) -> str:
    """A plain number, or a dash."""
    if value is None or not math.isfinite(value):
        return DASH
    return f"{value:.{decimals}f}".replace("-", "−")


def signed(value: float | None, decimals: int) -> str:
    """A number with its sign, also where it is positive."""
    if value is None or not math.isfinite(value):
        return DASH
    return f"{value:+.{decimals}f}".replace("-", "−")


def micrometres(value: float | None, decimals: int = 0) -> str:
    """In µm."""
    return f"{number(value, decimals)} µm"


def angle(value: float | None, decimals: int) -> str:
    """In degrees."""
    return f"{number(value, decimals)}°"


def turn_bound(bounds: Bounds, index_order: int, unit: str = "") -> str:
    """The bound of the turn, degrees, or "any", or a dash where the connection is not indexed."""
    if bounds.any_turn(index_order):
        return "any"
    return DASH if bounds.index_deg is None else number(bounds.index_deg, 2) + unit
