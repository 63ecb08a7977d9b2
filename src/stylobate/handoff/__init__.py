"""The hand-off package: a case with its surfaces, poses and report in one file that proves itself whole."""

from stylobate.handoff.pack import pack
from stylobate.handoff.receive import Received, receive

__all__ = ["Received", "pack", "receive"]
