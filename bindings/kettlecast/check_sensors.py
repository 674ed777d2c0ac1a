"""Checks of what sensors show: range, stuck, clipped and swapped sensors, spikes."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from .findings import Array, Finding, Severity, stretches
from .log_columns import HEAT
from .log_table import LogTable

# what sensors and drives of a kettle can show, in SI; common practice, no source
_RANGES = {
    "floor": (233.15, 673.15, "-40 to 400 degC"),
    "probe": (233.15, 523.15, "-40 to 250 degC"),
    "floor_heat": (0.0, 1.0, "0 to 100 %"),
    "jacket_heat": (0.0, 1.0, "0 to 100 %"),
    "agitator": (0.0, 50.0, "0 to 3000 rpm"),
}
_STUCK_TIME = 300.0  # [s]; the steadiest reading seen in a hold stays 20 s
_STUCK_HEAT = 0.2  # mean share of the heat at which a reading must move
_STUCK_OTHER = 10.0  # change of the other sensor at which a reading must move [K]
# readings that boiling (sea level to 3000 m) and melting ice may hold steady [K]
_STEADY = ((361.15, 376.15), (272.15, 274.15))
_SPIKE = 5.0  # a single reading that jumps by more than this and returns [K]
_SPIKE_NOISE = 12.0  # and by more than this many times the usual scatter
_FEW_SPIKES = 5  # more than this are told in one finding
_CLIPPED_TIME = 60.0  # a reading that stays at its limit at least this long [s]
_CLIPPED_RISE = 5.0  # while it should have moved this much, at half its rate before [K]
_APPROACH = 60.0  # how long before the limit its rate is taken [s]
_RECENT = 300.0  # and how long before the heat that made it rise [s]
_STAYS_ON = 0.8  # share of that heat that must still be on at an upper limit
_SWAPPED = 5.0  # a probe this much above a heated floor is suspect [K]
_SWAPPED_TIME = 300.0  # if so for this long [s]
_SWAPPED_SHARE = 0.8  # and for this share of the heated time


def check_sensors(table: LogTable) -> Iterator[Finding]:
    """Findings about single signals, and about floor and probe together."""
    yield from _ranges(table)
    for signal, other in (("probe", "floor"), ("floor", "probe")):
        if signal not in table.columns:
            continue
        yield from _spikes(table, signal)
        clipped = list(_clipped(table, signal))
        yield from clipped
        for one in _stuck(table, signal, table.columns.get(other)):
            inside = any(a.lines[0] <= one.lines[1] and one.lines[0] <= a.lines[1] for a in clipped)
            if not inside:
                yield one
    yield from _swapped(table)


def _ranges(table: LogTable) -> Iterator[Finding]:
    for signal, (lower, upper, expected) in _RANGES.items():
        values = table.columns.get(signal)
        if values is None:
            continue
        for first, last in stretches((values < lower) | (values > upper)):
            worst = max(values[first : last + 1], key=lambda value: abs(value - lower))
            seen = f"reads {table.text(signal, worst)}"
            limits = "0 to 1" if table.units[signal] == "1" else expected
            yield Finding(Severity.error, table.between(first, last), signal, seen, limits)


def _stuck(table: LogTable, signal: str, other: Array | None) -> Iterator[Finding]:
    time, values = table.columns["time"], table.columns[signal]
    heat = table.heat()
    for first, last in stretches(np.diff(values) == 0):
        rows = slice(first, last + 2)
        length = float(time[last + 1] - time[first])
        if length < _STUCK_TIME or _held(values[first]):
            continue
        moved = 0.0 if other is None else float(np.ptp(other[rows]))
        heated = heat is not None and float(np.mean(heat[rows])) >= _STUCK_HEAT
        if not heated and moved < _STUCK_OTHER:
            continue
        seen = f"reads {table.text(signal, values[first])} without change for {length:g} s"
        expected = "a reading that moves while the kettle is heated; is the sensor stuck?"
        lines = table.between(first, last + 1)
        yield Finding(Severity.warning, lines, signal, seen, expected)


def _held(value: float) -> bool:
    """Whether boiling or melting may hold a reading steady."""
    return any(lower <= value <= upper for lower, upper in _STEADY)


def _spikes(table: LogTable, signal: str) -> Iterator[Finding]:
    values = table.columns[signal]
    if values.size < 3:
        return
    middle, before, after = values[1:-1], values[:-2], values[2:]
    up, down = middle - before, middle - after
    scatter = 1.4826 * float(np.median(np.abs(middle - 0.5 * (before + after))))
    limit = max(_SPIKE, _SPIKE_NOISE * scatter)
    jumps = np.minimum(np.abs(up), np.abs(down)) > limit
    returns = (up * down > 0.0) & (np.abs(before - after) < 0.5 * np.abs(up))
    lower, upper, _ = _RANGES[signal]
    known = (middle < lower) | (middle > upper)  # told as out of range
    rows = np.flatnonzero(jumps & returns & ~known) + 1
    expected = "a reading between those beside it; a loose contact?"
    if rows.size > _FEW_SPIKES:
        size = float(np.max(np.abs(up)[rows - 1]))
        seen = f"{rows.size} single readings jump by up to {size:.3g} K and return"
        lines = table.between(int(rows[0]), int(rows[-1]))
        yield Finding(Severity.warning, lines, signal, seen, expected)
        return
    for row in map(int, rows):
        told = table.text(signal, values[row])
        seen = f"jumps to {told} from {table.text(signal, values[row - 1])} and returns"
        yield Finding(Severity.warning, table.between(row, row), signal, seen, expected)


def _clipped(table: LogTable, signal: str) -> Iterator[Finding]:
    values, time = table.columns[signal], table.columns["time"]
    for limit, word, sign in ((values.max(), "highest", 1.0), (values.min(), "lowest", -1.0)):
        if _held(limit):
            continue
        held = [
            (first, last)
            for first, last in stretches(values == limit)
            if time[last] - time[first] >= _CLIPPED_TIME
            and _cut_off(table, signal, first, last, sign)
        ]
        if not held:
            continue
        length = sum(float(time[last] - time[first]) for first, last in held)
        seen = f"stays at its {word} value, {table.text(signal, limit)}, for {length:g} s"
        expected = "a reading that goes on as before; is this the limit of the sensor?"
        lines = table.between(held[0][0], held[-1][1])
        yield Finding(Severity.warning, lines, signal, seen, expected)


def _cut_off(table: LogTable, signal: str, first: int, last: int, sign: float) -> bool:
    """Whether a reading came to its limit so fast that it should have gone on beyond it."""
    time, values = table.columns["time"], table.columns[signal]
    start = int(np.searchsorted(time, time[first] - _APPROACH))
    if start >= first:
        return False
    rate = sign * float(values[first] - values[start]) / float(time[first] - time[start])
    if rate <= 0.0 or 0.5 * rate * (time[last] - time[first]) < _CLIPPED_RISE:
        return False
    due = time[first] + 2.0 * _CLIPPED_RISE / rate  # by then it should have moved
    return sign < 0.0 or _still_heated(table, (time >= time[first]) & (time <= due), time[first])


def _still_heated(table: LogTable, rows: Array, since: float) -> bool:
    """Whether the heat of the last minutes before stays on in the rows."""
    time = table.columns["time"]
    recent = (time >= since - _RECENT) & (time <= since)
    heats = [table.columns[signal] for signal in HEAT if signal in table.columns]
    return all(np.mean(heat[rows]) >= _STAYS_ON * np.max(heat[recent]) for heat in heats)


def _swapped(table: LogTable) -> Iterator[Finding]:
    """A floor that is heated is hotter than what lies on it; the other way round they are swapped.

    Only rows with the floor heater on count: with the jacket alone the product may be hotter.
    """
    floor, probe = table.columns.get("floor"), table.columns["probe"]
    heat = table.columns.get("floor_heat")
    if floor is None or heat is None:
        return
    lengths = np.clip(np.diff(table.columns["time"], append=table.columns["time"][-1]), 0.0, None)
    heated = heat > 0.0
    above = heated & (probe > floor + _SWAPPED)
    long, whole = float(lengths[above].sum()), float(lengths[heated].sum())
    if long < _SWAPPED_TIME or long < _SWAPPED_SHARE * whole:
        return
    rows = np.flatnonzero(above)
    most = float(np.max((probe - floor)[above]))
    seen = f"up to {most:.3g} K below the probe for {long:g} of {whole:g} s with the floor heat on"
    expected = (
        "a heated floor hotter than the probe; if the sensors are exchanged, name their columns "
        'with columns={"floor": ..., "probe": ...}'
    )
    lines = table.between(int(rows[0]), int(rows[-1]))
    yield Finding(Severity.error, lines, "floor", seen, expected)
