"""The register of scan bodies: each physical body a unit with its history, in one SQLite file.

with open_register(path) as register:
    units.sterilised(register, ["12", "13"], at=moment())
"""

from stylobate.register import copies
from stylobate.register.store import Register, default_path, open_register

__all__ = ["Register", "copies", "default_path", "open_register"]
