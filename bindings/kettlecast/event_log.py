"""What the operator did during a run and when, from a CSV file beside the log."""

from __future__ import annotations

import enum
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from . import _core, units
from .errors import InvalidArgument, UnknownName
from .file_model import nearest, plain_name
from .findings import Finding, Severity
from .foods import food
from .log_clock import LogClock, TimeColumn, read_time, seconds_between
from .log_options import LogOptions
from .log_rows import Rows, read_rows
from .log_signals import Heading, count_known, heading

_ADD = re.compile(r"(.+?) ([+-]?[\d.,]+ ?[A-Za-z]+) at (.+)")


class EventKind(enum.Enum):
    """What happened, with the word used in the file."""

    phase_start = "phase start"
    add = "add"
    set_point_reached = "set point reached"
    lid_on = "lid on"
    lid_off = "lid off"
    end = "end"
    note = "note"


@dataclass(frozen=True)
class Event:
    """One line of an events file.

    Attributes
    ----------
    time :
        From the start of the log's clock [s].
    kind :
        What happened.
    detail :
        As in the file: number of the phase, "food 8 kg at 5 C", or free text of a note.
    phase :
        Number of the phase it happened in, from 1; 0 before the first.
    line :
        Line of the file, from 1.
    """

    time: float
    kind: EventKind
    detail: str
    phase: int
    line: int


def read_events(
    path: str | Path, options: LogOptions, clock: LogClock | None = None
) -> tuple[tuple[Event, ...], list[Finding]]:
    """Events of a file with the columns time_s (or another name of the time), event, detail.

    Elapsed times count as those of the log, from its first row if the log has times of a clock.

    Parameters
    ----------
    path :
        Of the events file.
    options :
        As for the log: decimal mark, order of day and month, zone.
    clock :
        Of the log; None if it has elapsed time.

    Raises
    ------
    FileFormatError
        A column is missing, an event is not known, times fall, phases are not numbered 1, 2,
        ..., or the events have times of a clock that the log's cannot be compared with.
    """
    rows = read_rows(path, _count_known)
    place, unit = _time_column(rows)
    zone = options.zone if clock is not None and clock.zone is not None else None
    column = read_time(rows, place, unit, replace(options, zone=zone))
    shift = _shift(rows, column, clock)
    places = [_place(rows, "event"), _place(rows, "detail")]
    found: list[Event] = []
    for row, line in enumerate(rows.lines):
        cell, word, detail = (rows.cell(row, at) for at in (place, *places))
        kind = _kind(rows, line, word, detail)
        time = _event_time(rows, line, cell, column, row) + shift
        if found and time < found[-1].time:
            raise rows.refused(f"time {cell} lies before the line above", line=line)
        phase = found[-1].phase if found else 0
        if kind is EventKind.phase_start:
            phase += 1
            if detail != str(phase):
                raise rows.refused(f'phase start "{detail}": the next phase is {phase}', line=line)
        found.append(Event(time, kind, detail, phase, line))
    told = [replace(one, signal="events") for one in (*rows.findings, *column.findings)]
    return tuple(found), told


def _count_known(cells: Sequence[str]) -> int:
    return count_known(cells, ("event", "detail"))


def _time_column(rows: Rows) -> tuple[int, str | None]:
    told = [(heading(column), at) for at, column in enumerate(rows.header)]
    mine = sorted(((one.rank, at, one) for one, at in told if one.signal == "time"), key=_first)
    if not mine:
        return _place(rows, "time_s"), "s"
    _, at, one = mine[0]
    if one.unit is None and one.told:
        raise rows.refused(
            f'column "{rows.header[at]}": unit "{one.told}" is not known for "time"; '
            "allowed: s, min, h, h:mm:ss, mm:ss, clock",
            key="time",
        )
    return at, one.unit


def _first(entry: tuple[int, int, Heading]) -> tuple[int, int]:
    return entry[:2]


def _place(rows: Rows, column: str) -> int:
    if column not in rows.header:
        there = ", ".join(rows.header)
        raise rows.refused(f'no column "{column}"; columns there are: {there}', key=column)
    return rows.header.index(column)


def _shift(rows: Rows, column: TimeColumn, clock: LogClock | None) -> float:
    """From the origin of the log to that of the events [s]."""
    mine = column.clock
    if mine is None:
        return 0.0
    kinds = [_clock_kind(one) for one in (mine, clock)]
    if clock is None or kinds[0] != kinds[1]:
        raise rows.refused(
            f"the events have {kinds[0]}, the log has {kinds[1]}; allowed: the same in both, or "
            "time_s, counted from the first row of the log",
            key="time",
        )
    return seconds_between(clock, mine)


