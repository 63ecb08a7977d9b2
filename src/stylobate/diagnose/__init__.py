"""Pose → what is wrong with it, if anything: one cause a module, and the pose with the causes allowed for."""

from stylobate.diagnose.diagnosing import Diagnosis, diagnose

__all__ = ["Diagnosis", "diagnose"]
