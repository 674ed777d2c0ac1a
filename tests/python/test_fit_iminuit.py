"""The fit against iminuit on the same cost, written down a second time: minimum and errors."""

from collections.abc import Callable

import numpy as np
import pytest
from fit_residuals import KETTLE, NAMES, Vector, cost_of, residuals_of, water_run
from iminuit import Minuit

from kettlecast.fit_problem import FitOptions
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit

Fitted = tuple[Fit, Callable[[Vector], Vector]]


@pytest.fixture(scope="module")
def fitted() -> Fitted:
    run, options = water_run(), FitOptions(loss="linear", estimate_errors=False, tolerance=1e-5)
    return fit(KETTLE, run, vary=NAMES, options=options), residuals_of(run, options)


def moved(ours: Fit) -> Vector:
    return np.array([ours.moved(name) for name in NAMES])


def minuit(cost: Callable[[Vector], float], start: Vector) -> Minuit:
    found = Minuit(cost, start)
    found.errordef = Minuit.LIKELIHOOD  # costs are half a chi-square
    found.precision = 1e-9  # of a cost that is integrated to a tolerance
    return found


def weighted(residuals: Vector, reduced: float) -> float:
    """Cost as the errors of the fit count it: data that scatter too much weigh less, priors not."""
    data, priors = np.split(residuals, [residuals.size - len(NAMES)])
    return float(0.5 * (data @ data) / max(1.0, reduced) + 0.5 * (priors @ priors))


def correlation(covariance: Vector) -> Vector:
    errors = np.sqrt(np.diag(covariance))
    return covariance / np.outer(errors, errors)


def test_same_minimum_as_iminuit(fitted: Fitted) -> None:
    ours, residuals = fitted
    theirs = minuit(lambda point: cost_of(residuals(point), "linear"), np.zeros(len(NAMES)))
    theirs.migrad()
    assert ours.success and theirs.valid
    # The fit stops when a step is worth less than 1e-5 of the cost.
    assert cost_of(residuals(moved(ours)), "linear") < theirs.fval * (1.0 + 1e-4)
    errors = np.sqrt(np.diag(ours.scaled_covar))
    assert np.all(np.abs(moved(ours) - np.array(theirs.values)) < 0.05 * errors)


def test_errors_are_those_of_hesse_to_the_curvature_of_the_readings(fitted: Fitted) -> None:
    ours, residuals = fitted
    theirs = minuit(lambda point: weighted(residuals(point), ours.redchi), moved(ours))
    theirs.strategy = 2
    theirs.hesse()
    # The fit leaves out the second derivatives of the readings, HESSE does not: up to a tenth.
    errors = np.sqrt(np.diag(ours.scaled_covar))
    np.testing.assert_allclose(errors, np.array(theirs.errors), rtol=0.1)
    difference = correlation(ours.scaled_covar) - correlation(np.array(theirs.covariance))
    assert np.max(np.abs(difference)) < 0.1


def test_errors_are_those_of_hesse_for_readings_without_curvature(fitted: Fitted) -> None:
    ours, residuals = fitted
    at, step = moved(ours), 1e-3
    moves = step * np.eye(len(NAMES))
    slopes = np.array([residuals(at + move) - residuals(at - move) for move in moves]) / (2 * step)
    there = residuals(at)

    def cost(point: Vector) -> float:
        return weighted(there + (point - at) @ slopes, ours.redchi)

    theirs = minuit(cost, at)
    theirs.strategy = 2
    theirs.hesse()
    # Slopes of the fit are difference quotients over 1 % of a prior spread.
    errors = np.sqrt(np.diag(ours.scaled_covar))
    np.testing.assert_allclose(errors, np.array(theirs.errors), rtol=0.005)
    difference = correlation(ours.scaled_covar) - correlation(np.array(theirs.covariance))
    assert np.max(np.abs(difference)) < 0.01
