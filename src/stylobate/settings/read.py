"""A settings file (TOML) → Settings, or one line that says what is wrong with it."""

from __future__ import annotations

import tomllib
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from stylobate.core.complaints import dotted, must_be
from stylobate.core.errors import SettingsError
from stylobate.settings.model import LIMITS, Drift, Limits, Seating, Settings, Temperature

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

FORMAT = "stylobate-settings"
VERSION = 1
MOST_BYTES = 2**20


def read_settings(path: str | Path) -> Settings:
    """Read limits and figures. What the file does not name keeps its default.

    Raises SettingsError: one line with the file, the key, what is wrong and what to do.
    """
    from pydantic import ValidationError

    from stylobate.settings.schema import SettingsTable

    file = Path(path)
    values = _values(file)
    if values.get("format") != FORMAT:
        raise SettingsError(f'{file}: is not a settings file; it must begin with format = "{FORMAT}"')
    version = values.get("version")
    if isinstance(version, int) and version > VERSION:
        raise SettingsError(f"{file}: is of version {version}, known here: {VERSION}; update this program")
    try:
        table = SettingsTable.model_validate(values)
    except ValidationError as error:
        raise SettingsError(f"{file}: {_sentence(error.errors(include_url=False)[0])}") from error
    given = {work: Limits(**one.model_dump()) for work, one in table.limits}
    return Settings(
        MappingProxyType({**LIMITS, **given}),
        None if table.seating is None else Seating(**table.seating.model_dump()),
        None if table.temperature is None else Temperature(**table.temperature.model_dump()),
        None if table.drift is None else Drift(**table.drift.model_dump()),
    )


def _values(file: Path) -> dict[str, Any]:
    try:
        if file.stat().st_size > MOST_BYTES:
            raise SettingsError(f"{file}: is larger than 1 MB, which no settings file is; name the right file")
        return tomllib.loads(file.read_text(encoding="utf-8-sig"))
    except OSError as error:
        cause = (error.strerror or str(error)).strip().lower()
        raise SettingsError(f"{file}: {cause}; name a settings file, or leave --settings out") from error
    except UnicodeDecodeError as error:
        raise SettingsError(f"{file}: is not text in UTF-8; save it again as UTF-8") from error
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise SettingsError(f"{file}: is not TOML ({' '.join(str(error).split())}); mend that line") from error


def _sentence(detail: ErrorDetails) -> str:
    key = dotted(detail["loc"])
    if detail["type"] == "missing":
        return f"{key} is missing; a table of limits or figures names all of its own, so add it"
    if detail["type"] == "extra_forbidden":
        return f"{key} is no setting; remove it, or see the page on the verdict for those there are"
    return f"{must_be(detail)}; change it"
