"""The log that a recipe would give, as a fit forecasts it, and what it would tell."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from . import _core
from .design import without_nuisance
from .fit_problem import CARDS, Observed, Vector, observe
from .fit_result import Fit
from .forecasting import Forecast
from .losses import loss_slopes
from .run_log import Run
from .run_phases import covers_of, jackets_of, phases_as_they_happened

_ORDER = {name: index for index, name in enumerate(CARDS)}


def expected_log(forecast: Forecast, *, floor: bool, closed_loop: bool) -> Run:
    """A forecast as the log it would leave behind, without noise.

    Parameters
    ----------
    forecast :
        With rows close enough to see every switching.
    floor :
        Whether the floor reading is logged.
    closed_loop :
        Whether the heat is not logged, so that a fit lets the controller switch it.
    """
    result, recipe = forecast.result, forecast.recipe
    names = list(result.trace_names)
    signals = {name: np.array(result.trace[:, at]) for at, name in enumerate(names)}
    time = signals["time"]
    starts = tuple(phase.start for phase in result.phases)
    pours = tuple(
        (start + one.delay, one)
        for start, phase in zip(starts, recipe.phases, strict=True)
        for one in phase.additions
    )
    limits, cooling = jackets_of(recipe, starts)
    run = Run(
        name=recipe.name,
        time=time,
        floor_reading=signals["floor_sensor.reading"] if floor else None,
        probe_reading=signals["probe.reading"],
        floor_heat=signals["floor.heat"],
        jacket_heat=signals["jacket.heat"],
        agitator_speed=signals["agitator.speed"],
        events=(),
        pours=pours,
        phases=starts,
        reached=(),
        covers=covers_of(recipe, starts, (), 0.0),
        jacket_limits=limits,
        cooling_limits=cooling,
        findings=(),
        file="",
        sha256="",
    )
    if not closed_loop:
        return run
    nothing = np.zeros_like(time)
    loop = phases_as_they_happened(recipe, starts, pours, run.covers, (time[-1], time[-1]))
    return replace(
        run,
        floor_heat=nothing,
        jacket_heat=nothing,
        heat_source="closed_loop",
        closed_loop=loop,
    )


def _levers(names: Sequence[str]) -> list[_core.Lever]:
    """Levers of coefficients by name."""
    kind = _core.LeverKind.coefficient
    return [_core.Lever(kind=kind, index=_ORDER[name]) for name in names]


def _weighted(slopes: Vector, error: float, weight: float, loss: str) -> Vector:
    """Slopes in standard deviations of readings; the loss counts as for Gaussian residuals."""
    points, shares = np.polynomial.hermite_e.hermegauss(21)
    expected = float(shares @ loss_slopes(np.sqrt(weight) * points, loss) / np.sum(shares))
    return np.asarray(np.sqrt(weight * expected) / error * slopes)


def _jacobian(fit: Fit, one: Observed, names: Sequence[str]) -> Vector:
    """Slopes of all readings by the scaled coefficients, in standard deviations."""
    found = _core.replay_slopes(
        fit.kettle,
        fit.coefficients,
        plan=one.plan,
        levers=_levers(names),
        options=fit.options.integration,
    )
    floor_weight, probe_weight = fit.errors.weights(one)
    loss = fit.options.loss
    parts = [_weighted(found.probe_reading, fit.errors.probe_error, probe_weight, loss)]
    if one.floor is not None:
        parts.append(_weighted(found.floor_reading, fit.errors.floor_error, floor_weight, loss))
    return np.concatenate(parts) * _core.scaled_slopes(fit.coefficients, names)


def information(fit: Fit, run: Run, room: _core.Surroundings, names: Sequence[str]) -> Vector:
    """Information of a log about scaled coefficients, with the errors of a fit.

    What has a value of its own in every run is not known for a new one either.
    """
    one = observe(run, room, fit.options.interval)
    slopes = _jacobian(fit, one, [*names, *fit.per_run])
    whole = slopes.T @ slopes / max(1.0, fit.redchi)
    return without_nuisance(whole, len(names))
