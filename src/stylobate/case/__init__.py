"""One patient's work as one folder: scans, parts, results, sites, checks and releases, with a log that is chained.

case = Case.create("cases/h-0421", code="H-0421", work="bridge", who="AB")
case.add_scan("bodies", "arch.stl", who="AB")
"""

from stylobate.case.folder import Case

__all__ = ["Case"]
