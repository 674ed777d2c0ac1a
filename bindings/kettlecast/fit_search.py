"""The search for coefficients: residuals, errors estimated from them, information."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from . import _core
from .error_model import ErrorModel, estimated_errors, stated_errors
from .errors import InvalidArgument
from .fit_problem import FitOptions, Observed, Vector
from .losses import loss_slopes


def _loss(name: str) -> _core.Loss:
    allowed = [loss.name for loss in _core.Loss]
    if name not in allowed:
        raise InvalidArgument(f"fit: loss {name!r} is not known, allowed are {', '.join(allowed)}")
    return _core.Loss[name]


# Share of the cost worth a step in searches whose residuals only serve to estimate the errors.
_ROUGH = 1e-3
# Damping of the first step of a search that starts where another one has ended.
_NEAR = 1e-2


@dataclass(frozen=True)
class Search:
    """What is searched for, and from where."""

    kettle: _core.Kettle
    observed: Sequence[Observed]
    shared: Sequence[str]
    per_run: Sequence[str]
    options: FitOptions

    def minimise(
        self,
        start: _core.Coefficients,
        errors: ErrorModel,
        *,
        rough: bool = False,
        near: bool = False,
        starts: int = 1,
    ) -> _core.MapFit:
        """Best coefficients for errors that are given; roughly, or as the options ask.

        From a start near the best the first step is hardly damped.
        """
        settings = self.settings(start, errors).replace(starts=starts)
        settings = settings.replace(damping=_NEAR) if near else settings
        return _core.map_fit(
            self.kettle,
            [one.plan for one in self.observed],
            observed=self.readings(errors),
            settings=settings.replace(tolerance=_ROUGH) if rough else settings,
            options=self.options.integration,
        )

    def profile(
        self,
        start: _core.Coefficients,
        errors: ErrorModel,
        scaled: Vector,
        *,
        index: int,
        rise: float,
    ) -> _core.ProfileOfFit:
        """Profile of one scaled coefficient around the point where the search ended."""
        return _core.map_profile(
            self.kettle,
            [one.plan for one in self.observed],
            observed=self.readings(errors),
            settings=self.settings(start, errors),
            scaled=list(scaled),
            parameter=index,
            rise=rise,
            options=self.options.integration,
        )

    def residuals_at(
        self, start: _core.Coefficients, errors: ErrorModel, points: Vector
    ) -> list[Vector | None]:
        """Weighted residuals at scaled points, shape (m,) each; None where a run cannot be made."""
        found = _core.map_residuals(
            self.kettle,
            [one.plan for one in self.observed],
            observed=self.readings(errors),
            settings=self.settings(start, errors),
            points=[list(point) for point in points],
            options=self.options.integration,
        )
        return [np.array(one) if one else None for one in found]

    def readings(self, errors: ErrorModel) -> list[_core.Observed]:
        """What the runs showed, and how much each reading counts."""
        found = []
        for i, one in enumerate(self.observed):
            floor_weight, probe_weight = errors.weights(one)
            found.append(
                _core.Observed(
                    plan=i,
                    floor_reading=[] if one.floor is None else one.floor,
                    probe_reading=one.probe,
                    floor_weight=floor_weight,
                    probe_weight=probe_weight,
                )
            )
        return found

    def settings(self, start: _core.Coefficients, errors: ErrorModel) -> _core.FitSettings:
        """What is fitted, from where, and how residuals count."""
        return _core.FitSettings(
            names=self.shared,
            per_run=self.per_run,
            start=start,
            floor_error=errors.floor_error,
            probe_error=errors.probe_error,
            loss=_loss(self.options.loss),
            max_evaluations=self.options.max_evaluations,
            tolerance=self.options.tolerance,
        )

    def residuals(self, found: _core.MapFit) -> list[tuple[Vector | None, Vector]]:
        """Model less log of floor and probe of each run [K]."""
        return [
            (
                None if one.floor is None else replay.floor_reading - one.floor,
                replay.probe_reading - one.probe,
            )
            for one, replay in zip(self.observed, found.replays, strict=True)
        ]

    def labels(self) -> list[tuple[str, str]]:
        """Name and run of each fitted value, in the order of the search."""
        own = [(name, one.run.name) for one in self.observed for name in self.per_run]
        return [(name, "") for name in self.shared] + own


def information_of(found: _core.MapFit, loss: str) -> Vector:
    """Information of the data about the scaled coefficients; outliers count as in the search."""
    slopes = loss_slopes(found.residuals, loss)
    return np.asarray(found.jacobian.T @ (slopes[:, None] * found.jacobian))


def learned_count(information: Vector) -> float:
    """How many coefficients the data determine and not the priors [-]."""
    strengths = np.maximum(np.linalg.eigvalsh(information), 0.0)
    return float(np.sum(strengths / (1.0 + strengths)))


def searched(search: Search, base: _core.Coefficients) -> tuple[_core.MapFit, ErrorModel]:
    """Best values, and the errors their residuals show."""
    errors = stated_errors(search.options)
    again = search.options.estimate_errors
    found = search.minimise(base, errors, rough=again, starts=search.options.starts)
    for last in (False, True) if again else ():
        learned = learned_count(information_of(found, search.options.loss))
        errors = estimated_errors(search.residuals(found), search.observed, errors, learned)
        start = base.replace({name: found.of_runs[0][name] for name in search.shared})
        found = search.minimise(start, errors, rough=not last, near=True)
    return found, errors
