"""Numbers as they are printed: true minus signs, units after a space, a dash for what is not known."""

from __future__ import annotations

import math

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
