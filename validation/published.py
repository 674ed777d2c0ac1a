"""All published check values that the library can answer, section by section.

A row of the case files counts as "source number" if its expected value is printed in the source
(or recalled from it), as "own number" if it was computed from the source's equations: confirmed by
a second method, or by one method only, which shows no more than that an equation was transcribed
alike. Rows that the library cannot answer are counted, and named with the reason.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

import section_a
import section_b
import section_c
import section_d
import section_e
import section_f
import section_g
import section_h
import section_i
import section_l
from case import Case, Outcome, absent
from case_file import FOLDER, PROOFS, Row, Section, case_of, heading, rows, stated_limit

import kettlecast as kc

TITLE = "Published check values"

SECTIONS: Mapping[str, Section] = {
    "A": section_a,
    "B": section_b,
    "C": section_c,
    "D": section_d,
    "E": section_e,
    "F": section_f,
    "G": section_g,
    "H": section_h,
    "I": section_i,
    "L": section_l,
}


def outcome(folder: Path) -> Outcome:
    """Compares all rows; nothing is written to `folder`."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    cases: list[Case] = []
    left: list[str] = []
    notes = []
    for letter, section in SECTIONS.items():
        made, missing = _section(letter, section)
        cases, left = cases + made, left + missing
        notes.append(f"{heading(letter)}: {_counts(made, missing)}")
    return Outcome(TITLE, tuple(cases), (_counts(cases, left), *notes), left_out=tuple(left))


def _section(letter: str, section: Section) -> tuple[list[Case], list[str]]:
    """Cases of one section, and what it leaves out."""
    limit_of = getattr(section, "limit", stated_limit)
    cases, left = [], []
    for row in rows(letter):
        try:
            got, why = section.value(row), _reason(section, row)
        except kc.Error as error:  # a row outside of what a function takes
            got, why = None, f"refused, {error}"
        if got is None:
            left.append(f"Left out: {row['id']} {row['title']}, {row['quantity']}: {why}.")
        else:
            cases.append(case_of(row, got, limit_of(row), heading(letter)))
    return cases, left


def _reason(section: Section, row: Row) -> str:
    by_kind = getattr(section, "reason", lambda row: None)(row)
    return section.REASONS.get(row["id"], by_kind or "not answered")


def _counts(cases: Sequence[Case], left: Sequence[str]) -> str:
    """How many were compared, by what their expected values are worth, and how many left out."""
    kinds = ", ".join(
        f"{sum(case.source.startswith(proof) for case in cases)} {proof}"
        for proof in reversed(PROOFS.values())
    )
    return f"{len(cases)} rows compared ({kinds}), {len(left)} left out."
