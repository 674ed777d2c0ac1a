"""Heat of a run that did not log it, as its controller would have switched it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from . import _core
from .errors import InvalidArgument
from .findings import Array, Finding, Severity
from .log_table import LogTable
from .run_phases import check_phases

_NEVER = -1e9  # [s]
# Readings are medians over this long, about the lag of a sensor in its sleeve: the noise of a log
# is not what the controller acted on, and of many noisy values one is always across a threshold [s]
_QUIET = 10.0


@dataclass
class _Switch:
    """A switch with hysteresis: on at or below `low`, off at or above `high`."""

    low: float
    high: float
    on: bool

    def settle(self, reading: float) -> None:
        if reading <= self.low:
            self.on = True
        if reading >= self.high:
            self.on = False


def infer_heat(
    table: LogTable,
    kettle: _core.Kettle | None,
    recipe: _core.Recipe | None,
    starts: Sequence[float],
    end: float,
) -> tuple[dict[str, Array], Finding]:
    """Share of floor and jacket heat at each row, and a note that says where it comes from.

    The regulated reading of each phase switches the heat as the on/off controller does: on when it
    falls to the set point less the dead band, off when it rises to the set point, below the
    ceilings of floor and difference, on for the shortest time at least. A jacket beside a floor
    heater gives its share whenever its phase heats with it.

    Parameters
    ----------
    table :
        The log, without heat.
    kettle :
        Gives the controller, and whether it acts on the jacket.
    recipe :
        Gives what each phase regulates.
    starts :
        Start of each phase, by the events file [s].
    end :
        When the heat was off for good [s].

    Raises
    ------
    InvalidArgument
        The log has heat, or the kettle, recipe, events or a reading to infer it from are missing.
    """
    _check(table, kettle, recipe, starts)
    assert kettle is not None and recipe is not None
    time = table.columns["time"]
    heats = {"floor_heat": np.zeros(time.size), "jacket_heat": np.zeros(time.size)}
    by_jacket = _core.heats_by_jacket(kettle)
    ends = [*starts[1:], end]
    on, since = False, _NEVER
    for phase, start, stop in zip(recipe.phases, starts, ends, strict=True):
        rows = np.flatnonzero((time >= start) & (time < stop))
        switched, on, since = _switched(table, rows, kettle.controller, phase, (on, since))
        if phase.jacket is _core.JacketUse.heat:
            heats["jacket_heat"][rows] = phase.jacket_share
        if not by_jacket:
            heats["floor_heat"][rows] = phase.heat_limit * switched
        elif phase.regulated is not _core.Regulated.none:
            heats["jacket_heat"][rows] = phase.heat_limit * phase.jacket_share * switched
    return heats, _note(table, heats["jacket_heat" if by_jacket else "floor_heat"], by_jacket)


def _check(
    table: LogTable,
    kettle: _core.Kettle | None,
    recipe: _core.Recipe | None,
    starts: Sequence[float],
) -> None:
    if kettle is None or recipe is None:
        lacking = " and ".join(
            f"{name}=" for name, one in (("kettle", kettle), ("recipe", recipe)) if one is None
        )
        raise InvalidArgument(
            f'{table.file}: heat="inferred" needs the kettle and the recipe; not given: {lacking}'
        )
    if kettle.controller.kind is not _core.ControllerKind.on_off:
        raise InvalidArgument(
            f'{table.file}: heat="inferred" needs a kettle with an on_off controller; '
            f'"{kettle.name}" has {kettle.controller.kind.name}'
        )
    check_phases(table.file, "inferred", recipe, starts)
    for number, phase in enumerate(recipe.phases, start=1):
        _check_phase(table, number, phase)


def _check_phase(table: LogTable, number: int, phase: _core.Phase) -> None:
    """Every reading that switches the heat in the phase must be in the log."""
    regulated = _core.Regulated
    by_floor = phase.regulated in (regulated.floor, regulated.difference)
    limited = np.isfinite(phase.floor_limit) or np.isfinite(phase.difference_limit)
    if phase.regulated is regulated.core:
        lacking = "the core"
    elif (by_floor or limited) and "floor" not in table.columns:
        lacking = "the floor"
    else:
        return
    raise InvalidArgument(
        f'{table.file}: heat="inferred" needs the readings that switch it; phase {number} '
        f'"{phase.name}" depends on {lacking}, which is not in the log; allowed: floor, probe'
    )


def _quiet(table: LogTable, values: Array) -> Array:
    """Medians of the values around each row; the values themselves in a slow log."""
    steps = np.diff(table.columns["time"])
    rising = steps[steps > 0.0]
    half = int(0.5 * _QUIET / np.median(rising)) if rising.size else 0
    padded = np.pad(values, half, mode="edge")
    windows = np.lib.stride_tricks.sliding_window_view(padded, 2 * half + 1)
    return np.asarray(np.median(windows, axis=1))


def _reading(table: LogTable, what: _core.Regulated) -> Array:
    probe = _quiet(table, table.columns["probe"])
    # the floor is checked to be there where it is needed
    floor = _quiet(table, table.columns["floor"]) if "floor" in table.columns else probe
    regulated = _core.Regulated
    return {regulated.floor: floor, regulated.difference: floor - probe}.get(what, probe)


def _switched(
    table: LogTable,
    rows: Array,
    controller: _core.Controller,
    phase: _core.Phase,
    before: tuple[bool, float],
) -> tuple[Array, bool, float]:
    """1 where the heat is on in the rows of a phase; then whether it is on, and since when [s]."""
    on, since = before
    if phase.regulated is _core.Regulated.none:
        return np.zeros(rows.size), False, since
    band, goal = controller.dead_band, phase.set_point
    demand = _Switch(goal - band, goal, on)
    ceilings = (
        (_Switch(phase.floor_limit - band, phase.floor_limit, True), _core.Regulated.floor),
        (
            _Switch(phase.difference_limit - band, phase.difference_limit, True),
            _core.Regulated.difference,
        ),
    )
    signal = _reading(table, phase.regulated)
    limited = [(switch, _reading(table, what)) for switch, what in ceilings]
    found = np.zeros(rows.size)
    for i, row in enumerate(rows):
        now = float(table.columns["time"][row])
        if not (demand.on and now - since < controller.minimum_on_time):
            demand.settle(float(signal[row]))
        for switch, readings in limited:
            switch.settle(float(readings[row]))
        was, on = on, demand.on and all(switch.on for switch, _ in limited)
        if on and not was:
            since = now
        found[i] = on
    return found, on, since


def _note(table: LogTable, heat: Array, by_jacket: bool) -> Finding:
    time = table.columns["time"]
    lengths = np.clip(np.diff(time, append=time[-1]), 0.0, None)
    share = float(lengths[heat > 0.0].sum() / max(1e-9, lengths.sum()))
    signal = "jacket_heat" if by_jacket else "floor_heat"
    seen = (
        f"not logged, inferred from readings, recipe and controller: on for {share:.0%} of the time"
    )
    lines = (table.rows.header_line, table.rows.header_line)
    return Finding(Severity.note, lines, signal, seen, "logged heat, which knows every switching")


def no_heat(table: LogTable) -> tuple[dict[str, Array], Finding]:
    """No heat at all, as the caller says, and a note about it."""
    seen = 'not logged, taken as off throughout, as heat="none" says'
    return _zeros(table, seen, "a kettle that is not heated")


def unknown_heat(table: LogTable) -> tuple[dict[str, Array], Finding]:
    """No heat, since the controller of the kettle will switch it, and a note about it."""
    seen = "not logged, switched by the controller of the kettle in closed loop"
    return _zeros(table, seen, "logged heat, which knows every switching")


def _zeros(table: LogTable, seen: str, expected: str) -> tuple[dict[str, Array], Finding]:
    zeros = {name: np.zeros_like(table.columns["time"]) for name in ("floor_heat", "jacket_heat")}
    lines = (table.rows.header_line, table.rows.header_line)
    return zeros, Finding(Severity.note, lines, "floor_heat", seen, expected)
