"""The time column of a log: elapsed time, or times of a clock."""

from __future__ import annotations

import datetime
import itertools
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from . import units
from .file_model import plain_name
from .findings import Array, Finding, Severity
from .log_dates import dated_moments
from .log_numbers import decimal_mark, number
from .log_options import LogOptions, zone_named
from .log_rows import Rows
from .log_signals import CLOCK, COLONS
from .log_stamps import Stamp, date_alone, stamp
from .log_zone import Moment, to_universal

_DAY = datetime.timedelta(days=1)
_NO_DATE = datetime.datetime(1970, 1, 1)
_COLONS = re.compile(r"(?:([0-9]+):)?([0-9]+):([0-5][0-9])(?:[.,]([0-9]+))?")


@dataclass(frozen=True)
class LogClock:
    """The clock that a log was written by.

    Attributes
    ----------
    origin :
        What counts as 0 s; in UTC if the offset of the clock is known, else without a zone.
    dated :
        Whether the times had dates.
    zone :
        Of the clock, if it is known.
    """

    origin: Moment
    dated: bool
    zone: datetime.tzinfo | None

    @property
    def started(self) -> Moment | None:
        """The origin by the clock of the log, None without dates."""
        if not self.dated:
            return None
        return self.origin if self.zone is None else self.origin.astimezone(self.zone)


@dataclass(frozen=True)
class TimeColumn:
    """Times of a log.

    Attributes
    ----------
    values :
        [s], NaN where a cell cannot be read; times of a clock count from the first of them.
    unit :
        Of the file: a unit of time, a way to write it with colons, or "clock".
    clock :
        None for elapsed time.
    findings :
        Midnights, changes of the clock.
    """

    values: Array
    unit: str
    clock: LogClock | None
    findings: tuple[Finding, ...]


def read_time(rows: Rows, place: int, unit: str | None, options: LogOptions) -> TimeColumn:
    """The times in a column.

    Parameters
    ----------
    rows :
        Cells of the log.
    place :
        Index of the column.
    unit :
        A unit of time, "h:mm:ss", "mm:ss" or "clock"; None to tell it from the cells.
    options :
        Decimal mark, order of day and month, zone.

    Raises
    ------
    FileFormatError
        Ways to write times are mixed, a date may be read in two ways, or the cells do not tell
        whether they are times of a clock.
    """
    passed = unit is not None and unit != CLOCK
    cells = _column(rows, place) if passed else _with_dates(rows, place)
    told = unit or _unit_of(rows, cells, rows.header[place])
    if told == CLOCK:
        return _clock(rows, cells, options)
    if told in COLONS:
        values = np.array([_elapsed(cell, told) for cell in cells])
    else:
        mark = decimal_mark(rows, [place], options.decimal)
        numbers = np.array([number(cell, mark) for cell in cells])
        values = units.to_si(numbers, told, "time")
    return TimeColumn(values, told, None, _zone_unused(rows, options, "elapsed times"))


def _column(rows: Rows, place: int) -> list[str]:
    return [rows.cell(row, place) for row in range(len(rows.cells))]


def _with_dates(rows: Rows, place: int) -> list[str]:
    """Cells of the column, each behind its date if that stands in a column of its own."""
    cells = _column(rows, place)
    names = [plain_name(name) for name in rows.header]
    if names.count("date") != 1 or names.index("date") == place:
        return cells
    dates = [date_alone(rows.cell(row, names.index("date"))) for row in range(len(cells))]
    times = [stamp(cell) for cell in cells]
    fits = any(dates) and all(one is None or one.date is None for one in times)
    if not fits:
        return cells
    return [f"{date} {cell}" if date else cell for date, cell in zip(dates, cells, strict=True)]


def _unit_of(rows: Rows, cells: Sequence[str], column: str) -> str:
    """How times are written where neither the name of the column nor the caller tells."""
    filled = [(line, cell) for line, cell in zip(rows.lines, cells, strict=True) if cell]
    stamps = [one for _, cell in filled if (one := stamp(cell)) is not None]
    if any(one.date is not None for one in stamps):
        return CLOCK
    elapsed = [value for _, cell in filled if not math.isnan(value := _elapsed(cell, "h:mm:ss"))]
    if elapsed and len(elapsed) > len(stamps):
        return "h:mm:ss"  # hours beyond 23 are on no clock
    if elapsed and elapsed[0] == 0.0 and all(b >= a for a, b in itertools.pairwise(elapsed)):
        return "h:mm:ss"  # from 0:00:00 both readings are the same
    line, cell = filled[0] if filled else (rows.header_line, "")
    if stamps or not math.isnan(_elapsed(cell, "mm:ss")):
        raise rows.refused(
            f'time "{cell}" may be a time of day or a time that has passed; say '
            'units={"time": "clock"}, or units={"time": "h:mm:ss"} or "mm:ss"',
            key=column,
            line=line,
        )
    raise rows.refused(
        f'the name of column "{column}" does not tell the unit of "time", and "{cell}" is no time '
        'of a clock; say it with units={"time": "min"}; allowed: s, min, h, h:mm:ss, mm:ss, clock',
        key=column,
    )


