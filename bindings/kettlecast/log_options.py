"""What a reader of a log may be told that the file itself does not say."""

from __future__ import annotations

import zoneinfo
from collections.abc import Mapping
from dataclasses import dataclass, field

from .errors import InvalidArgument, UnknownName
from .file_model import nearest
from .log_signals import SIGNALS

DATES = ("day first", "month first")
DECIMALS = (".", ",")


@dataclass(frozen=True)
class LogOptions:
    """How a log is to be read; see `read_run` for the meaning of each.

    Raises
    ------
    UnknownName
        A signal or a time zone that does not exist.
    InvalidArgument
        Another value that is not allowed.
    """

    columns: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    decimal: str | None = None
    sheet: str | None = None
    dates: str | None = None
    zone: str | None = None

    def __post_init__(self) -> None:
        """Refuse what is not allowed before any file is opened."""
        _check_signals(self.columns, "columns")
        _check_signals(self.units, "units")
        _check_choice(self.decimal, "decimal", DECIMALS)
        _check_choice(self.dates, "dates", DATES)
        if self.zone is not None:
            zone_named(self.zone)


def zone_named(name: str) -> zoneinfo.ZoneInfo:
    """A time zone by its name in the IANA database, such as "Europe/Berlin".

    Raises
    ------
    UnknownName
        No such zone; the message names the nearest.
    """
    try:
        return zoneinfo.ZoneInfo(name)
    except (zoneinfo.ZoneInfoNotFoundError, ValueError, OSError) as error:
        near = nearest(name, zoneinfo.available_timezones())
        raise UnknownName(
            f'zone: "{name}" is not known{near}; allowed: names of the IANA time zone database, '
            'such as "Europe/Berlin", "America/Chicago" or "UTC"'
        ) from error


def _check_signals(names: Mapping[str, str], argument: str) -> None:
    for name in names:
        if name not in SIGNALS:
            raise UnknownName(
                f'{argument}: signal "{name}" is not known{nearest(name, SIGNALS)}; '
                f"there are: {', '.join(SIGNALS)}"
            )


def _check_choice(value: str | None, argument: str, allowed: tuple[str, ...]) -> None:
    if value is not None and value not in allowed:
        listed = " or ".join(f'"{one}"' for one in allowed)
        raise InvalidArgument(f'{argument}: "{value}" is not allowed; allowed: {listed}')
