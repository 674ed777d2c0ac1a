"""Checks of the times of a log: order, gaps, changes of the clock and of the interval."""

from __future__ import annotations

import datetime
from collections.abc import Iterator

import numpy as np

from .findings import Array, Finding, Severity, stretches
from .log_table import LogTable

_GAP = 5.0  # a gap is longer than this many usual intervals
_WINDOW = 11  # steps whose median is the usual interval around a row
_OTHER_RATE = 1.5  # a sampling interval that differs by this factor is another one
_FEW_CHANGES = 5  # more changes of the interval than this are told in one sentence
_HOUR = 3600.0
_NEAR_HOUR = 60.0  # a step this close to one hour may be a change of the clock [s]
_SUNDAY = 6
_CHANGED_BEFORE = 4.0  # clocks are changed in the small hours, before this one [h]


def check_time(table: LogTable) -> Iterator[Finding]:
    """Findings about the times of a log."""
    time = table.columns["time"]
    steps = np.diff(time)
    if not steps.size:
        return
    usual = _usual(steps)
    changed = _clock_changes(table, steps, usual)
    yield from (_changed(table, row, steps[row]) for row in map(int, np.flatnonzero(changed)))
    yield from _backward(table, np.where(changed, usual, steps))
    yield from _gaps(table, np.where(changed, usual, steps), usual)
    yield from _rates(table, usual)


def _usual(steps: Array) -> Array:
    """Median of the rising steps around each step [s]."""
    rising = np.where(steps > 0.0, steps, np.nan)
    if np.all(np.isnan(rising)):
        return np.zeros_like(steps)
    filled = np.where(np.isnan(rising), np.nanmedian(rising), rising)
    half = min(_WINDOW, filled.size) // 2
    padded = np.pad(filled, half, mode="reflect") if half else filled
    windows = np.lib.stride_tricks.sliding_window_view(padded, 2 * half + 1)
    return np.asarray(np.median(windows, axis=1))


def _backward(table: LogTable, steps: Array) -> Iterator[Finding]:
    for first, last in stretches(steps < 0.0):
        size = float(np.max(np.abs(steps[first : last + 1])))
        seen = f"time runs backward by {size:g} s"
        lines = table.between(first, last + 1)
        yield Finding(Severity.error, lines, "time", seen, "time that rises")
    for first, last in stretches(steps == 0.0):
        rows = slice(first, last + 2)
        same = all(np.ptp(values[rows]) == 0.0 for values in table.columns.values())
        seen = "the row is repeated" if same else "time is repeated with other readings"
        lines = table.between(first, last + 1)
        yield Finding(Severity.error, lines, "time", seen, "time that rises")


def _gaps(table: LogTable, steps: Array, usual: Array) -> Iterator[Finding]:
    for first, last in stretches(steps > _GAP * usual):
        size, around = float(np.max(steps[first : last + 1])), float(usual[first])
        seen, expected = f"gap of {size:g} s", f"a row every {around:g} s"
        yield Finding(Severity.warning, table.between(first, last + 1), "time", seen, expected)


def _clock_changes(table: LogTable, steps: Array, usual: Array) -> Array:
    """Steps that look as if the clock was set forward or back by an hour between two rows.

    Clocks without a known zone only. Changes to and from summer time are made early on a Sunday
    nearly everywhere; other steps of an hour are gaps, or times that run backward.
    """
    if table.clock is None or table.clock.zone is not None:
        return np.zeros(steps.size, dtype=bool)
    slack = np.maximum(_NEAR_HOUR, 2.0 * usual)
    hour_long = np.abs(np.abs(steps - usual) - _HOUR) <= slack
    return np.array([bool(near) and _small_hours(table, row) for row, near in enumerate(hour_long)])


def _small_hours(table: LogTable, row: int) -> bool:
    assert table.clock is not None
    for at in (row, row + 1):
        moment = table.clock.origin + datetime.timedelta(seconds=float(table.columns["time"][at]))
        sunday = moment.weekday() == _SUNDAY or not table.clock.dated
        if sunday and moment.hour + moment.minute / 60.0 <= _CHANGED_BEFORE:
            return True
    return False


def _changed(table: LogTable, row: int, step: float) -> Finding:
    way = "forward" if step > 0 else "back"
    assert table.clock is not None
    dated = table.clock.dated
    how = 'say zone="Europe/Berlin" or another zone' if dated else "log dates, to say the zone"
    return Finding(
        Severity.error,
        table.between(row, row + 1),
        "time",
        f"the clock goes {way} by {abs(step):g} s: was it changed to or from summer time?",
        f"one clock throughout; {how}, or log times with their offset from UTC",
    )


def _rates(table: LogTable, usual: Array) -> Iterator[Finding]:
    """Notes about lines from which on the sampling interval is another."""
    starts = [0]
    for row in range(usual.size):
        before = usual[starts[-1]]
        other = max(before, usual[row]) > _OTHER_RATE * min(before, usual[row])
        stays = usual.size - row >= _WINDOW and np.ptp(usual[row : row + _WINDOW // 2]) == 0.0
        if other and stays:
            starts.append(row)
    if len(starts) == 1:
        return
    ends = [*starts[1:], usual.size]
    expected = "one interval throughout"
    if len(starts) > _FEW_CHANGES + 1:
        seen = f"rows every {usual.min():g} to {usual.max():g} s, in {len(starts)} stretches"
        yield Finding(Severity.note, table.between(0, usual.size), "time", seen, expected)
        return
    for start, end in zip(starts[1:], ends[1:], strict=True):
        seen = f"rows every {usual[start]:g} s, before every {usual[start - 1]:g} s"
        yield Finding(Severity.note, table.between(start, end), "time", seen, expected)