def _clock_kind(clock: LogClock | None) -> str:
    if clock is None:
        return "elapsed times"
    if not clock.dated:
        return "times of day"
    return "dates and times" + ("" if clock.zone is None else " of a known zone")


def _kind(rows: Rows, line: int, word: str, detail: str) -> EventKind:
    words = {kind.value: kind for kind in EventKind}
    full = f"lid {detail}" if word == "lid" else word
    if full not in words:
        raise rows.refused(
            f'event "{full}" is not known{nearest(full, words)}; allowed: {", ".join(words)}',
            key="event",
            line=line,
        )
    return words[full]


def _event_time(rows: Rows, line: int, cell: str, column: TimeColumn, row: int) -> float:
    value = float(column.values[row])
    if not math.isnan(value):
        return value
    if column.clock is not None or ":" in column.unit:
        raise rows.refused(f'time "{cell}" is not written as {column.unit}', key="time", line=line)
    try:
        return units.parse(f"{cell} {column.unit}", "time")
    except InvalidArgument as error:
        raise rows.refused(str(error), key="time", line=line) from error


def pours_from(
    events: Sequence[Event], recipe: _core.Recipe | None, path: str | Path
) -> tuple[tuple[tuple[float, _core.Addition], ...], tuple[float, ...], list[Finding]]:
    """Time [s] and addition of each `add` event, lateness of those that were planned, findings.

    Food, mass and temperature come from the event; piece size, shape and pour time from the
    addition of that name in the recipe, first of the phase the event lies in, then of any phase.

    Parameters
    ----------
    events :
        As `read_events` returns them.
    recipe :
        May be None; then every addition is a liquid poured at once.
    path :
        Of the events file, for messages.

    Raises
    ------
    FileFormatError
        A detail that is not "food mass at temperature", or a food that is not known.
    """
    rows = Rows(str(path))
    starts = {event.phase: event.time for event in events if event.kind is EventKind.phase_start}
    waiting = _planned(recipe)
    pours: list[tuple[float, _core.Addition]] = []
    late: list[float] = []
    findings: list[Finding] = []
    for event in events:
        if event.kind is not EventKind.add:
            continue
        name, mass, temperature = _added(rows, event)
        delay = event.time - starts.get(event.phase, event.time)
        phase, planned = _take(waiting, name, event.phase)
        if planned is None:
            planned = _unplanned(rows, event, name)
            findings.append(_not_planned(event, name, recipe))
        elif phase == event.phase:
            late.append(delay - planned.delay)
        changed = planned.replace(mass=mass, temperature=temperature, delay=delay)
        pours.append((event.time, changed))
    return tuple(pours), tuple(late), findings


def _added(rows: Rows, event: Event) -> tuple[str, float, float]:
    found = _ADD.fullmatch(" ".join(event.detail.split()))
    if found is None:
        told = f'add "{event.detail}": write food, mass and temperature as "onion 8 kg at 5 C"'
        raise rows.refused(told, key="detail", line=event.line)
    try:
        return found[1], units.mass(found[2]), units.temperature(found[3])
    except InvalidArgument as error:
        raise rows.refused(f"add: {error}", key="detail", line=event.line) from error


def _planned(recipe: _core.Recipe | None) -> list[tuple[int, _core.Addition]]:
    """Additions of the recipe that no event has used yet, with the number of their phase."""
    phases = recipe.phases if recipe is not None else []
    return [
        (number, addition)
        for number, phase in enumerate(phases, start=1)
        for addition in phase.additions
    ]


def _take(
    waiting: list[tuple[int, _core.Addition]], name: str, phase: int
) -> tuple[int, _core.Addition | None]:
    """Phase and addition of that name, first of the phase; 0 and None if there is none."""
    wanted = plain_name(name)
    named = [entry for entry in waiting if plain_name(entry[1].name) == wanted]
    if not named:
        return 0, None
    taken = next((entry for entry in named if entry[0] == phase), named[0])
    waiting.remove(taken)
    return taken


def _unplanned(rows: Rows, event: Event, name: str) -> _core.Addition:
    try:
        return _core.Addition(name=name, food=food(name))
    except UnknownName as error:
        raise rows.refused(f"add: {error}", key="detail", line=event.line) from error


def _not_planned(event: Event, name: str, recipe: _core.Recipe | None) -> Finding:
    lines = (event.line, event.line)
    if recipe is None:
        seen = f'"{name}" taken as a liquid poured at once, because no recipe was given'
        return Finding(
            Severity.note, lines, "events", seen, "recipe=, for piece size and pour time"
        )
    seen = f'"{name}" is not (or not so often) in recipe "{recipe.name}", taken as a liquid'
    expected = "the recipe that was cooked; see with_more"
    return Finding(Severity.warning, lines, "events", seen, expected)
