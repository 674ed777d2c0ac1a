"""Checks of a log. They report what looks wrong and change nothing."""

from __future__ import annotations

import enum
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from . import _core, units

if TYPE_CHECKING:
    from .log_table import LogTable

Array = np.ndarray[Any, np.dtype[Any]]

# what sensors and drives of a kettle can show, in SI; common practice, no source
_RANGES = {
    "floor": (233.15, 673.15, "-40 to 400 degC"),
    "probe": (233.15, 523.15, "-40 to 250 degC"),
    "floor_heat": (0.0, 1.0, "0 to 100 %"),
    "jacket_heat": (0.0, 1.0, "0 to 100 %"),
    "agitator": (0.0, 50.0, "0 to 3000 rpm"),
}
_GAP = 5.0  # a gap is longer than this many usual intervals
_STUCK_TIME = 300.0  # [s]; the steadiest reading seen in a hold stays 20 s
_STUCK_HEAT = 0.2  # mean share of the heat at which a reading must move
_STUCK_OTHER = 10.0  # change of the other sensor at which a reading must move [K]
_BOILING = (361.15, 376.15)  # readings that boiling may hold steady, sea level to 3000 m [K]
_TOO_HOT = 388.15  # a product that is mostly water stays below this in an open kettle [K]
_TOO_HOT_TIME = 120.0  # [s]
_SWEET = 0.15  # share of sugar in what was poured from which it boils down to syrup, above boiling
_WATERY = 0.7  # share of water in what was poured from which it counts as mostly water
_MISSED = 10.0  # a reading this far from a set point that was reached is suspect [K]
_MATCHED = 5.0  # and in the other unit it lies this close [K]


class Severity(enum.Enum):
    """How much a finding matters: a run with an `error` cannot be used as it stands."""

    note = "note"
    warning = "warning"
    error = "error"


@dataclass(frozen=True)
class Finding:
    """Something in a log that its reader should know.

    Attributes
    ----------
    severity :
        `note`, `warning` or `error`.
    lines :
        First and last line concerned, counted from 1; of the events file if `signal` is "events".
    signal :
        Signal concerned, for example "probe", or "events".
    seen, expected :
        What the file holds and what it should.
    """

    severity: Severity
    lines: tuple[int, int]
    signal: str
    seen: str
    expected: str

    def __str__(self) -> str:
        first, last = self.lines
        where = f"line {first}" if first == last else f"lines {first} to {last}"
        told = f"{self.severity.value}: {where}: {self.signal}: {self.seen}"
        return f"{told}; expected: {self.expected}"


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


def check_table(table: LogTable) -> list[Finding]:
    """Findings that need nothing but the log: time, ranges, stuck sensors, scale of shares."""
    found = [*_time(table), *_ranges(table), *_shares(table)]
    for signal, other in (("probe", "floor"), ("floor", "probe")):
        if signal in table.columns:
            found += _stuck(table, signal, table.columns.get(other))
    return found


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


def _stretches(marked: Array) -> Iterator[tuple[int, int]]:
    """First and last index of each run of True."""
    edges = np.flatnonzero(np.diff(np.concatenate(([False], marked, [False])).astype(int)))
    yield from ((int(start), int(stop) - 1) for start, stop in edges.reshape(-1, 2))


def _lines(table: LogTable, first: int, last: int) -> tuple[int, int]:
    return int(table.lines[first]), int(table.lines[last])


def _time(table: LogTable) -> Iterator[Finding]:
    time = table.columns["time"]
    steps = np.diff(time)
    if not steps.size:
        return
    usual = float(np.median(steps[steps > 0])) if np.any(steps > 0) else 0.0
    kinds = (
        (steps < 0, Severity.error, "time runs backward by {:g} s", "time that rises"),
        (steps == 0, Severity.error, "time is repeated", "time that rises"),
        (steps > _GAP * usual, Severity.warning, "gap of {:g} s", f"a row every {usual:g} s"),
    )
    for marked, severity, seen, expected in kinds:
        for first, last in _stretches(marked):
            size = float(np.max(np.abs(steps[first : last + 1])))
            lines = _lines(table, first, last + 1)
            yield Finding(severity, lines, "time", seen.format(size), expected)


def _ranges(table: LogTable) -> Iterator[Finding]:
    for signal, (lower, upper, expected) in _RANGES.items():
        values = table.columns.get(signal)
        if values is None:
            continue
        for first, last in _stretches((values < lower) | (values > upper)):
            worst = max(values[first : last + 1], key=lambda value: abs(value - lower))
            seen = f"reads {_number(table, signal, worst)}"
            yield Finding(Severity.error, _lines(table, first, last), signal, seen, expected)


def _shares(table: LogTable) -> Iterator[Finding]:
    for signal in ("floor_heat", "jacket_heat"):
        values = table.columns.get(signal)
        if values is None or table.units[signal] != "%" or not 0 < values.max() <= 0.01:
            continue
        marked = np.flatnonzero(values)
        lines = _lines(table, int(marked[0]), int(marked[-1]))
        seen = f"never above {values.max() * 100:g} %"
        expected = f'per cent; if 1 means full power, say units={{"{signal}": "1"}}'
        yield Finding(Severity.warning, lines, signal, seen, expected)


def _stuck(table: LogTable, signal: str, other: Array | None) -> Iterator[Finding]:
    time, values = table.columns["time"], table.columns[signal]
    heats = [table.columns[name] for name in ("floor_heat", "jacket_heat") if name in table.columns]
    heat = np.max(heats, axis=0)
    for first, last in _stretches(np.diff(values) == 0):
        rows = slice(first, last + 2)
        length = float(time[last + 1] - time[first])
        if length < _STUCK_TIME or _BOILING[0] <= values[first] <= _BOILING[1]:
            continue
        moved = 0.0 if other is None else float(np.ptp(other[rows]))
        if float(np.mean(heat[rows])) < _STUCK_HEAT and moved < _STUCK_OTHER:
            continue
        seen = f"reads {_number(table, signal, values[first])} without change for {length:g} s"
        expected = "a reading that moves while the kettle is heated; is the sensor stuck?"
        lines = _lines(table, first, last + 1)
        yield Finding(Severity.warning, lines, signal, seen, expected)


def _number(table: LogTable, signal: str, value: float) -> str:
    """A value as the file has it."""
    unit = table.units[signal]
    return f"{float(units.in_unit(value, unit, table.kind(signal))):.5g} {unit}"


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
    seen = f"reads {_number(table, reached.signal, value)} where {goal} was reached"
    return Finding(
        Severity.error,
        _lines(table, row, row),
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
    highest = _number(table, "probe", probe[rows].max())
    seen = f"up to {highest}, {length:g} s above {units.as_text(_TOO_HOT, 'temperature')}"
    known = "with a product of mostly water" if pours is not None else "the pours are not known"
    yield Finding(
        Severity.note if pours is None else Severity.error,
        _lines(table, int(rows[0]), int(rows[-1])),
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
