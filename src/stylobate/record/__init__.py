"""Reading back what `measure` wrote: result.json → Record."""

from stylobate.record.model import BudgetRow, Record, RecordSite, Together
from stylobate.record.read import RESULT, read_result, read_standing

__all__ = ["RESULT", "BudgetRow", "Record", "RecordSite", "Together", "read_result", "read_standing"]
