"""Numbers with units out of the text of a row, read by the units of the library."""

from __future__ import annotations

import re

from case_file import Row

from kettlecast import units

_NUMBER = r"-?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?"
_SPELLINGS = {
    "\N{DEGREE SIGN}": "deg",
    "\N{SUPERSCRIPT TWO}": "2",
    "\N{SUPERSCRIPT THREE}": "3",
    "\N{MINUS SIGN}": "-",
    "\N{EN DASH}": "-",
    "_IT": "",
    "US ": "",
}


def plain(text: str) -> str:
    """Text with the spellings that the library reads, and no commas within numbers."""
    for old, new in _SPELLINGS.items():
        text = text.replace(old, new)
    return re.sub(r"(?<=\d),(?=\d{3}\b)", "", text)


def amounts(text: str, kind: str) -> list[float]:
    """All numbers with a unit of a kind, in SI."""
    spelled = [unit for unit in units.kind_named(kind).units if not unit.isdigit()]
    known = sorted(spelled, key=len, reverse=True)
    pattern = rf"(?<![\w.])({_NUMBER}\s*(?:{'|'.join(map(re.escape, known))}))(?![\w/(^])"
    return [units.parse(found, kind) for found in re.findall(pattern, plain(text))]


def amount(text: str, kind: str) -> float | None:
    """The first number with a unit of a kind, in SI."""
    return next(iter(amounts(text, kind)), None)


def named(name: str, text: str) -> float | None:
    """The number after a name, which may be followed by an equals sign."""
    found = re.search(rf"(?<![\w/.]){name}\s*=?\s*({_NUMBER})", plain(text))
    return None if found is None else float(found[1])


def named_amount(name: str, text: str, kind: str) -> float | None:
    """The number with a unit after a name, in SI."""
    found = re.search(rf"(?<![\w/.]){name}\s*=?\s*(?={_NUMBER})", plain(text))
    if found is None:
        return None
    rest = plain(text)[found.end() :]
    number = re.match(_NUMBER, rest)
    assert number is not None
    unit = rest[number.end() :].split(",")[0].split(";")[0]
    return amount(number[0] + unit, kind)


def span(text: str) -> tuple[float, float] | None:
    """Temperatures [K] before and after an arrow; the unit stands after the second."""
    found = re.search(
        rf"({_NUMBER})\s*\N{{RIGHTWARDS ARROW}}\s*({_NUMBER})\s*(deg[CF])", plain(text)
    )
    if found is None:
        return None
    start, target = (units.temperature(f"{number} {found[3]}") for number in found.groups()[:2])
    return start, target


def in_unit_of(row: Row, value: float, kind: str) -> float:
    """An SI number in the unit of a row."""
    return float(units.in_unit(value, plain(row["unit"]), kind))
