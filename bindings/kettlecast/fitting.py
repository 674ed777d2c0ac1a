"""Fits the coefficients of one kettle to logged runs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

import numpy as np
from scipy.optimize import OptimizeResult, least_squares

from . import _core
from .errors import InvalidArgument
from .findings import Severity
from .fit_problem import FitOptions, FitProblem, Vector, informative, observe
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


def _minimise(problem: FitProblem, start: Vector) -> OptimizeResult:
    inside = np.clip(start, problem.lower + 1e-6, problem.upper - 1e-6)
    return least_squares(
        problem.residuals,
        inside,
        jac=problem.jacobian,
        bounds=(problem.lower, problem.upper),
        loss=problem.options.loss,
        max_nfev=problem.options.max_evaluations,
        xtol=1e-5,
        ftol=1e-5,
    )


def _quality(problem: FitProblem, point: Vector) -> tuple[RunQuality, ...]:
    def rms(values: Vector | None) -> float | None:
        return None if values is None else float(np.sqrt(np.mean(values**2)))

    rows = []
    for one, (floor, probe) in zip(
        problem.observed, problem.differences(problem.replays([point])[0]), strict=True
    ):
        alike = float(np.corrcoef(probe[1:], probe[:-1])[0, 1]) if np.ptp(probe) > 0.0 else 0.0
        rows.append(RunQuality(one.run.name, rms(floor), rms(probe) or 0.0, alike, one.run.sha256))
    return tuple(rows)


def _scaled_covariance(problem: FitProblem, result: OptimizeResult) -> tuple[Vector, float]:
    """Covariance of the scaled coefficients and reduced chi-square.

    Data that scatter more than the stated errors count for less; data that scatter less do not
    count for more, because the stated errors hold model error that few logs cannot show. The
    priors count as they are.
    """
    data = result.fun[: -len(problem.names)]
    chi_square = float(data @ data)
    freedom = max(1.0, problem.effective_count() - len(problem.names))
    reduced = chi_square / freedom
    of_data = problem.jacobian(result.x)[: -len(problem.names)]
    information = of_data.T @ of_data / max(1.0, reduced)
    covariance = np.linalg.inv(information + np.eye(len(problem.names)))
    return np.asarray(covariance, dtype=np.float64), reduced


def _params(problem: FitProblem, result: OptimizeResult, covariance: Vector) -> dict[str, Param]:
    best = problem.values(result.x)
    errors = np.sqrt(np.diag(covariance)) * problem.slopes(result.x)
    near = 1e-3 * (problem.upper - problem.lower)
    params = {}
    for i, name in enumerate(problem.names):
        at_bound = bool(
            result.x[i] - problem.lower[i] < near[i] or problem.upper[i] - result.x[i] < near[i]
        )
        params[name] = Param(name, best[name], float(errors[i]), problem.base[name], at_bound)
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
    problem = FitProblem(kettle, observed, names, base, chosen)
    result = _minimise(problem, problem.scaled({name: base[name] for name in names}))
    covariance, reduced = _scaled_covariance(problem, result)
    slopes = problem.slopes(result.x)
    return Fit(
        kettle=kettle,
        coefficients=problem.coefficients(result.x),
        params=_params(problem, result, covariance),
        fixed=known,
        scaled_covar=covariance,
        covar=covariance * np.outer(slopes, slopes),
        redchi=reduced,
        chisqr=float(result.fun[: -len(names)] @ result.fun[: -len(names)]),
        ndata=sum(one.time.size * (1 if one.floor is None else 2) for one in observed),
        neffective=problem.effective_count(),
        nfev=int(result.nfev),
        success=bool(result.success),
        message=str(result.message),
        runs=_quality(problem, result.x),
        options=chosen,
        comparison=tuple(_curves(problem, result.x)),
    )


def _curves(problem: FitProblem, point: Vector) -> Iterable[dict[str, Vector | None]]:
    for one, replay in zip(problem.observed, problem.replays([point])[0], strict=True):
        yield {
            "time": one.time,
            "floor_log": one.floor,
            "floor_model": None if one.floor is None else replay.floor_reading,
            "probe_log": one.probe,
            "probe_model": replay.probe_reading,
        }
