"""Rows of the published check values, and the limit that each row states."""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Protocol

from case import SHARED, Case, absolute, relative

FOLDER = SHARED / "checks" / "cases"
ICE = 273.15
ONE_ATMOSPHERE = 101325.0

Row = Mapping[str, str]

_NUMBER = r"[\d.]+(?:e[-+]?\d+)?"
_UNLIMITED = ("information", "plausibility")


@dataclass(frozen=True)
class Limit:
    """How far a value may lie from the expected one; `value` None: shown only."""

    value: float | None
    of_expected: bool = True  #: a share of the expected value, else in the unit of the row


class Section(Protocol):
    """One section of the case files.

    `value` gives what the library says to a row, in the unit of the row, or None where it cannot;
    it reads titles and inputs, never ids, so that rows of the same kind work too. `REASONS` maps
    the id of a row that is left out to why. A section may define `limit` for rows whose tolerance
    needs more than the text in it, and `reason` for rows that are left out by their kind.
    """

    REASONS: Mapping[str, str]

    def value(self, row: Row) -> float | None: ...


def rows(section: str) -> list[Row]:
    """Rows of one case file."""
    lines = _lines(section)
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def _lines(section: str) -> list[str]:
    return (FOLDER / f"{section}_cases.csv").read_text(encoding="utf-8").splitlines()


def heading(section: str) -> str:
    """Letter and title of one case file, as its opening comments say."""
    for line in _lines(section):
        if found := re.match(r"# section (\w: [^;]+)", line):
            return found[1]
    return section


#: How far an expected value is proved, by the word in `check_kind`; else the source prints it.
PROOFS = {
    "one method": "own number by one method",
    "confirmed": "own number confirmed",
    "": "source number",
}


def proof_of(row: Row) -> str:
    """Whether the expected value is the source's or made from its equations, and how often."""
    return next(proof for word, proof in PROOFS.items() if word in row["check_kind"])


def number(pattern: str, text: str) -> float | None:
    """First number after a pattern and, perhaps, an equals sign; a true minus counts as one."""
    found = re.search(pattern + r"\s*=?\s*([-\u2212]?[\d.]+)", text)
    return None if found is None else float(found[1].rstrip(".").replace("\u2212", "-"))


def expected_number(row: Row) -> tuple[float, str]:
    """The expected value of a row and its unit, which a few rows print in one ("3 min", "<1 s")."""
    number, *rest = row["expected"].strip().removeprefix("<").split()
    return float(number), row["unit"] or (rest[0] if rest else "")


def stated_limit(row: Row) -> Limit:
    """The tolerance of a row as it is written there.

    The first number counts; "%", "ppm" and "rel" make it a share of the expected value, "abs" and
    a temperature a difference. "exact" and values "as read" leave room for rounding only.
    """
    text = row["tolerance"]
    if any(word in text for word in _UNLIMITED):
        return Limit(None)
    found = re.search(_NUMBER, text.split("(")[0]) or re.search(_NUMBER, text)
    if text.startswith(("exact", "as re")) or found is None:
        return Limit(1e-12)
    value, after = float(found[0]), text[found.end() :].lstrip()
    if after.startswith("% abs") or after.startswith("abs") or "\u00b1" in text:
        return Limit(value, of_expected=False)
    if after.startswith("%"):
        return Limit(0.01 * value)
    if after.startswith("ppm"):
        return Limit(1e-6 * value)
    degrees = after.startswith("\u00b0") or "temperature" in row["title"].lower()
    return Limit(value, of_expected=not (degrees and not after.startswith("rel")))


def case_of(row: Row, got: float, limit: Limit, group: str = "") -> Case:
    """The case of a row."""
    name = f"{row['id']} {row['title']}: {row['quantity']}"
    source = f"{proof_of(row)}; {row['source'][:90]} ({row['status']})"
    expected, unit = expected_number(row)
    zero_expected = limit.of_expected and expected == 0.0
    make = relative if limit.of_expected and not zero_expected else absolute
    return replace(make(name, source, (expected, got), limit.value, unit), group=group)
