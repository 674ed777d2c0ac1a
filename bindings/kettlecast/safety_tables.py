"""Published food-safety times, temperatures and limits, each with its edition and source.

They are copied for planning. Local code and the licensed operation decide what applies; nothing
here says that a log or a forecast complies with anything.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from importlib import resources
from pathlib import Path
from typing import Annotated, Literal, TypeVar

from . import _core, units
from .errors import InvalidArgument, OutsideValidity, UnknownName
from .file_model import Reads, Table, nearest, quantity, read_toml, validate

#: Goes with every number of this module.
CAUTION = (
    "Published figures, for planning only: local code and the licensed operation decide which "
    "apply. This is no statement that a log or a forecast complies."
)

# Rows are meant to be met by the same figure in another unit, which rounds differently.
_SAME = 1e-6  # [K]


@dataclass(frozen=True)
class HoldRow:
    """One row: a temperature [K], the degC printed beside it, and the shortest hold [s].

    `printed` is the hold as printed; "<1 s" counts as 1 s, and "0 s" is reached at once.
    """

    temperature: float
    celsius: str
    time: float
    printed: str


@dataclass(frozen=True)
class CoolingStage:
    """A temperature [K], the degC printed beside it, and the time to it since the start [s]."""

    temperature: float
    celsius: str
    time: float


def _row(texts: tuple[str, str, str]) -> HoldRow:
    degrees, celsius, printed = texts
    time = units.time(printed.removeprefix("<"))
    return HoldRow(units.temperature(degrees), celsius, time, printed)


def _stage(texts: tuple[str, str, str]) -> CoolingStage:
    degrees, celsius, time = texts
    return CoolingStage(units.temperature(degrees), celsius, units.time(time))


class HoldTable(Table):
    """A published table of temperatures and shortest holds, lowest temperature first.

    Attributes
    ----------
    name, editions, food, source :
        What it is for, and the editions that print it, newest first.
    log_reductions :
        Decimal reductions it is meant to give [-]; None where the source states none.
    within :
        Time in which the temperature has to be reached [s]; None where none is stated.
    rows :
        As printed.
    caution :
        Goes with every number of the table.
    """

    name: str
    editions: tuple[str, ...]
    food: str
    source: str
    log_reductions: float | None = None
    within: Annotated[float, quantity("time")] | None = None
    rows: tuple[Annotated[HoldRow, Reads(_row)], ...]
    caution: str = CAUTION


class Limit(Table):
    """A published limit of temperature [K]: food is kept at least, or at most, at this."""

    name: str
    editions: tuple[str, ...]
    kind: Literal["at least", "at most"]
    temperature: Annotated[float, quantity("temperature")]
    celsius: str
    source: str
    caution: str = CAUTION


class Cooling(Table):
    """A published rule for cooling in stages, counted from the start temperature [K]."""

    name: str
    editions: tuple[str, ...]
    food: str
    start: Annotated[float, quantity("temperature")]
    stages: tuple[Annotated[CoolingStage, Reads(_stage)], ...]
    source: str
    caution: str = CAUTION


@dataclass(frozen=True)
class Hold:
    """The shortest hold that a table asks for at a temperature.

    Attributes
    ----------
    time :
        [s]
    row :
        The row it stands in, at or below the temperature asked for.
    table :
        With edition and source.
    caution :
        Goes with the number.
    """

    time: float
    row: HoldRow
    table: HoldTable
    caution: str = CAUTION


@dataclass(frozen=True)
class CoolingLimits:
    """What a cooling rule leaves to food that cools as e^(-t / time constant).

    Attributes
    ----------
    time_constants :
        Largest time constant that meets each stage [s].
    binding :
        Index of the stage that asks for the smallest.
    rule :
        With edition and source.
    caution :
        Goes with the numbers.
    """

    time_constants: tuple[float, ...]
    binding: int
    rule: Cooling
    caution: str = CAUTION


class _File(Table):
    hold: tuple[HoldTable, ...]
    limit: tuple[Limit, ...]
    cooling: tuple[Cooling, ...]


_Entry = TypeVar("_Entry", HoldTable, Limit, Cooling)


@functools.cache
def _tables() -> _File:
    path = Path(str(resources.files(__package__) / "safety_tables.toml"))
    return validate(_File, read_toml(path), path)


def _pick(entries: Sequence[_Entry], name: str, edition: str | None) -> _Entry:
    """The entry of a name that an edition prints; without an edition, the newest."""
    named = [one for one in entries if one.name == name]
    if not named:
        names = dict.fromkeys(one.name for one in entries)
        told = f'"{name}" is not known{nearest(name, names)}'
        raise UnknownName(f"safety tables: {told}; there are: {', '.join(names)}")
    for one in named:
        if edition is None or edition in one.editions:
            return one
    there = ", ".join(year for one in named for year in one.editions)
    raise UnknownName(f'"{name}": edition "{edition}" is not known; there are: {there}')


def hold_table_names() -> list[str]:
    """Names of the tables of temperatures and holds."""
    return list(dict.fromkeys(table.name for table in _tables().hold))


def limit_names() -> list[str]:
    """Names of the limits of temperature."""
    return list(dict.fromkeys(limit.name for limit in _tables().limit))


def hold_table(name: str, edition: str | None = None) -> HoldTable:
    """A published table by name; without an edition, the newest.

    Raises
    ------
    UnknownName
        No such table or edition; the message lists those there are.

    Examples
    --------
    >>> hold_table("comminuted", "2013").rows[2].printed
    '15 s'
    """
    return _pick(_tables().hold, name, edition)


def limit(name: str, edition: str | None = None) -> Limit:
    """A published limit of temperature by name; without an edition, the newest.

    Raises
    ------
    UnknownName
        No such limit or edition; the message lists those there are.

    Examples
    --------
    >>> limit("hot holding").celsius
    '57 degC'
    """
    return _pick(_tables().limit, name, edition)


def cooling(edition: str | None = None) -> Cooling:
    """The published rule for cooling in two stages; without an edition, the newest.

    Raises
    ------
    UnknownName
        No such edition.
    """
    return _pick(_tables().cooling, "two-stage cooling", edition)


def required_hold(
    table: str | HoldTable, temperature: str | float, edition: str | None = None
) -> Hold:
    """The shortest hold that a table asks for when all parts are at a temperature or above.

    Between two rows the lower one counts, which asks for more time: nothing is interpolated.
    Above the highest row that row counts.

    Parameters
    ----------
    table :
        A table, or its name.
    temperature :
        Of the coldest part, such as "151 degF", or [K].
    edition :
        With a name; default: the newest.

    Raises
    ------
    OutsideValidity
        The temperature lies below the lowest row: no time is published for it.
    UnknownName
        No such table or edition.

    Examples
    --------
    >>> required_hold("whole roast", "134 degF").row.printed
    '56 min'
    """
    found = hold_table(table, edition) if isinstance(table, str) else table
    kelvin = units.number(temperature, "temperature")
    met = [row for row in found.rows if row.temperature <= kelvin + _SAME]
    if not met:
        lowest = units.as_text(found.rows[0].temperature, "temperature", "us")
        asked = units.as_text(kelvin, "temperature", "us")
        raise OutsideValidity(
            f'table "{found.name}": {asked} is below its lowest row, {lowest}; '
            "no time is published for it"
        )
    return Hold(met[-1].time, met[-1], found)


def death_times(
    table: str | HoldTable, reference: str | float, edition: str | None = None
) -> tuple[float, float]:
    """D at a reference temperature [s] and z [K] that a table implies, by least squares of log D.

    Rows of no time and of "<1 s" are left out. D is the hold divided by the decimal reductions
    that the table states. To plan with; the table itself is what is published.

    Raises
    ------
    InvalidArgument
        The table states no decimal reductions, or too few rows have a time.
    """
    found = hold_table(table, edition) if isinstance(table, str) else table
    if found.log_reductions is None:
        raise InvalidArgument(f'table "{found.name}" states no decimal reductions')
    timed = [row for row in found.rows if row.time > 0.0 and not row.printed.startswith("<")]
    return _core.properties.lethality.fit_death_times(
        [row.temperature for row in timed],
        [row.time / found.log_reductions for row in timed],
        units.number(reference, "temperature"),
    )


def cooling_limits(
    ambient: str | float, start: str | float | None = None, edition: str | None = None
) -> CoolingLimits:
    """The largest time constant with which food still meets each stage of the cooling rule.

        T = Ta + (T0 - Ta) e^(-t / tau),   tau <= t / ln((T0 - Ta) / (T - Ta))

    for a body of one temperature in air or water of one temperature (Newton's law of cooling).

    Parameters
    ----------
    ambient :
        Of the air or water Ta, such as "38 degF", or [K]; below the last stage.
    start :
        Of the food T0 when the clock starts; default: the start temperature of the rule.
    edition :
        Of the rule; default: the newest.

    Raises
    ------
    OutsideValidity
        The ambient is not below the last stage, or the food starts below the first.
    """
    rule = cooling(edition)
    air = units.number(ambient, "temperature")
    hot = rule.start if start is None else units.number(start, "temperature")
    last, first = rule.stages[-1].temperature, rule.stages[0].temperature
    if not air < last or not hot > first:
        raise OutsideValidity(
            "cooling_limits: the ambient must be below "
            f"{units.as_text(last, 'temperature', 'us')} and the start above "
            f"{units.as_text(first, 'temperature', 'us')}; got "
            f"{units.as_text(air, 'temperature', 'us')} and "
            f"{units.as_text(hot, 'temperature', 'us')}"
        )
    constants = tuple(
        stage.time / math.log((hot - air) / (stage.temperature - air)) for stage in rule.stages
    )
    return CoolingLimits(constants, constants.index(min(constants)), rule)
