"""The number of a forecast that is to become more certain."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from . import _core
from .clock_text import clock_text
from .errors import InvalidArgument, UnknownName
from .file_model import nearest
from .fit_problem import Vector
from .fit_result import Fit
from .propagation import room_start

#: Results of a phase, and their units.
RESULTS = {
    "duration": "s",
    "time_to_reach": "s",
    "overshoot": "K",
    "overshoot_reading": "K",
    "evaporated": "kg",
    "energy": "J",
}
_OF_RUN = ("duration", "evaporated", "energy")
_KILOWATT_HOUR = 3.6e6  # [J]
# Forecasts behind the slopes of a target: several for each coefficient.
_DRAWS = 200
_SEED = 20260101


@dataclass(frozen=True)
class Target:
    """What a forecast is wanted for.

    Attributes
    ----------
    recipe :
        What will be cooked.
    result :
        "duration" or "time_to_reach" [s], "overshoot" or "overshoot_reading" [K], "evaporated"
        [kg], "energy" [J].
    phase :
        Name, or number from 1; None for duration, evaporated or energy of the whole run.
    """

    recipe: _core.Recipe
    result: str = "duration"
    phase: str | int | None = None

    def index(self) -> int | None:
        """Of the phase, from 0; None for the whole run.

        Raises
        ------
        UnknownName
            The result or the phase does not exist.
        InvalidArgument
            A result that only phases have, without a phase.
        """
        if self.result not in RESULTS:
            raise UnknownName(
                f'result "{self.result}" is not known{nearest(self.result, RESULTS)}; there are: '
                f"{', '.join(RESULTS)}"
            )
        names = [one.name for one in self.recipe.phases]
        if self.phase is None:
            if self.result not in _OF_RUN:
                raise InvalidArgument(
                    f"target: {self.result} is that of a phase; say which of: {', '.join(names)}"
                )
            return None
        if self.phase in names:
            return names.index(str(self.phase))
        if isinstance(self.phase, int) and 1 <= self.phase <= len(names):
            return self.phase - 1
        raise UnknownName(
            f'recipe "{self.recipe.name}" has no phase {self.phase!r}; there are 1 to '
            f"{len(names)}: {', '.join(names)}"
        )

    def words(self) -> str:
        """Such as "duration of stew" or "overshoot of stew, phase 2"."""
        index = self.index()
        where = "" if index is None else f', "{self.recipe.phases[index].name}"'
        return f"{self.result.replace('_', ' ')} of {self.recipe.name}{where}"

    def amount(self, value: float) -> str:
        """A half-width in words, such as "1:02 min", "62 s" or "0.4 K"."""
        unit = RESULTS[self.result]
        if unit == "s":
            return f"{value:.3g} s" if value < 100.0 else f"{clock_text(value)} min"
        if unit == "J":
            return f"{value / _KILOWATT_HOUR:.2g} kWh"
        return f"{value:.2g} {unit}"


def _value(target: Target, phases: Sequence[_core.PhaseReport]) -> float:
    """The target of one run; NaN where it does not happen, or the run could not be made."""
    if not phases:
        return float("nan")
    index = target.index()
    of = phases if index is None else [phases[index]]
    values = [getattr(phase, target.result) for phase in of]
    return float("nan") if None in values else float(sum(values))


def average_slopes(points: Vector, values: Vector, target: Target) -> tuple[Vector, float]:
    """Slopes of the plane through some values that leaves the least squares, and what it leaves.

    Parameters
    ----------
    points :
        Scaled coefficients less their mean, shape (draws, n).
    values :
        Of the target at these; NaN where it does not happen.
    target :
        For messages.

    Returns
    -------
    tuple
        Slopes, shape (n,), and the variance of the values around the plane.

    Raises
    ------
    InvalidArgument
        The target happens too seldom, such as the overshoot of a set point that is never reached.
    """
    there = np.isfinite(values)
    happens = int(there.sum())
    free = happens - points.shape[1] - 1
    if free < points.shape[1]:
        raise InvalidArgument(
            f"target: the {target.words()} happens in {happens} of {there.size} forecasts only; is "
            "the set point reached?"
        )
    columns = np.column_stack([np.ones(happens), points[there]])
    found, *_ = np.linalg.lstsq(columns, values[there], rcond=None)
    left = values[there] - columns @ found
    return np.asarray(found[1:]), float(left @ left) / free


def target_slopes(
    fit: Fit, target: Target, names: Sequence[str], covariance: Vector, room: _core.Surroundings
) -> tuple[Vector, float]:
    """Slopes of the target by scaled coefficients over their spread, and what they do not explain.

    They are those of a regression on forecasts with coefficients drawn from the spread: a time may
    jump where the heat switches once more, which the slope at a single point does not tell.

    Parameters
    ----------
    names, covariance :
        Coefficients, and their scaled covariance now, shape (n, n).
    room :
        Surroundings.

    Returns
    -------
    tuple
        Slopes, shape (n,), and the variance around them, in the unit of the target.

    Raises
    ------
    InvalidArgument
        The target seldom happens.
    """
    target.index()
    generator = np.random.default_rng(_SEED)
    count = max(_DRAWS, 8 * len(names))
    points = generator.multivariate_normal(np.zeros(len(names)), covariance, size=count)
    middle = np.array(_core.to_scaled(fit.coefficients, names))
    kettle = fit.kettle.replace(surroundings=room)
    runs = _core.simulate_many(
        [
            _core.ForecastTask(
                kettle=kettle,
                coefficients=_core.from_scaled(fit.coefficients, names, point=list(middle + one)),
                recipe=target.recipe,
                start=room_start(kettle),
            )
            for one in points
        ],
        options=fit.options.integration.replace(output_interval=3600.0, tolerance=1e-5),
    )
    values = np.array([_value(target, one.phases) for one in runs])
    return average_slopes(points, values, target)
