"""Units and common practice (section L). Ranges of the trade are judged in practice.py."""

from __future__ import annotations

import re
from collections.abc import Mapping

from amounts import amount, in_unit_of, plain, span
from case_file import Row, number

import kettlecast as kc
from kettlecast import units
from kettlecast.unit_tables import KINDS

REASONS: Mapping[str, str] = {}


def _unit(row: Row) -> float | None:
    """One of some unit in another; the kind is the one that has both."""
    found = re.fullmatch(r"unit: ([\d.]+) (.+)", plain(row["title"]))
    if found is None:
        return None
    for kind, entry in KINDS.items():
        if found[2] in entry.units and plain(row["unit"]) in entry.units:
            return in_unit_of(row, units.parse(f"{found[1]} {found[2]}", kind), kind)
    return None


def _temperature(row: Row) -> float | None:
    found = re.fullmatch(r"temperature( DIFFERENCE)? (-?[\d.]+ deg[CF])", plain(row["title"]))
    if found is None:
        return None
    kind = "temperature_difference" if found[1] else "temperature"
    return in_unit_of(row, units.parse(found[2], kind), kind)


def _heat_up(row: Row) -> float | None:
    """Time to heat a volume of water; constant properties as the row states them."""
    text, change = row["inputs"], span(row["inputs"])
    volume, power, share = amount(text, "volume"), amount(text, "power"), amount(text, "share")
    density = amount(row["tolerance"], "density")
    specific_heat = amount(row["tolerance"], "specific_heat")
    if None in (volume, power, share, density, specific_heat) or change is None:
        return None
    assert volume and power and share and density and specific_heat
    time = kc.transfer.batch.time_to_temperature(
        volume * density * specific_heat, 0.0, change[0], *change, power=share * power
    )
    return in_unit_of(row, time, "time")


def value(row: Row) -> float | None:
    """Units, temperatures and the time to heat a volume of water."""
    if number("", row["expected"]) is None or row["status"] == "PRACTICE":
        return None
    for answer in (_unit, _temperature, _heat_up):
        got = answer(row)
        if got is not None:
            return got
    return None
