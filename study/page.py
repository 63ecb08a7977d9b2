from pathlib import Path
from typing import Any


def write_page(rows: list[dict[str, Any]], folder: Path) -> None:
    """To come."""
