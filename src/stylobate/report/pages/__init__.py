"""The report of a result or a case: one PDF and one HTML page, from the same content."""

from stylobate.report.pages.dossier import Dossier, of_case, of_result
from stylobate.report.pages.making import Report, make_report

__all__ = ["Dossier", "Report", "make_report", "of_case", "of_result"]
