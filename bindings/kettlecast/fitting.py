"""Fits the coefficients of one kettle to logged runs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from . import _core
from .errors import InvalidArgument
from .findings import Severity
from .fit_problem import CARDS, FitOptions, Observed, Vector, informative, observe
from .fit_result import Fit, Param, RunQuality
from .run_log import Run

Rooms = Mapping[str, _core.Surroundings]


def _check_runs(runs: Sequence[Run]) -> None:
    if not runs:
        raise InvalidArgument("fit: no runs given; allowed: one Run or more, see read_run")
    for run in runs:
        errors = [finding for finding in run.findings if finding.severity is Severity.error]
        if errors:
            raise InvalidArgument(f"fit: run {run.name!r} cannot be used: {errors[0]}")


def _loss(name: str) -> _core.Loss:
    allowed = [loss.name for loss in _core.Loss]
    if name not in allowed:
        raise InvalidArgument(f"fit: loss {name!r} is not known, allowed are {', '.join(allowed)}")
    return _core.Loss[name]


def _minimise(
    kettle: _core.Kettle,
    observed: Sequence[Observed],
    names: Sequence[str],
    base: _core.Coefficients,
    options: FitOptions,
) -> _core.MapFit:
    readings = [
        _core.Observed(
            plan=i,
            floor_reading=[] if one.floor is None else one.floor,
            probe_reading=one.probe,
            weight=one.weight(options.correlation_time),
        )
        for i, one in enumerate(observed)
    ]
    settings = _core.FitSettings(
        names=names,
        start=base,
        floor_error=options.floor_error,
        probe_error=options.probe_error,
        loss=_loss(options.loss),
        max_evaluations=options.max_evaluations,
    )
    plans = [one.plan for one in observed]
    return _core.map_fit(
        kettle, plans, observed=readings, settings=settings, options=options.integration
    )


def _curves(one: Observed, replay: _core.Replay) -> dict[str, Vector | None]:
    return {
        "time": one.time,
        "floor_log": one.floor,
        "floor_model": None if one.floor is None else replay.floor_reading,
        "probe_log": one.probe,
        "probe_model": replay.probe_reading,
    }


def _slow(values: Vector) -> float:
    """Part of residuals that is alike from one to the next [K]."""
    return float(np.sqrt(np.maximum(0.0, np.mean(values[1:] * values[:-1]))))


def _quality(one: Observed, replay: _core.Replay) -> RunQuality:
    def rms(values: Vector) -> float:
        return float(np.sqrt(np.mean(values**2)))

    floor = None if one.floor is None else replay.floor_reading - one.floor
    probe = replay.probe_reading - one.probe
    return RunQuality(
        name=one.run.name,
        floor_rms=None if floor is None else rms(floor),
        probe_rms=rms(probe),
        probe_autocorrelation=(
            float(np.corrcoef(probe[1:], probe[:-1])[0, 1]) if np.ptp(probe) > 0.0 else 0.0
        ),
        sha256=one.run.sha256,
        floor_slow=None if floor is None else _slow(floor),
        probe_slow=_slow(probe),
        lateness=one.run.lateness,
    )


def _scaled_covariance(found: _core.MapFit, reduced: float) -> Vector:
    """Covariance of the scaled coefficients.

    Data that scatter more than the stated errors count for less; data that scatter less do not
    count for more, because the stated errors hold model error that few logs cannot show. The
    priors count as they are.
    """
    information = found.jacobian.T @ found.jacobian / max(1.0, reduced)
    covariance = np.linalg.inv(information + np.eye(found.scaled.size))
    return np.asarray(covariance, dtype=np.float64)


def _params(
    found: _core.MapFit, names: Sequence[str], base: _core.Coefficients, errors: Vector
) -> dict[str, Param]:
    params = {}
    for name, at, error in zip(names, found.scaled, errors, strict=True):
        card = CARDS[name]
        ends = [base.replace({name: end}) for end in (card.lower, card.upper)]
        lower, upper = (_core.to_scaled(end, [name])[0] for end in ends)
        at_bound = bool(min(at - lower, upper - at) < 1e-3 * (upper - lower))
        params[name] = Param(name, found.coefficients[name], float(error), base[name], at_bound)
    return params


def fit(
    kettle: _core.Kettle,
    runs: Run | Iterable[Run],
    *,
    vary: Sequence[str] | None = None,
    fixed: Mapping[str, float] | None = None,
    rooms: Rooms | None = None,
    options: FitOptions | None = None,
) -> Fit:
    """Fit the coefficients of a kettle to logged runs.

    The model is driven by the logged heat, jacket, agitator, lid and pours of each run, and its
    readings are compared with the logged ones: a maximum-a-posteriori fit with the priors of the
    coefficient cards, by bounded least squares.

    Parameters
    ----------
    kettle :
        As on its type plate; not changed.
    runs :
        One run or several, see `read_run`.
    vary :
        Names of the coefficients to fit. Default: all that such runs can say anything about.
    fixed :
        Values of coefficients that are known; they are not fitted.
    rooms :
        Surroundings by name of the run, where they differ from those of the kettle.
    options :
        Weights and limits.

    Returns
    -------
    Fit
        Best values with standard errors, quality per run, and a report. Not converging is said
        in its message, not raised.

    Raises
    ------
    InvalidArgument
        No runs, or a run with an error among its findings.
    UnknownName
        A coefficient or a run that does not exist.
    """
    logs = [runs] if isinstance(runs, Run) else list(runs)
    chosen = options or FitOptions()
    known = dict(fixed or {})
    _check_runs(logs)
    if unknown := set(rooms or {}) - {run.name for run in logs}:
        there = ", ".join(run.name for run in logs)
        raise InvalidArgument(f"fit: rooms names {sorted(unknown)}, allowed are the runs {there}")
    base = _core.Coefficients(known)
    for name in vary or ():
        base[name]  # raises UnknownName with the nearest
    names = [n for n in (vary or informative(kettle, logs)) if n not in known]
    observed = [
        observe(run, (rooms or {}).get(run.name, kettle.surroundings), chosen.interval)
        for run in logs
    ]
    if not names:
        raise InvalidArgument("fit: every coefficient to vary is fixed; allowed: one left or more")
    found = _minimise(kettle, observed, names, base, chosen)
    chi_square = float(found.residuals @ found.residuals)
    effective = sum(one.count * one.weight(chosen.correlation_time) for one in observed)
    reduced = chi_square / max(1.0, effective - len(names))
    covariance = _scaled_covariance(found, reduced)
    slopes = np.array(_core.scaled_slopes(found.coefficients, names))
    shown = list(zip(observed, found.replays, strict=True))
    return Fit(
        kettle=kettle,
        coefficients=found.coefficients,
        params=_params(found, names, base, np.sqrt(np.diag(covariance)) * slopes),
        fixed=known,
        scaled_covar=covariance,
        covar=covariance * np.outer(slopes, slopes),
        redchi=reduced,
        chisqr=chi_square,
        ndata=sum(one.count for one in observed),
        neffective=effective,
        nfev=found.evaluations,
        success=found.converged,
        message=found.message,
        runs=tuple(_quality(*pair) for pair in shown),
        options=chosen,
        comparison=tuple(_curves(*pair) for pair in shown),
    )
