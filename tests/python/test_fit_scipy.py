"""The fit against SciPy's least_squares on the same residuals, written down a second time."""

import numpy as np
import pytest
from fit_residuals import KETTLE, NAMES, cost_of, residuals_of, values_at, water_run
from scipy.optimize import least_squares

from kettlecast.fit_problem import FitOptions
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.run_log import Run


@pytest.fixture(scope="module")
def water() -> Run:
    return water_run()


@pytest.mark.parametrize("loss", ["linear", "soft_l1", "huber"])
def test_same_minimum_as_scipy(water: Run, loss: str) -> None:
    options = FitOptions(loss=loss, estimate_errors=False, tolerance=1e-5)
    residuals = residuals_of(water, options)
    ours: Fit = fit(KETTLE, water, vary=NAMES, options=options)
    theirs = least_squares(
        residuals, np.zeros(len(NAMES)), loss=loss, diff_step=1e-2, x_scale=1.0, ftol=1e-5
    )
    assert ours.success and theirs.success
    point = np.array([ours.moved(name) for name in NAMES])
    # Both stop when a step is worth less than 1e-5 of the cost.
    assert cost_of(residuals(point), loss) < theirs.cost * (1.0 + 1e-4)
    for name, value in values_at(theirs.x).items():
        assert abs(ours.params[name].value - value) < 0.1 * ours.params[name].stderr, name
