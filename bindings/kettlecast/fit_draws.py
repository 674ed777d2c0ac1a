"""Coefficients drawn from what a fit leaves open."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from . import _core
from .fit_problem import CARDS
from .losses import loss_slopes

if TYPE_CHECKING:
    from .fit_result import Fit

Vector = NDArray[np.float64]

# Corrections of each draw; the second changes forecasts by far less than the first.
_CORRECTIONS = 2


#: Seed of forecasts that do not ask for another one, and of the draws that a file keeps.
USUAL_SEED = 20260101


def scaled_draws(fit: Fit, count: int, seed: int) -> Vector:
    """Scaled values drawn from the spread of a fit, shape (count, n).

    Normal draws lie on straight lines, what the logs say lies on curves: two heat capacities whose
    sum is known must not both be large. Where the fit has its logs, every draw x is moved so that
    its residuals r(x) are those that the slopes J at the best values promise,

        x := x - C J' W (r(x) - r - J (x0 - best))

    with C the covariance, W the weights of the loss and x0 the normal draw: steps of the search
    for coefficients under randomised data and priors.
    Source: Bardsley, Solonen, Haario & Laine, SIAM J. Sci. Comput. 36 (2014) A1895, randomize
    then optimize (from memory); here with a fixed matrix and a few steps.

    Draws are moved into the bounds of the cards. A draw at which a run cannot be made stays as it
    is. A fit from a file has no logs, but keeps draws made with the usual seed when it was saved.
    With another seed these come in random order; where more are asked for they come again.

    Parameters
    ----------
    fit :
        Any fit.
    count :
        Number of draws.
    seed :
        Of the random numbers; a longer list of draws begins with a shorter one.
    """
    generator = np.random.default_rng(seed)
    best = fit.scaled()
    normal = generator.multivariate_normal(best, fit.scaled_covar, size=count)
    if fit.search is None or fit.found is None:
        return _kept(fit, normal, seed)
    weights = loss_slopes(fit.found.residuals, fit.options.loss) / max(1.0, fit.redchi)
    step = fit.scaled_covar @ (fit.found.jacobian.T * weights)
    promised = fit.found.residuals + (normal - best) @ fit.found.jacobian.T
    lower, upper = _bounds(fit)
    points = normal
    for _ in range(_CORRECTIONS):
        points = np.clip(points, lower, upper)
        shown = fit.search.residuals_at(fit.coefficients, fit.errors, points)
        moves = [
            np.zeros(best.size) if one is None else step @ (one - wanted)
            for one, wanted in zip(shown, promised, strict=True)
        ]
        # Towards the draw, too, where bounds or the step before have moved it: that is its prior.
        back = (points - normal) @ fit.scaled_covar
        points = np.clip(points - np.array(moves) - back, lower, upper)
    return points


def _kept(fit: Fit, normal: Vector, seed: int) -> Vector:
    """Draws of the file in place of as many normal ones."""
    if fit.kept_draws is None or not len(fit.kept_draws):
        return normal
    order = np.arange(len(fit.kept_draws))
    if seed != USUAL_SEED:
        order = np.random.default_rng(seed).permutation(order)
    return np.asarray(fit.kept_draws[np.resize(order, len(normal))])


def _bounds(fit: Fit) -> tuple[Vector, Vector]:
    """Lowest and highest scaled values that the cards allow."""
    names = [one.name for one in fit.params.values()]
    base = _core.Coefficients()

    def scaled(end: str) -> Vector:
        values = [base.replace({name: getattr(CARDS[name], end)}) for name in names]
        return np.array(
            [_core.to_scaled(one, [name])[0] for one, name in zip(values, names, strict=True)]
        )

    return scaled("lower"), scaled("upper")
