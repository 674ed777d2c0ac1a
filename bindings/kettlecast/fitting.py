"""Fits the coefficients of one kettle to logged runs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from . import _core
from .errors import InvalidArgument
from .findings import Severity
from .fit_problem import CARDS, FitOptions, Observed, Vector, informative, observe
from .fit_result import Fit, Param, RunQuality
from .fit_search import Search, information_of, learned_count, searched
from .run_log import Run

Rooms = Mapping[str, _core.Surroundings]


def _check_runs(runs: Sequence[Run]) -> None:
    if not runs:
        raise InvalidArgument("fit: no runs given; allowed: one Run or more, see read_run")
    for run in runs:
        errors = [finding for finding in run.findings if finding.severity is Severity.error]
        if errors:
            raise InvalidArgument(f"fit: run {run.name!r} cannot be used: {errors[0]}")


def _curves(one: Observed, replay: _core.Replay) -> dict[str, Vector | None]:
    return {
        "time": one.time,
        "floor_log": one.floor,
        "floor_model": None if one.floor is None else replay.floor_reading,
        "probe_log": one.probe,
        "probe_model": replay.probe_reading,
    }


def _slow(values: Vector) -> float:
    """Part of residuals that is alike from one to the next [K].

    First-order autoregression with white noise on it has the autocovariances c1 = s^2 r and
    c2 = s^2 r^2, from which s^2 = c1^2 / c2; the white noise is in c0 alone. The step from c1 to
    s^2 is taken as a factor of two at most.
    """
    first, second = (float(np.mean(values[lag:] * values[:-lag])) for lag in (1, 2))
    if first <= 0.0:
        return 0.0
    return float(np.sqrt(first * np.clip(first / max(second, 1e-12), 1.0, 2.0)))


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
        heat_source=one.run.heat_source,
    )


def _scaled_covariance(information: Vector, reduced: float) -> Vector:
    """Covariance of the scaled coefficients.

    Data that scatter more than their errors count for less. The priors count as they are.
    """
    scaled = information / max(1.0, reduced)
    return np.asarray(np.linalg.inv(scaled + np.eye(len(scaled))), dtype=np.float64)


def _params(
    search: Search, found: _core.MapFit, base: _core.Coefficients, errors: Vector
) -> dict[str, Param]:
    params = {}
    where = {one.run.name: i for i, one in enumerate(search.observed)}
    for (name, run), at, error in zip(search.labels(), found.scaled, errors, strict=True):
        card = CARDS[name]
        ends = [base.replace({name: end}) for end in (card.lower, card.upper)]
        lower, upper = (_core.to_scaled(end, [name])[0] for end in ends)
        at_bound = bool(min(at - lower, upper - at) < 1e-3 * (upper - lower))
        value = found.of_runs[where.get(run, 0)][name]
        param = Param(name, value, float(error), base[name], at_bound, run)
        params[param.label] = param
    return params


def for_forecasts(
    search: Search, found: _core.MapFit, base: _core.Coefficients
) -> _core.Coefficients:
    """Coefficients of the next run: what all runs share, and means of what differs."""
    values = {name: found.of_runs[0][name] for name in search.shared}
    for name in search.per_run:
        if not CARDS[name].of_run:
            scaled = [_core.to_scaled(one, [name])[0] for one in found.of_runs]
            values[name] = _core.from_scaled(base, [name], point=[float(np.mean(scaled))])[name]
    return base.replace(values)


def _slopes(search: Search, found: _core.MapFit) -> Vector:
    """Change of each fitted value per change of its scaled value."""
    shared = _core.scaled_slopes(found.of_runs[0], search.shared)
    own = [_core.scaled_slopes(one, search.per_run) for one in found.of_runs]
    return np.concatenate([shared, *own])


def _names(
    kettle: _core.Kettle,
    logs: Sequence[Run],
    vary: Sequence[str] | None,
    per_run: Sequence[str],
    known: Mapping[str, float],
) -> list[str]:
    """Coefficients with one value for all runs."""
    for name in (*(vary or ()), *per_run):
        _core.Coefficients()[name]  # raises UnknownName with the nearest
    if both := set(per_run) & set(known):
        raise InvalidArgument(f"fit: {sorted(both)} are both fixed and per run; allowed: one")
    names = [n for n in (vary or informative(kettle, logs)) if n not in known and n not in per_run]
    if not names and not per_run:
        raise InvalidArgument("fit: every coefficient to vary is fixed; allowed: one left or more")
    return names


def fit(
    kettle: _core.Kettle,
    runs: Run | Iterable[Run],
    *,
    vary: Sequence[str] | None = None,
    per_run: Sequence[str] = (),
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
    per_run :
        Names of coefficients that get a value of their own in every run, such as "probe.offset",
        "pour.delay" or "room.offset".
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
    names = _names(kettle, logs, vary, per_run, known)
    observed = [
        observe(run, (rooms or {}).get(run.name, kettle.surroundings), chosen.interval)
        for run in logs
    ]
    search = Search(kettle, observed, names, list(per_run), chosen)
    found, errors = searched(search, base)
    information = information_of(found, chosen.loss)
    chi_square = float(found.residuals @ found.residuals)
    effective = errors.effective(observed)
    reduced = chi_square / max(1.0, effective - learned_count(information))
    covariance = _scaled_covariance(information, reduced)
    slopes = _slopes(search, found)
    shown = list(zip(observed, found.replays, strict=True))
    return Fit(
        kettle=kettle,
        coefficients=for_forecasts(search, found, base),
        params=_params(search, found, base, np.sqrt(np.diag(covariance)) * slopes),
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
        per_run=tuple(per_run),
        of_runs=tuple(found.of_runs),
        errors=errors,
        options=chosen,
        comparison=tuple(_curves(*pair) for pair in shown),
        search=search,
        found=found,
    )
