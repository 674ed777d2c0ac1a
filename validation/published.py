"""All published check values that the library can answer, section by section.

A row of the case files counts as "source number" if its expected value is printed in the source
(or recalled from it), as "own number" if it was computed from the source's equations. Rows that
the library cannot answer are counted, and named with the reason.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import section_a
import section_b
import section_d
import section_g
import section_l
from case import Outcome, absent
from case_file import FOLDER, Section, case_of, rows, stated_limit

TITLE = "Published check values"

SECTIONS: Mapping[str, Section] = {
    "A": section_a,
    "B": section_b,
    "D": section_d,
    "G": section_g,
    "L": section_l,
}


def outcome(folder: Path) -> Outcome:
    """Compares all rows; nothing is written to `folder`."""
    if not FOLDER.exists():
        return absent(TITLE, FOLDER)
    cases, left = [], []
    for letter, section in SECTIONS.items():
        limit_of = getattr(section, "limit", stated_limit)
        for row in rows(letter):
            got = section.value(row)
            if got is None:
                reason = section.REASONS.get(row["id"], "not answered")
                left.append(f"Left out: {row['id']} {row['title']}, {row['quantity']}: {reason}.")
            else:
                cases.append(case_of(row, got, limit_of(row)))
    source = sum(case.source.startswith("source") for case in cases)
    counted = (
        f"{source} source numbers and {len(cases) - source} own numbers compared; "
        f"{len(left)} rows left out.",
    )
    return Outcome(TITLE, tuple(cases), counted + tuple(left))
