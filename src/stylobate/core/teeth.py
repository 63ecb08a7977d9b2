"""ISO 3950 tooth numbers: two digits, the quadrant and the place from the midline.

Quadrants 1 to 4 are the permanent dentition (upper right, upper left, lower left, lower right, as the patient has
them), 5 to 8 the deciduous one in the same order; places 1 to 8, deciduous 1 to 5.
"""

from __future__ import annotations

from stylobate.core.errors import UsageError

QUADRANTS = {
    "1": "upper right", "2": "upper left", "3": "lower left", "4": "lower right",
    "5": "upper right", "6": "upper left", "7": "lower left", "8": "lower right",
}  # fmt: skip
_PERMANENT = ("central incisor", "lateral incisor", "canine", "first premolar", "second premolar", "first molar",
              "second molar", "third molar")  # fmt: skip
_DECIDUOUS = ("central incisor", "lateral incisor", "canine", "first molar", "second molar")


def is_tooth(number: str) -> bool:
    """Whether `number` is an ISO 3950 tooth number: 11–18, 21–28, 31–38, 41–48, 51–55, 61–65, 71–75, 81–85."""
    if len(number) != 2 or not number.isascii() or not number.isdigit() or number[0] not in QUADRANTS:
        return False
    return 1 <= int(number[1]) <= (8 if number[0] in "1234" else 5)


def tooth(number: str) -> str:
    """The same number, checked. Raises UsageError that says what the numbers are."""
    if not is_tooth(number):
        raise UsageError(
            f"'{number}' is not an ISO 3950 tooth number; write 11 to 18, 21 to 28, 31 to 38 or 41 to 48 "
            "(deciduous 51 to 55, 61 to 65, 71 to 75, 81 to 85)"
        )
    return number


def tooth_name(number: str) -> str:
    """The number in words: '14' is 'upper right first premolar'. Raises UsageError."""
    kind, place = tuple(tooth(number))
    names = _PERMANENT if kind in "1234" else _DECIDUOUS
    return f"{QUADRANTS[kind]} {'' if kind in '1234' else 'deciduous '}{names[int(place) - 1]}"


def along_arch(number: str) -> tuple[int, int]:
    """Sort key: upper before lower, each arch from the patient's right to the left. Raises UsageError."""
    kind, place = tuple(tooth(number))
    upper, right = kind in "1256", kind in "1458"
    return (0 if upper else 1, -int(place) if right else int(place))
