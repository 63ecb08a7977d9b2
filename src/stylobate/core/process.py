"""What holds for the whole process."""

from __future__ import annotations

ours = False
"""Whether it is the command's own: nobody else's code runs in it, whose needs would have to be kept in mind."""
