"""Heat transfer coefficients, boiling, condensation and evaporation (section E), part by part."""

from __future__ import annotations

from collections.abc import Mapping

import section_e_phase_change
import section_e_stirred
from case_file import Limit, Row, Section, stated_limit

PARTS: tuple[Section, ...] = (section_e_stirred, section_e_phase_change)
REASONS: Mapping[str, str] = {key: why for part in PARTS for key, why in part.REASONS.items()}


def value(row: Row) -> float | None:
    """What the first part that knows the row says."""
    for part in PARTS:
        found = part.value(row)
        if found is not None:
            return found
    return None


def limit(row: Row) -> Limit:
    """As that part sees it."""
    for part in PARTS:
        if part.value(row) is not None:
            return getattr(part, "limit", stated_limit)(row)
    return stated_limit(row)
