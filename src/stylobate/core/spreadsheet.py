"""Cells of a table that no spreadsheet takes for a formula."""

from __future__ import annotations

LIVELY = ("=", "+", "-", "@", "\t", "\r")
"""A text cell that starts with one of these is run as a formula by spreadsheets (OWASP, "CSV Injection")."""


def lively(cell: str) -> bool:
    """Whether a spreadsheet would run this cell."""
    return cell.startswith(LIVELY)


def inert(cell: str) -> str:
    """The cell as text: an apostrophe before what would be run, and before such an apostrophe."""
    return f"'{cell}" if lively(cell) or (cell.startswith("'") and lively(cell.lstrip("'"))) else cell


def raw(cell: str) -> str:
    """What `inert` was given."""
    return cell[1:] if cell.startswith("'") and lively(cell.lstrip("'")) else cell
