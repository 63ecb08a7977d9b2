"""A settings file is read whole or refused in one line."""

from __future__ import annotations

from pathlib import Path

import pytest

from stylobate.core.errors import SettingsError
from stylobate.settings import NO_SOURCE, read_settings

HEAD = 'format = "stylobate-settings"\nversion = 1\n'
LIMITS = "platform_um = 40\naxis_deg = 0.3\nindex_deg = 4.0\ndistance_um = 80.0\nangle_deg = 0.5\n"


def written(tmp_path: Path, text: str) -> Path:
    file = tmp_path / "mine.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_what_is_not_named_keeps_its_default(tmp_path: Path) -> None:
    settings = read_settings(written(tmp_path, f"{HEAD}[limits.bridge]\n{LIMITS}"))
    assert settings.limits["bridge"].platform_um == 40.0
    assert settings.limits["bridge"].source == NO_SOURCE
    assert settings.limits["arch"].platform_um == 50.0
    assert settings.seating is None


def test_figures_for_what_no_scan_shows(tmp_path: Path) -> None:
    text = f'{HEAD}[seating]\nheight_um = 8.0\nside_um = 3.0\ntilt_deg = 0.02\nsource = "own tests"\n'
    seating = read_settings(written(tmp_path, text)).seating
    assert seating is not None
    assert (seating.height_um, seating.source) == (8.0, "own tests")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("version = 1\n", ["format"]),
        (HEAD + "[limits.bridge]\n" + LIMITS.replace("axis_deg = 0.3\n", ""), ["limits.bridge.axis_deg", "missing"]),
        (HEAD + "[limits.bridge]\n" + LIMITS.replace("40", "-40"), ["limits.bridge.platform_um", "greater than 0"]),
        (HEAD + "[limits.bridge]\n" + LIMITS.replace("40", "nan"), ["limits.bridge.platform_um", "finite"]),
        (HEAD + "[limits.crown]\n" + LIMITS, ["limits.crown", "no setting"]),
        (HEAD + "[limits.bridge]\nplatfrom_um = 3.0\n" + LIMITS, ["platfrom_um", "no setting"]),
        (HEAD.replace("1", "7"), ["version 7", "update"]),
        (HEAD + "[limits.bridge\n", ["not TOML"]),
    ],
)
def test_refused_in_one_line(text: str, words: list[str], tmp_path: Path) -> None:
    file = written(tmp_path, text)
    with pytest.raises(SettingsError) as refusal:
        read_settings(file)
    sentence = str(refusal.value)
    assert "\n" not in sentence
    assert str(file) in sentence
    assert all(word in sentence for word in words), sentence


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(SettingsError, match=r"none\.toml"):
        read_settings(tmp_path / "none.toml")
