"""Heat transfer (section E), answered by several modules in turn."""

from __future__ import annotations

from collections.abc import Mapping

import section_e_stirred
from case_file import Limit, Row, Section, stated_limit

PARTS: tuple[Section, ...] = (section_e_stirred,)
REASONS: Mapping[str, str] = {row: reason for part in PARTS for row, reason in part.REASONS.items()}


def value(row: Row) -> float | None:
    answers = (part.value(row) for part in PARTS)
    return next((answer for answer in answers if answer is not None), None)


def limit(row: Row) -> Limit:
    """That of the part which answers the row."""
    for part in PARTS:
        if part.value(row) is not None:
            return getattr(part, "limit", stated_limit)(row)
    return stated_limit(row)
