"""Dates of a clock column: which number is the day, and which moment is meant."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from .log_rows import Rows
from .log_stamps import Stamp
from .log_zone import Moment

_YEARS = (1900, 2199)  # beyond them a time is an error of writing, and cannot be given a zone


def dated_moments(
    rows: Rows, cells: Sequence[str], stamps: Sequence[Stamp | None], dates: str | None
) -> list[Moment | None]:
    """Moments of stamps with dates; in UTC where they carry an offset, else without a zone.

    Parameters
    ----------
    rows :
        The file, for messages.
    cells, stamps :
        Text of each row, and what it says; None where it is no time.
    dates :
        "day first" or "month first"; None to tell it from all the dates.

    Raises
    ------
    FileFormatError
        A date may be read in two ways, does not exist, or lies far from the present.
    """
    day_first = _day_first(rows, cells, stamps, dates)
    return [
        None if one is None else _moment(rows, row, cells[row], one, day_first)
        for row, one in enumerate(stamps)
    ]


def _moment(rows: Rows, row: int, cell: str, one: Stamp, day_first: bool) -> Moment | None:
    if one.date is None:
        return None
    year, month, day = one.date
    order = ""
    if not one.year_first:
        (day, month), year = one.date[:2] if day_first else one.date[1::-1], one.date[2]
        year += 2000 if year < 100 else 0
        order = " (day first)" if day_first else " (month first)"
    if not _YEARS[0] <= year <= _YEARS[1]:
        told = f'time "{cell}" has the year {year}; allowed: {_YEARS[0]} to {_YEARS[1]}'
        raise rows.refused(told, key="time", line=rows.lines[row])
    try:
        moment = datetime.datetime(year, month, day) + one.day_time
    except ValueError as error:
        told = f'time "{cell}" has a date that does not exist{order}'
        raise rows.refused(told, key="time", line=rows.lines[row]) from error
    return moment if one.offset is None else (moment - one.offset).replace(tzinfo=datetime.UTC)


def _day_first(
    rows: Rows, cells: Sequence[str], stamps: Sequence[Stamp | None], told: str | None
) -> bool:
    """Whether dates such as 03/04/2026 begin with the day, by the file or as told."""
    if told is not None:
        return told == "day first"
    dates = [
        (row, one.date)
        for row, one in enumerate(stamps)
        if one is not None and one.date is not None and not one.year_first
    ]
    if not dates:
        return True
    by_day = next((row for row, date in dates if date[0] > 12), None)
    by_month = next((row for row, date in dates if date[1] > 12), None)
    short = next((row for row, date in dates if date[2] < 100), None)
    ways = 'say dates="day first" or dates="month first"'
    if by_day is not None and by_month is not None:
        told_both = f'"{cells[by_day]}" (line {rows.lines[by_day]})'
        raise rows.refused(
            f'time "{cells[by_month]}" begins with the month, but {told_both} with the day; '
            "allowed: one way in a column",
            key="time",
            line=rows.lines[by_month],
        )
    row = dates[0][0] if short is None else short
    if short is not None or (by_day is None and by_month is None):
        why = "a year of two figures" if short is not None else "no date of the file shows which"
        raise rows.refused(
            f'time "{cells[row]}" may begin with the day or the month, {why}; {ways}, '
            "or write dates as 2026-03-29",
            key="time",
            line=rows.lines[row],
        )
    return by_day is not None
