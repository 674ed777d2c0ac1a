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

#: What practice.py does with a range of the trade, by words of its title; the first counts.
PRACTICE: Mapping[str, str] = {
    "watery food": 'judged by practice as "Overall U, steam to stirred water"',
    "viscous sauce": 'judged by practice as "Overall U, steam to scraped tomato sauce"',
    "unstirred thick": 'judged by practice as "Overall U, steam to resting tomato sauce"',
    "time to boil": 'judged by practice as "Full kettle of water", electric and by steam',
    "lid open": 'judged by practice as "Open at the boil" and "Outside of wall or jacket"',
    "cooling by jacket": 'judged by practice as "150 L cooled from 90 to 40 degC"',
    "power drawn": 'judged by practice as "Power drawn by scrapers"',
    "thermostat": 'judged by practice as "Thermostat band"',
    "probe": 'judged by practice as "Probe in stirred liquid: time constant"',
    "agitator speed": "taken by practice for the speeds of its agitators, 15 to 50 rpm",
    "blades per": "taken by practice: the two blades of a kettle by default",
    "working fill": "taken by practice: its kettle with steam is filled to 80 %",
    "low-pressure": "taken by practice: 5, 10 and 15 psig",
    "coverage": "taken by practice: half and two thirds of the shell",
    "installed electric": "taken by practice: 0.20 kW/L under the floor, 0.25 kW/L of steam",
}


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


def reason(row: Row) -> str | None:
    """Which case of practice.py judges a range of the trade, or takes it for its kettles."""
    if row["status"] != "PRACTICE":
        return None
    title = plain(row["title"]).lower()
    found = (told for words, told in PRACTICE.items() if words in title)
    return next(found, "a range of the trade that no case of practice is about")


def value(row: Row) -> float | None:
    """Units, temperatures and the time to heat a volume of water."""
    if number("", row["expected"]) is None or row["status"] == "PRACTICE":
        return None
    for answer in (_unit, _temperature, _heat_up):
        got = answer(row)
        if got is not None:
            return got
    return None
