"""Local clock times to universal time, with the hours that a change of the clock skips or repeats.

Source: fold of a local time as in PEP 495, zones of the IANA time zone database.
"""

from __future__ import annotations

import datetime
import itertools
from collections.abc import Iterator, Sequence
from zoneinfo import ZoneInfo

from .errors import FileFormatError
from .findings import Finding, Severity
from .log_rows import Rows

Moment = datetime.datetime
_UTC = datetime.UTC


def to_universal(
    rows: Rows, moments: Sequence[Moment | None], lines: Sequence[int], zone: ZoneInfo
) -> tuple[list[Moment | None], list[Finding]]:
    """Times of a local clock as universal times, in the order of the rows.

    Where an hour is repeated the first pass is taken until the clock falls back.

    Parameters
    ----------
    rows :
        The file, for messages.
    moments :
        Local times without zone; None where a cell could not be read.
    lines :
        Line of each.
    zone :
        Of the clock.

    Raises
    ------
    FileFormatError
        A time that the clock of the zone skipped.
    """
    found: list[Moment | None] = []
    last: Moment | None = None
    for moment, line in zip(moments, lines, strict=True):
        if moment is None:
            found.append(None)
            continue
        first, second = ((moment.replace(tzinfo=zone, fold=f)).astimezone(_UTC) for f in (0, 1))
        if first > second:
            raise _skipped(rows, moment, line, zone)
        last = second if last is not None and first < last <= second else first
        found.append(last)
    told = [*_changes(found, lines, zone), *_unsure(found, moments, lines, zone)]
    return found, told


def _skipped(rows: Rows, moment: Moment, line: int, zone: ZoneInfo) -> FileFormatError:
    return rows.refused(
        f'time "{moment}" does not exist in {zone.key}: the clock was set forward past it; if the '
        'clock of the log is not changed in summer, say the zone of its offset, such as "Etc/GMT-1"'
        " for UTC+1",
        key="time",
        line=line,
    )


def _changes(
    found: Sequence[Moment | None], lines: Sequence[int], zone: ZoneInfo
) -> Iterator[Finding]:
    """Notes about the rows between which the offset of the zone changes."""
    known = [(at, line) for at, line in zip(found, lines, strict=True) if at is not None]
    for (before, first), (after, last) in itertools.pairwise(known):
        old, new = (at.astimezone(zone).utcoffset() for at in (before, after))
        if old is None or new is None or old == new:
            continue
        hours = (new - old).total_seconds() / 3600.0
        seen = f"the clock of {zone.key} changes by {hours:+g} h, taken out"
        yield Finding(Severity.note, (first, last), "time", seen, "no change of the clock")


def _unsure(
    found: Sequence[Moment | None],
    moments: Sequence[Moment | None],
    lines: Sequence[int],
    zone: ZoneInfo,
) -> Iterator[Finding]:
    """A note if times lie in a repeated hour and no row shows the clock fall back in it."""
    twice = [index for index, at in enumerate(found) if at is not None and _repeated(at, zone)]
    if not twice:
        return
    folds = {_local(found[index], zone).fold for index in twice}
    if 1 in folds:
        return
    first, last = lines[twice[0]], lines[twice[-1]]
    seen = f'"{moments[twice[0]]}" comes twice in {zone.key}; taken as the first of them'
    yield Finding(Severity.note, (first, last), "time", seen, "times with their offset from UTC")


def _local(moment: Moment | None, zone: ZoneInfo) -> Moment:
    assert moment is not None
    return moment.astimezone(zone)


def _repeated(moment: Moment, zone: ZoneInfo) -> bool:
    local = moment.astimezone(zone)
    return local.replace(fold=0).utcoffset() != local.replace(fold=1).utcoffset()
