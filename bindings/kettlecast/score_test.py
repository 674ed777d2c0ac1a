"""How much better a fit would be with one more unknown, from slopes alone.

The score (Lagrange multiplier) test of a fit with priors: the slope of the readings by the
candidate is freed of what the fitted coefficients could do as well, and the rest is compared with
the residuals.

Sources: Rao, Proc. Cambridge Phil. Soc. 44 (1948) 50; Cook, Weisberg, Residuals and influence in
regression (1982), section 2.2.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from .error_model import STATED_RESIDUALS
from .fit_problem import Vector
from .losses import loss_slopes, losses

# A candidate whose readings can be had from the fitted coefficients to this share of their squares
# cannot be tested.
_LEAST_OWN = 1e-6


@dataclass(frozen=True)
class Sensors:
    """What residuals are worth: which sensor each comes from, and its independent readings.

    Attributes
    ----------
    of_row :
        Index of the sensor of each residual.
    count :
        Independent readings of each sensor [-].
    stated :
        Square of the stated error in squares of the error of the fit, for each sensor; None
        where the errors were given and not estimated.
    loss :
        As in `FitOptions`.
    """

    of_row: Vector
    count: Vector
    stated: Vector | None
    loss: str

    def chi_squares(self, residuals: Vector) -> Vector:
        """Sum of the losses of each sensor [-]."""
        lost = losses(residuals, self.loss)
        found = np.bincount(self.of_row, weights=lost, minlength=self.count.size)
        return np.asarray(found, dtype=np.float64)

    def deviance(self, residuals: Vector, scaled: Vector) -> float:
        """-2 log likelihood with the errors that fit the residuals best, and of the priors."""
        found = self.chi_squares(residuals)
        priors = float(scaled @ scaled)
        if self.stated is None:
            return float(found.sum()) + priors
        kept = self.count > 0.0
        free = self.count[kept] + STATED_RESIDUALS
        mean = (found[kept] + STATED_RESIDUALS * self.stated[kept]) / free
        return float(np.dot(free, np.log(mean))) + priors


@dataclass(frozen=True)
class Linear:
    """A fit near its best: weighted residuals, their slopes, and where it stands."""

    residuals: Vector  #: shape (m,) [-]
    slopes: Vector  #: by the fitted coefficients that are free, shape (m, n) [per prior spread]
    scaled: Vector  #: those coefficients in prior spreads from their priors, shape (n,) [-]
    sensors: Sensors


@dataclass(frozen=True)
class Tested:
    """What a candidate would do.

    Attributes
    ----------
    size, error :
        Change that explains the residuals best, and its standard error [prior spreads].
    likelihood_ratio :
        Fall of the deviance [-].
    fall :
        Fall of chi-square [-].
    """

    size: float
    error: float
    likelihood_ratio: float
    fall: float


def score_test(linear: Linear, column: Vector, size: float | None = None) -> Tested | None:
    """Test of one candidate; None if the fitted coefficients do what it does.

    Parameters
    ----------
    linear :
        The fit.
    column :
        Slopes of the weighted residuals by the candidate, shape (m,) [per prior spread].
    size :
        Where the candidate has only this one size.
    """
    weights = loss_slopes(linear.residuals, linear.sensors.loss)
    weighted = linear.slopes * weights[:, None]
    bent = linear.slopes.T @ weighted + np.eye(linear.scaled.size)
    shared = weighted.T @ column
    pull = weighted.T @ linear.residuals + linear.scaled
    answer = np.linalg.solve(bent, np.column_stack([shared, pull]))
    whole = float(column @ (weights * column))
    own = whole - float(shared @ answer[:, 0])
    if own <= _LEAST_OWN * max(whole, 1.0):
        return None
    score = float(column @ (weights * linear.residuals)) - float(shared @ answer[:, 1])
    step = -score / own if size is None else size
    moved = -(answer[:, 1] + step * answer[:, 0])
    after = linear.residuals + linear.slopes @ moved + step * column
    sensors = linear.sensors
    before_chi, after_chi = (sensors.chi_squares(one).sum() for one in (linear.residuals, after))
    fall = sensors.deviance(linear.residuals, linear.scaled) - sensors.deviance(
        after, linear.scaled + moved
    )
    scatter = min(1.0, float(after_chi / sensors.count.sum())) if sensors.stated is not None else 1
    return Tested(step, math.sqrt(scatter / own), fall, float(before_chi - after_chi))


def surprise(likelihood_ratio: float, count: float, learned: float) -> float:
    """Probability of so large a fall of the deviance if nothing is missing [-].

    Normal deviate of Student's t, from which the likelihood ratio of one more unknown is made:

        z = (8 f + 1) / (8 f + 3) sqrt(f log(1 + t^2 / f)),  likelihood ratio = n log(1 + t^2 / f)

    Source: Wallace, Ann. Math. Statist. 30 (1959) 1124.

    Parameters
    ----------
    likelihood_ratio :
        Fall of the deviance [-].
    count :
        Independent readings n [-].
    learned :
        How many of them the fitted coefficients took [-]; f = n - learned - 1.
    """
    if likelihood_ratio <= 0.0:
        return 1.0
    free = max(1.0, count - learned - 1.0)
    deviate = (8.0 * free + 1.0) / (8.0 * free + 3.0) * math.sqrt(likelihood_ratio * free / count)
    return math.erfc(deviate / math.sqrt(2.0))