def _elapsed(cell: str, way: str) -> float:
    """A time such as 1:02:03 or 62:03 [s]; NaN if the cell is none."""
    found = _COLONS.fullmatch(cell)
    if found is None or (found[1] is None) != (way == "mm:ss"):
        return math.nan
    if found[1] is not None and int(found[2]) > 59:
        return math.nan
    part = float(f"0.{found[4] or 0}")
    return 3600.0 * int(found[1] or 0) + 60.0 * int(found[2]) + int(found[3]) + part


def _zone_unused(rows: Rows, options: LogOptions, why: str) -> tuple[Finding, ...]:
    if options.zone is None:
        return ()
    lines = (rows.header_line, rows.header_line)
    seen = f'zone "{options.zone}" was not used: the log has {why}'
    return (Finding(Severity.note, lines, "time", seen, "dates and times of a local clock"),)


def _clock(rows: Rows, cells: Sequence[str], options: LogOptions) -> TimeColumn:
    stamps = [stamp(cell) for cell in cells]
    first = _one_style(rows, cells, stamps)
    if first is None:
        nothing = np.full(len(cells), math.nan)
        return TimeColumn(nothing, CLOCK, LogClock(_NO_DATE, False, None), ())
    findings: list[Finding] = []
    zone: datetime.tzinfo | None = None
    if first.date is None:
        moments, findings = _days_counted(rows, cells, stamps)
        findings += _zone_unused(rows, options, "times without dates")
    else:
        moments = dated_moments(rows, cells, stamps, options.dates)
        if first.offset is not None:
            zone = _fixed_zone(stamps)
            findings += _zone_unused(rows, options, "times with their own offset")
        elif options.zone is not None:
            named = zone_named(options.zone)
            zone = named
            moments, findings = to_universal(rows, moments, rows.lines, named)
    origin = next((one for one in moments if one is not None), _NO_DATE)
    seconds = [math.nan if one is None else (one - origin).total_seconds() for one in moments]
    clock = LogClock(origin, first.date is not None, zone)
    return TimeColumn(np.array(seconds), CLOCK, clock, tuple(findings))


def _fixed_zone(stamps: Sequence[Stamp | None]) -> datetime.tzinfo:
    offset = next((one.offset for one in stamps if one is not None), None)
    return datetime.timezone(offset or datetime.timedelta())


def _one_style(rows: Rows, cells: Sequence[str], stamps: Sequence[Stamp | None]) -> Stamp | None:
    """The first stamp; all others must be written alike."""
    first: tuple[int, Stamp] | None = None
    for row, one in enumerate(stamps):
        if one is None:
            continue
        if first is None:
            first = (row, one)
        elif one.style != first[1].style:
            raise rows.refused(
                f'time "{cells[row]}" is written in another way than "{cells[first[0]]}" on line '
                f"{rows.lines[first[0]]}; allowed: one way in a column",
                key="time",
                line=rows.lines[row],
            )
    return None if first is None else first[1]


def _days_counted(
    rows: Rows, cells: Sequence[str], stamps: Sequence[Stamp | None]
) -> tuple[list[Moment | None], list[Finding]]:
    """Times of day; one that falls by more than half a day belongs to the next day."""
    moments: list[Moment | None] = []
    findings: list[Finding] = []
    day, last = _NO_DATE, None
    for row, one in enumerate(stamps):
        if one is None:
            moments.append(None)
            continue
        if last is not None and stamps[last].day_time - one.day_time > _DAY / 2:  # type: ignore[union-attr]
            day += _DAY
            lines = (rows.lines[last], rows.lines[row])
            seen = f'"{cells[last]}", then "{cells[row]}": taken as past midnight'
            findings.append(Finding(Severity.note, lines, "time", seen, "dates with the times"))
        last = row
        moments.append(day + one.day_time)
    return moments, findings


def seconds_between(clock: LogClock, later: LogClock) -> float:
    """From the origin of one clock to that of another, both known alike [s]."""
    seconds = (later.origin - clock.origin).total_seconds()
    return seconds + 86400.0 if not clock.dated and seconds < -43200.0 else seconds
