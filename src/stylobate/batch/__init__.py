"""Many scans: measured by processes of this machine or of a cluster, resumable, one summary of all."""

from stylobate.batch.run import Count, Plan, run

__all__ = ["Count", "Plan", "run"]
