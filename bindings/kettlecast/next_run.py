"""Which run to log next: what each of some recipes would tell about a kettle, and at what cost."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from statistics import NormalDist
from typing import Any

import numpy as np
import pandas as pd

from . import _core
from .design import gain, in_order, posterior
from .errors import InvalidArgument
from .expected_log import expected_log, information
from .fit_problem import CARDS, Vector, informative
from .fit_result import Fit
from .forecast_target import Target, target_slopes
from .forecasting import Forecast, forecast
from .run_log import Run

# Rows of an expected log are this far apart, so that they show when the heat switched [s].
_ROW = 2.0


@dataclass(frozen=True, eq=False)
class NextRun:
    """What each candidate would tell, best first.

    Attributes
    ----------
    fit :
        What is known now.
    names :
        Coefficients that are counted: those of the fit, and those that its runs could not tell
        about but a candidate can, or the target depends on.
    before :
        Covariance of these now, scaled by the spreads of their priors.
    informations :
        What a log of each candidate would add to the inverse of it.
    forecasts :
        Of each candidate with the fit.
    target, slopes :
        What is to become more certain, and its slopes by `names` over their spread; None without
        a target.
    other_variance :
        Of the target, which no run is taken to reduce: what differs from run to run, and what
        slopes do not explain.
    by :
        What candidates are sorted by: "target" or "information".
    level :
        Share of cases that the intervals are meant to hold [-].
    """

    fit: Fit
    names: tuple[str, ...]
    before: Vector
    informations: Mapping[str, Vector]
    forecasts: Mapping[str, Forecast]
    target: Target | None
    slopes: Vector | None
    other_variance: float
    by: str
    level: float

    def after(self, name: str) -> Vector:
        """Scaled covariance once a candidate is logged and fitted too."""
        return posterior(self.before, self.informations[name])

    def half_width(self, covariance: Vector) -> float:
        """Of the interval of the target, in its unit [s, K, kg or J]; NaN without a target."""
        if self.slopes is None:
            return float("nan")
        variance = float(self.slopes @ covariance @ self.slopes) + self.other_variance
        return NormalDist().inv_cdf(0.5 * (1.0 + self.level)) * float(np.sqrt(variance))

    @cached_property
    def table(self) -> pd.DataFrame:
        """One row per candidate, best first: cost, information, and interval of the target.

        Columns: minutes and energy_kWh the run costs; information_bit, half the binary logarithm
        of how much smaller the determinant of the covariance gets; learned_most, the coefficient
        whose spread shrinks most, and learned_share, by which share of it; target_now and
        target_after, half-widths in the unit of the target.
        """
        rows = []
        for name, one in self.forecasts.items():
            after = self.after(name)
            shrink = 1.0 - np.sqrt(np.diag(after) / np.diag(self.before))
            most = int(np.argmax(shrink))
            rows.append(
                {
                    "run": name,
                    "minutes": one.duration / 60.0,
                    "energy_kWh": sum(phase.energy for phase in one.result.phases) / 3.6e6,
                    "information_bit": gain(self.before, after),
                    "learned_most": self.names[most],
                    "learned_share": float(shrink[most]),
                    "target_now": self.half_width(self.before),
                    "target_after": self.half_width(after),
                }
            )
        table = pd.DataFrame(rows).set_index("run")
        if self.by == "target":
            return table.sort_values("target_after", kind="stable")
        return table.sort_values("information_bit", ascending=False, kind="stable")

    @cached_property
    def spreads(self) -> pd.DataFrame:
        """Standard error of each coefficient now and after each candidate, in its own unit."""
        scale = np.abs(_core.scaled_slopes(self.fit.coefficients, list(self.names)))
        columns = {"now": np.sqrt(np.diag(self.before)) * scale}
        for name in self.table.index:
            columns[str(name)] = np.sqrt(np.diag(self.after(str(name)))) * scale
        units = [CARDS[name].unit for name in self.names]
        return pd.DataFrame({"unit": units, **columns}, index=pd.Index(self.names, name="name"))

    @property
    def best(self) -> str:
        """Name of the best candidate."""
        return str(self.table.index[0])

    def _worth(self, before: Vector, after: Vector) -> float:
        return -self.half_width(after) if self.by == "target" else gain(before, after)

    def sequence(self, count: int = 2) -> list[tuple[str, float]]:
        """Which runs to log one after the other, each the best after those before it.

        Returns
        -------
        list
            Name of the run, and the half-width of the interval of the target after it, or the
            information of all runs so far [bit] if candidates are sorted by information.
        """
        chosen = in_order(self.before, self.informations, count, self._worth)
        if self.by == "target":
            return [(name, self.half_width(after)) for name, after in chosen]
        return [(name, gain(self.before, after)) for name, after in chosen]

    def sentence(self) -> str:
        """The best run in one sentence."""
        row = self.table.loc[self.best].to_dict()
        cost = f"{row['minutes']:.0f} min, {row['energy_kWh']:.1f} kWh"
        most = f"{row['learned_most']}, whose spread it would shrink by {row['learned_share']:.0%}"
        if self.target is None:
            return f'Log "{self.best}" next ({cost}): it tells most about {most}.'
        now, after = (self.target.amount(row[f"target_{when}"]) for when in ("now", "after"))
        return (
            f'Log "{self.best}" next ({cost}): the {self.target.words()} is known to +-{now} now, '
            f"to +-{after} after it. It tells most about {most}."
        )

    def to_json(self) -> str:
        """Table, best run and sentence as JSON text."""
        plain: dict[str, Any] = {
            "kettle": self.fit.kettle.name,
            "target": None if self.target is None else self.target.words(),
            "interval_level": self.level,
            "sorted_by": self.by,
            "best": self.best,
            "sentence": self.sentence(),
            "runs": json.loads(self.table.reset_index().to_json(orient="records")),
            "spreads": json.loads(self.spreads.reset_index().to_json(orient="records")),
        }
        return json.dumps(plain, indent=1)


def _covariance(fit: Fit, fitted: int, others: int) -> Vector:
    """Scaled covariance of the fitted coefficients now, and by their priors of the others."""
    covariance = np.eye(fitted + others)
    covariance[:fitted, :fitted] = fit.scaled_covar[:fitted, :fitted]
    return covariance


def _scatter(fit: Fit, names: Sequence[str]) -> Vector:
    """Variances in the next run of scaled coefficients that differ from run to run."""
    values = np.array([_core.to_scaled(one, names) for one in fit.of_runs])
    squares = np.sum((values - values.mean(axis=0)) ** 2, axis=0)
    return np.asarray((1.0 + squares) / len(values))


def _slopes(
    fit: Fit, target: Target, names: Sequence[str], before: Vector, room: _core.Surroundings
) -> tuple[Vector, float]:
    """Slopes of the target by `names`, and its variance that no run reduces."""
    own = [name for name in fit.per_run if not CARDS[name].of_run]
    count = len(names)
    covariance = np.zeros((count + len(own), count + len(own)))
    covariance[:count, :count] = before
    covariance[count:, count:] = np.diag(_scatter(fit, own))
    slopes, left = target_slopes(fit, target, [*names, *own], covariance, room)
    others = slopes[count:]
    return slopes[:count], left + float(others @ covariance[count:, count:] @ others)


def _plain(kettle: _core.Kettle, run: Run) -> Run:
    """A run as if only water had been heated in an open kettle by its main heater."""
    heat = run.jacket_heat if _core.heats_by_jacket(kettle) else np.zeros_like(run.time)
    covers = ((0.0, _core.Cover.open),)
    return replace(
        run, jacket_heat=heat, pours=(), covers=covers, cooling_limits=(), closed_loop=()
    )


def _further(fit: Fit, logs: Sequence[Run]) -> list[str]:
    """Coefficients that some runs tell about, and that those of the fit may not have.

    What any run tells about and the fit does not vary was held, so it stays held. What only jacket,
    pieces, lid or cold tell about may not have been in its runs.
    """
    always = informative(fit.kettle, [_plain(fit.kettle, run) for run in logs])
    held = {*always, *fit.fixed, *fit.per_run, *(one.name for one in fit.params.values())}
    return [name for name in informative(fit.kettle, logs) if name not in held]


def _check(fit: Fit, candidates: Mapping[str, _core.Recipe], by: str, level: float) -> None:
    if not candidates:
        raise InvalidArgument(
            "next_run: no candidates given; allowed: one recipe or more by name, see candidate_runs"
        )
    if by not in ("target", "information"):
        raise InvalidArgument(f'next_run: by "{by}" is not allowed; allowed: target, information')
    if not 0.0 < level < 1.0:
        raise InvalidArgument(f"next_run: level must be in 0..1, got {level}")


def _forecast(fit: Fit, name: str, recipe: _core.Recipe, room: _core.Surroundings) -> Forecast:
    options = fit.options.integration.replace(output_interval=_ROW)
    try:
        return forecast(fit, recipe, room=room, options=options, draws=0)
    except InvalidArgument as error:
        raise InvalidArgument(f'next_run: "{name}" cannot be run: {error}') from error


def next_run(
    fit: Fit,
    candidates: Mapping[str, _core.Recipe],
    target: Target | _core.Recipe | None = None,
    *,
    by: str | None = None,
    room: _core.Surroundings | None = None,
    closed_loop: bool = False,
    level: float = 0.9,
) -> NextRun:
    """Say which of some recipes to log next, so that a kettle becomes better known.

    Each candidate is forecast with the fit. The slopes of its sensor readings by the coefficients
    and the errors of the fit give the information that its log would hold; from that follow the
    covariance of the coefficients, and by linear propagation the interval of the target, once the
    log is fitted together with those before. The model is taken to be as wrong as the residuals of
    the fit show, not more. Coefficients that the runs of the fit could not tell about have the
    spread of their priors; what the fit held stays held.

    Parameters
    ----------
    fit :
        Made by `fit` or read from a file.
    candidates :
        Recipes by name; `candidate_runs` makes some.
    target :
        What is to become more certain; a recipe alone stands for its whole duration.
    by :
        "target" (default where there is one) or "information" (D-optimal).
    room :
        Surroundings, where they differ from those of the kettle.
    closed_loop :
        Whether the log will not show when the heat was on.
    level :
        Share of cases that intervals are meant to hold [-].

    Raises
    ------
    InvalidArgument
        No candidates, one that cannot be run, or a target that does not happen.
    UnknownName
        A result or phase of the target that does not exist.
    """
    goal = Target(target) if isinstance(target, _core.Recipe) else target
    chosen = by or ("information" if goal is None else "target")
    _check(fit, candidates, chosen, level)
    if chosen == "target" and goal is None:
        raise InvalidArgument("next_run: sorted by target, but no target given")
    here = room or fit.kettle.surroundings
    floor = any(run.floor_rms is not None for run in fit.runs)
    forecasts = {name: _forecast(fit, name, one, here) for name, one in candidates.items()}
    wanted = [] if goal is None else [_forecast(fit, "target", goal.recipe, here)]
    logs = {
        name: expected_log(one, floor=floor, closed_loop=closed_loop)
        for name, one in forecasts.items()
    }
    seen = [
        expected_log(one, floor=floor, closed_loop=False) for one in [*forecasts.values(), *wanted]
    ]
    fitted = [one.name for one in fit.params.values() if not one.run]
    names = [*fitted, *_further(fit, seen)]
    before = _covariance(fit, len(fitted), len(names) - len(fitted))
    slopes, rest = (None, 0.0) if goal is None else _slopes(fit, goal, names, before, here)
    return NextRun(
        fit=fit,
        names=tuple(names),
        before=before,
        informations={name: information(fit, run, here, names) for name, run in logs.items()},
        forecasts=forecasts,
        target=goal,
        slopes=slopes,
        other_variance=rest,
        by=chosen,
        level=level,
    )
