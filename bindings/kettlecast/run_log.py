"""One logged run: readings, what the heaters and the agitator did, and what was poured when."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from . import _core
from .event_log import Event, EventKind, pours_from, read_events
from .findings import Array, Finding, Reached, Severity, check_table, check_temperature_units
from .log_table import LogTable, read_table

_Limits = tuple[tuple[float, float | None], ...]
_SIGNAL_OF = {_core.Regulated.floor: "floor", _core.Regulated.probe: "probe"}


@dataclass(frozen=True, eq=False)
class Run:
    """A logged run in SI units; all arrays have one value per row and are read-only.

    Attributes
    ----------
    name :
        Name of the file without its ending.
    time :
        [s]
    floor_reading, probe_reading :
        [K]; the floor reading is None if it was not logged.
    floor_heat, jacket_heat :
        Share of the nominal power [-], 0 to 1.
    agitator_speed :
        [1/s]
    events :
        What the operator did, in order; empty if there is no events file.
    pours :
        Start of the pour [s] and addition.
    phases :
        Start of each phase [s].
    reached :
        When the set point of each phase was reached [s]; None where it was not.
    covers :
        Time [s] and cover from then on: of the phases of the recipe, and `lid on`/`lid off`.
    jacket_limits :
        Time [s] and limit of the jacket from then on [K], None where the jacket does not heat;
        empty without a recipe.
    cooling_limits :
        Time [s] and limit of the cooling jacket from then on [K], None where the jacket does not
        cool; empty without a recipe.
    findings :
        What looks wrong in the log; nothing has been repaired.
    file, sha256 :
        Path of the log and checksum of its bytes.
    lateness :
        How much later each pour began than the recipe plans [s], below 0 for earlier; only pours
        that lie in their phase of a recipe.
    """

    name: str
    time: Array
    floor_reading: Array | None
    probe_reading: Array
    floor_heat: Array
    jacket_heat: Array
    agitator_speed: Array
    events: tuple[Event, ...]
    pours: tuple[tuple[float, _core.Addition], ...]
    phases: tuple[float, ...]
    reached: tuple[float | None, ...]
    covers: tuple[tuple[float, _core.Cover], ...]
    jacket_limits: tuple[tuple[float, float | None], ...]
    cooling_limits: tuple[tuple[float, float | None], ...]
    findings: tuple[Finding, ...]
    file: str
    sha256: str
    lateness: tuple[float, ...] = ()


def read_run(
    path: str | Path,
    *,
    recipe: _core.Recipe | None = None,
    events: str | Path | None = None,
    columns: Mapping[str, str] | None = None,
    units: Mapping[str, str] | None = None,
) -> Run:
    """A logged run from a CSV file.

    Columns are found by name: time_s, floor_C, probe_C, floor_heat_pct, jacket_heat_pct,
    agitator_rpm, with the endings _s, _min, _h, _C, _F, _K, _pct and _rpm for the unit. Time, probe
    and the heat of floor or jacket are needed. Rows with a cell that cannot be read are left out
    and reported.

    Parameters
    ----------
    path :
        The log.
    recipe :
        What was cooked; gives piece sizes, shapes, pour times, covers and jacket limits.
    events :
        Events file; default: NAME.events.csv beside the log, if it is there.
    columns :
        Column of a signal, for example `{"probe": "T7_C"}`.
    units :
        Unit of a signal, for example `{"probe": "degF"}`.

    Raises
    ------
    FileFormatError
        The log is empty or lacks a column, or the events file cannot be understood.
    UnknownName
        `columns` or `units` names a signal that does not exist.

    Examples
    --------
    >>> from kettlecast.demo import demo_path
    >>> read_run(demo_path("water_boil_60kg.csv")).reached
    (1622.0,)
    """
    table = read_table(path, columns, units)
    events_path = _events_path(path, events)
    happened = read_events(events_path) if events_path else ()
    pours, late, doubts = pours_from(happened, recipe, events_path or path)
    phases = tuple(event.time for event in happened if event.kind is EventKind.phase_start)
    reached = _reached(happened, len(phases))
    findings = [*table.findings, *check_table(table), *doubts]
    goals = _goals(recipe, reached)
    findings += check_temperature_units(table, pours if happened else None, goals)
    findings += _events_against_log(table, happened)
    findings += _phases_against_recipe(recipe, happened, len(phases))
    limits, cooling = _jackets(recipe, phases)
    nothing = np.zeros_like(table.columns["time"])
    nothing.setflags(write=False)
    return Run(
        name=Path(path).stem,
        time=table.columns["time"],
        floor_reading=table.columns.get("floor"),
        probe_reading=table.columns["probe"],
        floor_heat=table.columns.get("floor_heat", nothing),
        jacket_heat=table.columns.get("jacket_heat", nothing),
        agitator_speed=table.columns.get("agitator", nothing),
        events=happened,
        pours=pours,
        phases=phases,
        reached=reached,
        covers=_covers(recipe, phases, happened, float(table.columns["time"][0])),
        jacket_limits=limits,
        cooling_limits=cooling,
        findings=tuple(findings),
        file=table.file,
        sha256=table.sha256,
        lateness=late,
    )


def _events_path(path: str | Path, events: str | Path | None) -> Path | None:
    if events is not None:
        return Path(events)
    beside = Path(path).with_suffix(".events.csv")
    return beside if beside.exists() else None


def _reached(events: Sequence[Event], phases: int) -> tuple[float | None, ...]:
    times: list[float | None] = [None] * phases
    for event in events:
        if event.kind is EventKind.set_point_reached and event.phase > 0:
            times[event.phase - 1] = event.time
    return tuple(times)


def _goals(recipe: _core.Recipe | None, reached: Sequence[float | None]) -> list[Reached]:
    """Set points on floor or probe that were reached from another reading of the log."""
    pairs = zip(recipe.phases if recipe is not None else [], reached, strict=False)
    return [
        Reached(time, _SIGNAL_OF[phase.regulated], phase.set_point)
        for phase, time in pairs
        if time is not None and phase.regulated in _SIGNAL_OF
    ]


def _covers(
    recipe: _core.Recipe | None,
    phases: Sequence[float],
    events: Sequence[Event],
    start: float,
) -> tuple[tuple[float, _core.Cover], ...]:
    planned = recipe.phases if recipe is not None else []
    steps = [(time, phase.cover) for time, phase in zip(phases, planned, strict=False)]
    lids = {EventKind.lid_on: _core.Cover.lid, EventKind.lid_off: _core.Cover.open}
    steps += [(event.time, lids[event.kind]) for event in events if event.kind in lids]
    steps.sort(key=lambda step: step[0])
    return tuple(steps) if steps and steps[0][0] <= start else ((start, _core.Cover.open), *steps)


def _jackets(recipe: _core.Recipe | None, phases: Sequence[float]) -> tuple[_Limits, _Limits]:
    """Limits of the jacket where it heats, and where it cools."""
    use = _core.JacketUse
    pairs = list(zip(phases, recipe.phases if recipe is not None else [], strict=False))
    limits = [(at, one.jacket_limit if one.jacket == use.heat else None) for at, one in pairs]
    cooling = [(at, one.jacket_cool_limit if one.jacket == use.cool else None) for at, one in pairs]
    return tuple(limits), tuple(cooling)


def _events_against_log(table: LogTable, events: Sequence[Event]) -> list[Finding]:
    if not events:
        seen = "no events file, so pours and phases are not known"
        expected = f"{Path(table.file).stem}.events.csv beside the log, or events="
        return [Finding(Severity.warning, (1, 1), "events", seen, expected)]
    time = table.columns["time"]
    slack = 2.0 * float(np.median(np.diff(time))) if time.size > 1 else 0.0
    first, last = float(time[0]) - slack, float(time[-1]) + slack
    return [
        Finding(
            Severity.warning,
            (event.line, event.line),
            "events",
            f"{event.kind.value} at {event.time:g} s lies outside of the log",
            f"a time from {time[0]:g} to {time[-1]:g} s, by the clock of the log",
        )
        for event in events
        if not first <= event.time <= last
    ]


def _phases_against_recipe(
    recipe: _core.Recipe | None, events: Sequence[Event], phases: int
) -> list[Finding]:
    if recipe is None or not events or phases == len(recipe.phases):
        return []
    seen = f'{phases} phases, recipe "{recipe.name}" has {len(recipe.phases)}'
    lines = (events[0].line, events[-1].line)
    return [Finding(Severity.warning, lines, "events", seen, "the recipe that was cooked")]
