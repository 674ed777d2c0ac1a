"""Draws from a fit follow what the logs say, not only its slopes."""

import dataclasses

import numpy as np
from made_logs import KETTLE, drive_runs, made_log

import kettlecast as kc
from kettlecast.fit_draws import scaled_draws

# Two heat capacities whose sum a heat-up tells: what is left open is a curve.
VARY = ["floor.efficiency", "floor.capacity_factor", "elements.heat_capacity"]
OPTIONS = kc.FitOptions(
    loss="linear", floor_error=0.3, probe_error=0.1, correlation_time=10.0, estimate_errors=False
)


def fitted() -> kc.Fit:
    truth = {"floor.efficiency": 0.9, "elements.heat_capacity": 0.6}
    return kc.fit(KETTLE, made_log(drive_runs()["steps"], truth, 3), vary=VARY, options=OPTIONS)


def chi_squares(fit: kc.Fit, points: np.ndarray) -> np.ndarray:
    """Of data and priors at scaled points, above their least."""
    assert fit.search is not None
    best = fit.scaled()
    shown = fit.search.residuals_at(fit.coefficients, fit.errors, np.vstack([best, points]))
    data = np.array([np.sum(one**2) for one in shown if one is not None])
    priors = np.sum(np.vstack([best, points]) ** 2, axis=1)
    return (data + priors)[1:] - (data + priors)[0]


def test_draws_are_as_likely_as_normal_ones_are_meant_to_be() -> None:
    fit = fitted()
    followed = chi_squares(fit, scaled_draws(fit, 60, 1))
    straight = chi_squares(fit, scaled_draws(dataclasses.replace(fit, search=None), 60, 1))
    # Three values: chi-square with 3 degrees of freedom has the mean 3.
    assert 2.0 < np.mean(followed) < 4.5
    assert np.mean(straight) > 1.5 * np.mean(followed)


def test_draws_stay_within_bounds_and_come_again() -> None:
    fit = fitted()
    drawn = fit.draws(50, 4)
    for card in kc.coefficient_cards():
        if card.name in VARY:
            assert all(card.lower <= one[card.name] <= card.upper for one in drawn)
    np.testing.assert_array_equal(scaled_draws(fit, 5, 4), scaled_draws(fit, 50, 4)[:5])
