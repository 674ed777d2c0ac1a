"""The spread of a forecast to first order: standard deviations through slopes.

An ensemble follows bends, limits and jumps, slopes do not: where in its cycle a thermostat hands a
hot floor on to the next phase is not in them. But slopes take a few runs instead of a hundred, and
say at once which input makes how much of the spread.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from statistics import NormalDist
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from . import _core
from .errors import InvalidArgument
from .intervals import Interval
from .propagation import DAYS_OF_HANDS, misread_signs, poured_so_far, shared_model_error
from .scatter import Scatter
from .sensitivities import Sensitivities

if TYPE_CHECKING:
    from .fit_result import Fit

Vector = NDArray[np.float64]

# Lateness of size s is s g |z| with z normal and g^2 = n / chi-square(n) common to a batch. As
# shares of s: its mean E[g] sqrt(2/pi), its standard deviation for a given g, and what g does to
# the mean.
_PACE = math.sqrt(DAYS_OF_HANDS / 2.0) * (
    math.gamma((DAYS_OF_HANDS - 1.0) / 2.0) / math.gamma(DAYS_OF_HANDS / 2.0)
)
_PACE_SQUARED = DAYS_OF_HANDS / (DAYS_OF_HANDS - 2.0)
_LATE_MEAN = _PACE * math.sqrt(2.0 / math.pi)
_LATE_SPREAD = math.sqrt(_PACE_SQUARED * (1.0 - 2.0 / math.pi))
_LATE_TOGETHER = math.sqrt((_PACE_SQUARED - _PACE**2) * 2.0 / math.pi)
_OF_ADDITIONS = {
    "hands": "hand_delay",
    "ingredient_temperatures": "ingredient_temperature",
    "masses": "mass",
}


@dataclass(frozen=True, eq=False)
class Linear:
    """What a quantity of a forecast may differ by, to first order.

    Attributes
    ----------
    table :
        One row per source: how far it shifts the middle, and the standard deviation it gives, in
        SI units. Sources: coefficients, model_error, room, hands, ingredient_temperatures, masses.
    value :
        By plan.
    """

    table: pd.DataFrame
    value: float

    @property
    def spread(self) -> float:
        """Standard deviation from all sources together."""
        return float(np.sqrt(np.sum(self.table["sd"] ** 2)))

    def interval(self, level: float = 0.9) -> Interval:
        """Normal interval around the value, shifted by what hands are late."""
        middle = self.value + float(self.table["shift"].sum())
        half = NormalDist().inv_cdf(0.5 + 0.5 * level) * self.spread
        return Interval(middle - half, middle + half, level)


@dataclass(frozen=True, eq=False)
class Gradient:
    """Slopes of one quantity of one forecast, ready to be put together.

    Attributes
    ----------
    value :
        By plan.
    coefficients :
        By the scaled coefficients that all runs of the fit share, shape (n,).
    inputs :
        By each input that batches differ in, and by "room".
    errors :
        By the error of floor and probe reading: pairs of phase mass [kg] and slope.
    """

    value: float
    coefficients: Vector
    inputs: Mapping[tuple[str, int, str, int], float]
    errors: Mapping[str, tuple[tuple[float, float], ...]]


def gradient_of(
    fit: Fit,
    recipe: _core.Recipe,
    sensitivities: Sensitivities,
    *,
    quantity: str = "duration",
    phase: int | None = None,
) -> Gradient:
    """Slopes of a quantity by all that a batch may differ in.

    Parameters
    ----------
    fit :
        Whose coefficients the forecast used.
    recipe, sensitivities :
        Of the forecast.
    quantity, phase :
        As for `Sensitivities.of`.

    Raises
    ------
    InvalidArgument
        The phase has no such quantity.
    UnknownName
        No such quantity or phase.
    """
    slopes = sensitivities.of(quantity, phase)
    if quantity == "overshoot_reading":
        raise InvalidArgument(
            "linear spread: overshoot_reading is a highest value of readings with errors, which "
            "has no slope by them; allowed: overshoot, or the interval of drawn batches"
        )
    if slopes.isna().any():
        raise InvalidArgument(f"linear spread: phase {phase} has no {quantity}: not reached")
    reports = sensitivities.result.phases
    chosen = reports if phase is None else [reports[phase - 1]]
    names = [one.name for one in fit.params.values() if not one.run]
    scaled = np.array(slopes[names]) * np.array(_core.scaled_slopes(fit.coefficients, names))
    inputs = {
        (one.input.kind, one.input.phase, one.input.name, one.input.occurrence): float(
            slopes[one.label]
        )
        for one in sensitivities.levers
        if one.input is not None
    }
    inputs[_ROOM] = float(slopes["room.offset"] + slopes["start"])
    value = float(sum(getattr(one, quantity) for one in chosen))
    if quantity == "overshoot":
        # Slopes count from the set point that moves; above the planned one the true value lies by
        # the error of the reading more.
        slopes[f"phase {phase}: set point"] += 1.0
    return Gradient(value, scaled, inputs, _by_errors(recipe, slopes))


_ROOM = ("room", 0, "", 1)


def _by_errors(
    recipe: _core.Recipe, slopes: pd.Series
) -> dict[str, tuple[tuple[float, float], ...]]:
    masses = poured_so_far(recipe)
    found = {}
    for kind in ("floor_reading", "probe_reading"):
        found[kind] = tuple(
            (mass, sign * float(slopes[f"phase {number}: set point"]))
            for number, (phase, mass) in enumerate(zip(recipe.phases, masses, strict=True), start=1)
            if (sign := misread_signs(phase.regulated).get(kind, 0.0)) != 0.0
        )
    return found


def linear_spread(
    fit: Fit, scatter: Scatter, gradient: Gradient, less: Gradient | None = None
) -> Linear:
    """Spread of a quantity, or of the difference of two, through slopes.

        var = g' C g + sum over inputs of (slope x standard deviation)^2

    with the gradient g by the scaled coefficients and their covariance C. In a difference the
    gradients of what both forecasts have in common are subtracted first. Hands that are late by
    the absolute value of a normal number shift the middle too.

    Source: propagation of uncertainty, JCGM 100:2008 (GUM), section 5.

    Parameters
    ----------
    fit :
        Whose coefficients the forecasts used.
    scatter :
        What differs from batch to batch.
    gradient, less :
        Of the quantity, and of the one it is less, on the same day.
    """
    other = less or Gradient(0.0, np.zeros_like(gradient.coefficients), {}, {})
    by_coefficients = gradient.coefficients - other.coefficients
    size = by_coefficients.size
    covariance = fit.scaled_covar[:size, :size]
    spread = {
        "coefficients": math.sqrt(max(0.0, float(by_coefficients @ covariance @ by_coefficients))),
        "model_error": math.sqrt(_known_from(scatter.residuals))
        * math.hypot(
            *(
                getattr(scatter, kind) * math.sqrt(_of_errors(gradient.errors, other.errors, kind))
                for kind in ("floor_reading", "probe_reading")
            )
        ),
        "room": abs(scatter.room * _differences(gradient, other, "room")[0]),
    }
    shift = dict.fromkeys(spread, 0.0)
    for source, kind in _OF_ADDITIONS.items():
        slopes = getattr(scatter, kind) * _differences(gradient, other, kind)
        spread[source] = math.sqrt(float(slopes @ slopes))
        if kind == "hand_delay":
            together = float(slopes.sum())
            shift[source] = _LATE_MEAN * together
            spread[source] = math.hypot(_LATE_SPREAD * spread[source], _LATE_TOGETHER * together)
    table = pd.DataFrame({"shift": shift, "sd": spread})
    table.index.name = "source"
    return Linear(table, gradient.value - other.value)


def _known_from(residuals: float) -> float:
    """Variance of Student's distribution [-]."""
    return 1.0 if math.isinf(residuals) else residuals / (residuals - 2.0)


def _differences(gradient: Gradient, other: Gradient, kind: str) -> Vector:
    """Slopes by the inputs of a kind, those that both have subtracted."""
    keys = {key: None for key in (*gradient.inputs, *other.inputs) if key[0] == kind}
    return np.array([gradient.inputs.get(key, 0.0) - other.inputs.get(key, 0.0) for key in keys])


def _of_errors(
    errors: Mapping[str, tuple[tuple[float, float], ...]],
    less: Mapping[str, tuple[tuple[float, float], ...]],
    kind: str,
) -> float:
    """Variance for errors of 1 K: phases are drawn on their own, like phases of two batches are
    correlated as far as their masses agree."""
    ours, theirs = errors.get(kind, ()), less.get(kind, ())
    total = float(sum(slope**2 for _, slope in (*ours, *theirs)))
    for (mass, slope), (other, less_slope) in zip(ours, theirs, strict=False):
        total -= 2.0 * slope * less_slope * shared_model_error(mass, other)
    return max(0.0, total)
