"""One logged run: readings, what the heaters and the agitator did, and what was poured when."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, get_args

import numpy as np

from . import _core
from .check_sensors import check_sensors
from .check_time import check_time
from .check_units import Reached, check_shares_and_speed, check_temperature_units
from .errors import InvalidArgument
from .event_log import Event, EventKind, pours_from, read_events
from .findings import Array, Finding, Severity
from .heat_inference import infer_heat, no_heat, unknown_heat
from .log_columns import HEAT, missing
from .log_options import LogOptions
from .log_table import LogTable, frozen, read_table
from .run_phases import (
    Covers,
    Limits,
    Pours,
    check_phases,
    covers_of,
    end_of,
    jackets_of,
    phases_as_they_happened,
)

HeatSource = Literal["logged", "inferred", "closed_loop", "none"]

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
    heat_source :
        "logged"; "inferred" from readings, recipe and controller; "closed_loop" if it is not known
        and the controller of the kettle switches it; or "none" if the caller said so.
    started :
        What the clock of the log showed at 0 s, with its zone if that is known; None if the log has
        elapsed time or times without dates.
    lateness :
        How much later each pour began than the recipe plans [s], below 0 for earlier; only pours
        that lie in their phase of a recipe.
    closed_loop :
        Phases as they happened, from the start of the first one on; empty unless the controller of
        the kettle switches the heat.
    """

    name: str
    time: Array
    floor_reading: Array | None
    probe_reading: Array
    floor_heat: Array
    jacket_heat: Array
    agitator_speed: Array
    events: tuple[Event, ...]
    pours: Pours
    phases: tuple[float, ...]
    reached: tuple[float | None, ...]
    covers: Covers
    jacket_limits: Limits
    cooling_limits: Limits
    findings: tuple[Finding, ...]
    file: str
    sha256: str
    heat_source: HeatSource = "logged"
    started: datetime.datetime | None = None
    lateness: tuple[float, ...] = ()
    closed_loop: tuple[_core.Phase, ...] = ()


def read_run(
    path: str | Path,
    *,
    recipe: _core.Recipe | None = None,
    events: str | Path | None = None,
    columns: Mapping[str, str] | None = None,
    units: Mapping[str, str] | None = None,
    decimal: str | None = None,
    sheet: str | None = None,
    dates: str | None = None,
    zone: str | None = None,
    heat: HeatSource = "logged",
    kettle: _core.Kettle | None = None,
) -> Run:
    """A logged run from a CSV, XLSX or Parquet file.

    Columns are found by name: time_s, floor_C, probe_C, floor_heat_pct, jacket_heat_pct,
    agitator_rpm, with the endings _s, _min, _h, _C, _F, _K, _pct and _rpm for the unit, or with the
    unit in brackets as in `Probe [degF]`. Columns named clock, timestamp or datetime hold times of
    a clock, which count from the first row. Time, probe and the heat of floor or jacket are needed.
    Lines above the column names are noted. Rows with a cell that cannot be read are left out and
    reported; nothing is repaired.

    Parameters
    ----------
    path :
        The log.
    recipe :
        What was cooked; gives piece sizes, shapes, pour times, covers and jacket limits.
    events :
        Events file; default: NAME.events.csv beside the log, if it is there. Its times are elapsed
        time of the log or, in a column named clock, times of the same clock.
    columns :
        Column of a signal, for example `{"probe": "T7_C"}`.
    units :
        Unit of a signal, for example `{"probe": "degF"}`; of time also "h:mm:ss", "mm:ss", "clock".
    decimal :
        "." or ","; needed only where a comma may as well part thousands.
    sheet :
        Sheet of a workbook; default: the first.
    dates :
        "day first" or "month first"; needed only where the file does not show it.
    zone :
        Time zone of a clock without offset, such as "Europe/Berlin"; takes out changes to and from
        summer time.
    heat :
        For a log without heat: "inferred" as the controller of `kettle` switches it by the logged
        readings, `recipe` and events; "closed_loop" if a fit or replay shall let the controller of
        the kettle switch it by the readings of the model, with `recipe` and events; or "none" if
        nothing was heated.
    kettle :
        For inferred heat.

    Raises
    ------
    FileFormatError
        The log is empty or lacks a column, can be read in two ways, or the events file cannot be
        understood.
    UnknownName
        `columns` or `units` names a signal that does not exist, `sheet` a sheet, `zone` a zone.
    InvalidArgument
        A unit or choice that is not allowed, or heat that is logged or cannot be inferred.

    Examples
    --------
    >>> from kettlecast.demo import demo_path
    >>> read_run(demo_path("water_boil_60kg.csv")).reached
    (1622.0,)
    """
    options = LogOptions(columns or {}, units or {}, decimal, sheet, dates, zone)
    table = read_table(path, options)
    _check_heat(table, heat)
    events_path = _events_path(path, events)
    happened, doubts = read_events(events_path, options, table.clock) if events_path else ((), [])
    pours, late, unplanned = pours_from(happened, recipe, events_path or path)
    phases = tuple(event.time for event in happened if event.kind is EventKind.phase_start)
    reached = _reached(happened, len(phases))
    if heat != "logged":
        end = next((one.time for one in happened if one.kind is EventKind.end), np.inf)
        if heat == "inferred":
            made = infer_heat(table, kettle, recipe, phases, end)
        else:
            made = no_heat(table) if heat == "none" else unknown_heat(table)
        table = table.with_heat(*made)
    findings = [*table.findings, *check_time(table), *check_sensors(table)]
    findings += [*check_shares_and_speed(table), *doubts, *unplanned]
    goals = _goals(recipe, reached)
    findings += check_temperature_units(table, pours if happened else None, goals)
    findings += _events_against_log(table, happened)
    findings += _phases_against_recipe(recipe, happened, len(phases))
    limits, cooling = jackets_of(recipe, phases)
    covers = covers_of(recipe, phases, happened, float(table.columns["time"][0]))
    loop: tuple[_core.Phase, ...] = ()
    if heat == "closed_loop":
        check_phases(table.file, heat, recipe, phases)
        assert recipe is not None
        ends = (end_of(happened, table.columns["time"]), float(table.columns["time"][-1]))
        loop = phases_as_they_happened(recipe, phases, pours, covers, ends)
    nothing = frozen(np.zeros_like(table.columns["time"]))
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
        covers=covers,
        jacket_limits=limits,
        cooling_limits=cooling,
        findings=tuple(findings),
        file=table.file,
        sha256=table.sha256,
        heat_source=heat,
        started=None if table.clock is None else table.clock.started,
        lateness=late,
        closed_loop=loop,
    )


def _check_heat(table: LogTable, heat: str) -> None:
    """Heat is taken from the log where it is there, and is never made up unasked."""
    if heat not in get_args(HeatSource):
        allowed = ", ".join(f'"{one}"' for one in get_args(HeatSource))
        raise InvalidArgument(f'heat: "{heat}" is not allowed; allowed: {allowed}')
    logged = [signal for signal in HEAT if signal in table.columns]
    if logged and heat != "logged":
        raise InvalidArgument(
            f'{table.file}: heat="{heat}" is for logs without heat, and this one has '
            f"{' and '.join(logged)}; leave heat out"
        )
    if not logged and heat == "logged":
        raise missing(
            table.rows,
            *HEAT,
            other='heat="inferred" with kettle= and recipe=, if an on/off controller switched it, '
            'heat="closed_loop" with recipe=, if the controller on the plate of the kettle did, or '
            'heat="none", if nothing was heated',
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
