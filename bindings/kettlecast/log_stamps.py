"""One cell of a clock column: ISO 8601 and the ways that spreadsheets and loggers write times."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass

_OFFSET = r"(?:\s*(?P<offset>Z|UTC|[+-][0-9]{2}(?::?[0-9]{2})?))?"
_TIME = (
    r"(?P<hour>[0-9]{1,2}):(?P<minute>[0-9]{2})(?::(?P<second>[0-9]{2})(?:[.,](?P<part>[0-9]+))?)?"
    r"(?:\s*(?P<half>[AaPp])\.?[Mm]\.?)?" + _OFFSET
)
_DATE = (
    r"(?:(?P<year>[0-9]{4})(?P<sep>[-/.])(?P<month>[0-9]{1,2})(?P=sep)(?P<day>[0-9]{1,2})"
    r"|(?P<one>[0-9]{1,2})(?P<mark>[-/.])(?P<two>[0-9]{1,2})(?P=mark)(?P<last>[0-9]{4}|[0-9]{2}))"
)
_STAMP = re.compile(rf"(?:{_DATE}(?:T|,?\s+))?{_TIME}")
# the basic format of ISO 8601, without separators
_BASIC = re.compile(r"([0-9]{4})([0-9]{2})([0-9]{2})T([0-9]{2})([0-9]{2})([0-9]{2})(.*)")
_FARTHEST = datetime.timedelta(hours=14)  # the largest offset that any zone has had in use
_DATE_ALONE = re.compile(rf"({_DATE})(?:[T ]00:00:00)?")


@dataclass(frozen=True)
class Stamp:
    """A time of a clock as written.

    Attributes
    ----------
    style :
        How it is written; stamps of one column must agree in it.
    date :
        Year, month and day; the two numbers before the year where their order is not known; or
        None for a time of day.
    year_first :
        Whether `date` is year, month, day.
    day_time :
        Since midnight of the clock.
    offset :
        From UTC, None if not written.
    """

    style: tuple[object, ...]
    date: tuple[int, int, int] | None
    year_first: bool
    day_time: datetime.timedelta
    offset: datetime.timedelta | None


def stamp(cell: str) -> Stamp | None:
    """The clock time in a cell, None if there is none."""
    basic = _BASIC.fullmatch(cell)
    found = _STAMP.fullmatch(cell if basic is None else _extended(basic))
    if found is None:
        return None
    day_time = _day_time(found)
    if day_time is None:
        return None
    offset = _offset(found["offset"])
    if offset is not None and abs(offset) > _FARTHEST:
        return None
    date = _date(found)
    separator = "" if basic is not None else found["sep"] or found["mark"]
    year_first = found["year"] is not None
    style = (year_first, separator, found["second"] is None, found["half"] is None, offset is None)
    return Stamp(style, date, year_first, day_time, offset)


def date_alone(cell: str) -> str | None:
    """The date in a cell that holds nothing else (or midnight, as spreadsheets do)."""
    found = _DATE_ALONE.fullmatch(cell)
    return None if found is None else found[1]


def _extended(basic: re.Match[str]) -> str:
    year, month, day, hour, minute, second, rest = basic.groups()
    return f"{year}-{month}-{day}T{hour}:{minute}:{second}{rest}"


def _date(found: re.Match[str]) -> tuple[int, int, int] | None:
    if found["year"]:
        return int(found["year"]), int(found["month"]), int(found["day"])
    if found["one"]:
        # a year of two figures is kept as it is; the reader of the column asks how dates are meant
        return int(found["one"]), int(found["two"]), int(found["last"])
    return None


def _day_time(found: re.Match[str]) -> datetime.timedelta | None:
    hour, minute, second = (int(found[name] or 0) for name in ("hour", "minute", "second"))
    if found["half"]:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if found["half"] in "Pp" else 0)
    if hour > 23 or minute > 59 or second > 59:
        return None
    micros = int((found["part"] or "")[:6].ljust(6, "0"))
    return datetime.timedelta(hours=hour, minutes=minute, seconds=second, microseconds=micros)


def _offset(text: str | None) -> datetime.timedelta | None:
    if text is None:
        return None
    if text in ("Z", "UTC"):
        return datetime.timedelta()
    digits = text[1:].replace(":", "").ljust(4, "0")
    size = datetime.timedelta(hours=int(digits[:2]), minutes=int(digits[2:]))
    return -size if text[0] == "-" else size
