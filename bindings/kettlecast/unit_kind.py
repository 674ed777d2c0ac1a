"""One kind of quantity: what SI unit it has and how people write it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Kind:
    """One kind of quantity.

    Attributes
    ----------
    si :
        Unit of the SI number, in the spelling of pint.
    si_unit :
        The same unit as it is written in text.
    example :
        For error messages.
    allowed :
        Units offered in error messages.
    units :
        Spelling in text to spelling of pint.
    metric, us :
        Units for output, largest first.
    """

    si: str
    si_unit: str
    example: str
    allowed: str
    units: Mapping[str, str]
    metric: tuple[str, ...]
    us: tuple[str, ...]
