"""From a logged run to what drives the model through it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from . import _core
from .run_log import Run

# Readings in this first stretch of a log tell how warm the kettle was [s].
_STILL = 3.0
# Limit of a jacket where no recipe sets one: it heats whenever the log says so.
_NO_JACKET_LIMIT = 573.15


def begin_of(run: Run) -> float:
    """When the model begins: with the log or, in closed loop, with the first phase [s]."""
    return max(float(run.time[0]), run.phases[0]) if run.closed_loop else float(run.time[0])


def start_of(run: Run) -> _core.Start:
    """What floor sensor and probe show when the model begins [K]."""
    begin = begin_of(run)
    still = (run.time >= begin) & (run.time <= begin + _STILL)
    still[np.searchsorted(run.time, begin)] = True  # of a slow log, the first row
    probe = float(np.mean(run.probe_reading[still]))
    floor = probe if run.floor_reading is None else float(np.mean(run.floor_reading[still]))
    return _core.Start(floor=floor, wall=probe, as_read=True)


def _or(limit: float | None, without: float) -> float:
    return without if limit is None else limit


def _settings(run: Run) -> list[_core.TimedSetting]:
    """Cover, and limits of the heating and the cooling jacket, merged into one list of changes."""
    limits, cooling = dict(run.jacket_limits), dict(run.cooling_limits)
    covers = dict(run.covers)
    begin = float(run.time[0])
    now = _core.TimedSetting(time=begin, cover=_core.Cover.open, jacket_limit=_NO_JACKET_LIMIT)
    merged = [now]
    for time in sorted({*limits, *covers, *cooling}):
        now = now.replace(time=max(time, begin), cover=covers.get(time, now.cover))
        if time in limits:
            now = now.replace(jacket_limit=_or(limits[time], _NO_JACKET_LIMIT))
        if time in cooling:
            cools = cooling[time] is not None
            now = now.replace(cooling=float(cools), cool_limit=_or(cooling[time], 0.0))
        merged.append(now)
    return merged


def run_plan(
    run: Run,
    surroundings: _core.Surroundings,
    output_times: NDArray[np.float64],
) -> _core.RunPlan:
    """What `replay` needs to follow a logged run.

    Parameters
    ----------
    run :
        A log with heater signal, or one whose heat the controller of the kettle switches.
    surroundings :
        The room during the run.
    output_times :
        When to read the sensors of the model, rising, shape (n,) [s].
    """
    if run.closed_loop:
        return _core.RunPlan(
            closed_loop=list(run.closed_loop),
            surroundings=surroundings,
            start=start_of(run),
            output_times=output_times - run.phases[0],
        )
    signals = _core.DriveSignals(
        time=run.time,
        floor_heat=run.floor_heat,
        jacket_heat=run.jacket_heat,
        agitator_speed=run.agitator_speed,
    )
    pours = [_core.TimedAddition(time=time, addition=addition) for time, addition in run.pours]
    return _core.RunPlan(
        signals=signals,
        pours=pours,
        settings=_settings(run),
        surroundings=surroundings,
        start=start_of(run),
        output_times=output_times,
    )
