"""A refusal as one line, and keys of what the page may keep."""

from __future__ import annotations

import hashlib


def one_line(error: Exception) -> str:
    """What an error says, whatever line breaks it brought along."""
    return " ".join(str(error).split())


def key_of(kind: str, *about: str) -> str:
    """Key of a surface: another kind, or anything else about it, gives another."""
    return f"{kind}-" + hashlib.sha256("\0".join(about).encode()).hexdigest()[:16]
