"""Checks for readings in another unit than the one declared."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from . import _core, units
from .findings import Finding, Severity
from .log_columns import HEAT
from .log_table import LogTable

_TOO_HOT = 388.15  # a product that is mostly water stays below this in an open kettle [K]
_TOO_HOT_TIME = 120.0  # [s]
_SWEET = 0.15  # share of sugar in what was poured from which it boils down to syrup, above boiling
_WATERY = 0.7  # share of water in what was poured from which it counts as mostly water
_MISSED = 10.0  # a reading this far from a set point that was reached is suspect [K]
_MATCHED = 5.0  # and in the other unit it lies this close [K]
# agitators of kettles turn at 5 to 300 rpm; common practice, no source
_SLOWEST = 2.0 / 60.0  # [1/s]
_FASTEST = 300.0 / 60.0  # [1/s]


@dataclass(frozen=True)
class Reached:
    """A set point that the operator's events say was reached.

    Attributes
    ----------
    time :
        When [s].
    signal :
        "floor" or "probe".
    set_point :
        [K]
    """

    time: float
    signal: str
    set_point: float


def check_shares_and_speed(table: LogTable) -> Iterator[Finding]:
    """Heat logged as 0 and 1 under per cent, and agitators in turns per second under rpm."""
    for signal in HEAT:
        values = table.columns.get(signal)
        if values is None or table.units[signal] != "%" or not 0 < values.max() <= 0.01:
            continue
        seen = f"never above {values.max() * 100:g} %"
        expected = f'per cent; if 1 means full power, say units={{"{signal}": "1"}}'
        yield Finding(Severity.warning, _lines_above_zero(table, signal), signal, seen, expected)
    speed = table.columns.get("agitator")
    if speed is None or not speed.max() > 0.0 or _SLOWEST <= speed.max() <= _FASTEST:
        return
    unit, other = table.units["agitator"], "1/s" if speed.max() < _SLOWEST else "rpm"
    if unit == other:
        return
    seen = f"never above {table.text('agitator', speed.max())}"
    expected = f'2 to 300 rpm; if the log is in {other}, say units={{"agitator": "{other}"}}'
    lines = _lines_above_zero(table, "agitator")
    yield Finding(Severity.warning, lines, "agitator", seen, expected)


def _lines_above_zero(table: LogTable, signal: str) -> tuple[int, int]:
    rows = np.flatnonzero(table.columns[signal])
    return table.between(int(rows[0]), int(rows[-1]))


def check_temperature_units(
    table: LogTable,
    pours: Sequence[tuple[float, _core.Addition]] | None,
    reached: Sequence[Reached],
) -> list[Finding]:
    """Suspicion that a temperature was logged in degF and declared as degC, or the other way.

    A hot floor and hot oil pass 150 degC rightly, so a high reading alone says nothing. Evidence
    is a product of mostly water well above boiling, or a set point that was reached by the events
    and is matched by the reading only in the other unit.

    Parameters
    ----------
    table :
        The log.
    pours :
        Time [s] and addition of each pour, or None if they are not known.
    reached :
        Set points that were reached.
    """
    found = [item for item in (_missed(table, entry) for entry in reached) if item is not None]
    signals = {item.signal for item in found}
    if "probe" not in signals and table.units["probe"] != "degF":
        found += _above_boiling(table, pours)
    first = {item.signal: item for item in reversed(found)}
    return list(first.values())


def _missed(table: LogTable, reached: Reached) -> Finding | None:
    unit = table.units.get(reached.signal)
    other = {"degC": "degF", "degF": "degC"}.get(unit or "")
    if unit is None or other is None:
        return None
    row = int(np.argmin(np.abs(table.columns["time"] - reached.time)))
    value = float(table.columns[reached.signal][row])
    swapped = units.to_si(float(units.in_unit(value, unit, "temperature")), other, "temperature")
    if abs(value - reached.set_point) <= _MISSED or abs(swapped - reached.set_point) > _MATCHED:
        return None
    goal = units.as_text(reached.set_point, "temperature")
    seen = f"reads {table.text(reached.signal, value)} where {goal} was reached"
    return Finding(
        Severity.error,
        table.between(row, row),
        reached.signal,
        seen,
        f'the set point; in {other} it matches: say units={{"{reached.signal}": "{other}"}}',
    )


def _above_boiling(
    table: LogTable, pours: Sequence[tuple[float, _core.Addition]] | None
) -> Iterator[Finding]:
    time, probe = table.columns["time"], table.columns["probe"]
    since = time[0] if pours is None else _mostly_water_since(pours)
    rows = np.flatnonzero((probe > _TOO_HOT) & (time >= since))
    if not rows.size:
        return
    steps = np.diff(time, append=time[-1])
    length = float(np.sum(steps[rows]))
    if length < _TOO_HOT_TIME:
        return
    highest = table.text("probe", probe[rows].max())
    seen = f"up to {highest}, {length:g} s above {units.as_text(_TOO_HOT, 'temperature')}"
    known = "with a product of mostly water" if pours is not None else "the pours are not known"
    yield Finding(
        Severity.note if pours is None else Severity.error,
        table.between(int(rows[0]), int(rows[-1])),
        "probe",
        f"{seen}, {known}",
        'only hot oil reads so high; if the log is in degF, say units={"probe": "degF"}',
    )


def _mostly_water_since(pours: Sequence[tuple[float, _core.Addition]]) -> float:
    """When what was poured became mostly water [s]; infinity if never."""
    mass = water = sugar = 0.0
    since = np.inf
    for time, addition in pours:
        mass += addition.mass
        water += addition.mass * addition.food.composition.water
        sugar += addition.mass * addition.food.sugar
        if water < _WATERY * mass or sugar > _SWEET * mass:
            since = np.inf
        elif since == np.inf:
            since = time + addition.pour_time
    return float(since)
