"""The signals of a log, and how the name of a column tells signal and unit."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from . import units
from .file_model import plain_name

#: Signals of a log and the kind of quantity each is.
SIGNALS: Mapping[str, str] = MappingProxyType(
    {
        "time": "time",
        "floor": "temperature",
        "probe": "temperature",
        "floor_heat": "share",
        "jacket_heat": "share",
        "agitator": "rotation_speed",
    }
)
#: Units of a time column that are no quantities: times of a clock, and elapsed time with colons.
CLOCK = "clock"
COLONS = ("h:mm:ss", "mm:ss")

_SUFFIXES = {
    "time": {"s": "s", "min": "min", "h": "h"},
    "temperature": {"c": "degC", "f": "degF", "k": "K"},
    "share": {"pct": "%"},
    "rotation_speed": {"rpm": "rpm"},
}
_NAMES = {plain_name(signal): signal for signal in SIGNALS}
_CLOCK_NAMES = ("clock", "timestamp", "datetime", "date time", "date/time")
_BRACKETS = re.compile(r"(.+?)\s*(?:\[(.*)\]|\((.*)\))")
# other characters that people write for the degree sign
_DEGREES = {
    "\N{MASCULINE ORDINAL INDICATOR}": "\N{DEGREE SIGN}",
    "\N{DEGREE CELSIUS}": "\N{DEGREE SIGN}C",
    "\N{DEGREE FAHRENHEIT}": "\N{DEGREE SIGN}F",
}


@dataclass(frozen=True)
class Heading:
    """What the name of a column tells.

    Attributes
    ----------
    signal :
        None if the column is none of the signals.
    unit :
        As `units` knows it, or a way to write times; None if the name tells none or an unknown one.
    told :
        The unit as written in brackets, "" if there is none.
    rank :
        How plain the name is: 0 for `probe_C`, 1 for `Probe [degC]`, 2 for `Probe`.
    """

    signal: str | None = None
    unit: str | None = None
    told: str = ""
    rank: int = 2


def heading(column: str) -> Heading:
    """Signal and unit told by a name such as `probe_C`, `Probe [degF]`, `Floor (K)` or `Probe`."""
    head, _, suffix = column.rpartition("_")
    signal = _NAMES.get(plain_name(head))
    if signal is not None and (unit := _SUFFIXES[SIGNALS[signal]].get(suffix.lower())):
        return Heading(signal, unit, rank=0)
    found = _BRACKETS.fullmatch(column)
    if found is not None:
        signal, told = _NAMES.get(plain_name(found[1])), (found[2] or found[3] or "").strip()
        unit = None if signal is None else unit_written(told, signal)
        return Heading(signal, unit, told, rank=1)
    if plain_name(column) in _CLOCK_NAMES:
        return Heading("time", CLOCK, rank=1)
    return Heading(_NAMES.get(plain_name(column)))


def unit_written(text: str, signal: str) -> str | None:
    """The unit of a signal that a text means, whatever its capitals; None if it is not one."""
    for written, sign in _DEGREES.items():
        text = text.replace(written, sign)
    known = {unit.lower(): unit for unit in allowed_units(signal)}
    return known.get(" ".join(text.lower().split()))


def allowed_units(signal: str) -> list[str]:
    """Every unit that the column of a signal may be in."""
    spelled = list(units.kind_named(SIGNALS[signal]).units)
    return [*spelled, *COLONS, CLOCK] if signal == "time" else spelled


def units_text(signal: str) -> str:
    """The units that a column may be in, for messages."""
    if signal == "time":
        return f"s, min, h, {', '.join(COLONS)}, {CLOCK}"
    if SIGNALS[signal] == "share":
        return "%, and 1 for shares from 0 to 1"
    return units.kind_named(SIGNALS[signal]).allowed


def usual_names(signal: str) -> list[str]:
    """Names that a column of the signal usually has."""
    words = _SUFFIXES[SIGNALS[signal]]
    capital = SIGNALS[signal] == "temperature"
    return [f"{signal}_{word.upper() if capital else word}" for word in words]


def count_known(cells: Sequence[str], chosen: Sequence[str] = ()) -> int:
    """How many cells of a row are names of columns of a log, or among the names chosen for them."""
    plain = [cell.strip() for cell in cells]
    return sum(cell in chosen or heading(cell).signal is not None for cell in plain if cell)
