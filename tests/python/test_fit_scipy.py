"""The fit against SciPy's least_squares on the same residuals, written down a second time here."""

from collections.abc import Callable

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import least_squares

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.fit_problem import FitOptions, observe
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
NAMES = ["floor.efficiency", "floor.film_factor", "floor.loss", "probe.lag", "probe.offset"]
CARDS = {card.name: card for card in _core.coefficient_cards()}

Vector = NDArray[np.float64]


@pytest.fixture(scope="module")
def water() -> Run:
    recipe = read_recipe(demo_path("water_boil.toml"))
    return read_run(demo_path("water_boil_60kg.csv"), recipe=recipe)


def values_at(point: Vector) -> dict[str, float]:
    found = {}
    for name, x in zip(NAMES, point, strict=True):
        card = CARDS[name]
        shift = x * card.spread
        found[name] = card.value * np.exp(shift) if card.positive else card.value + shift
        found[name] = min(max(found[name], card.lower), card.upper)
    return found


def residuals_of(run: Run, options: FitOptions) -> Callable[[Vector], Vector]:
    one = observe(run, KETTLE.surroundings, options.interval)
    share = min(1.0, float(np.median(np.diff(one.time))) / options.correlation_time)

    def residuals(point: Vector) -> Vector:
        shown = _core.replay(KETTLE, _core.Coefficients(values_at(point)), plan=one.plan)
        floor = np.sqrt(share) / options.floor_error * (shown.floor_reading - one.floor)
        probe = np.sqrt(share) / options.probe_error * (shown.probe_reading - one.probe)
        return np.concatenate([floor, probe, point])

    return residuals


def cost_of(residuals: Vector, loss: str) -> float:
    """Half the sum of the losses as SciPy's documentation defines them."""
    z = residuals**2
    rho = {
        "linear": z,
        "soft_l1": 2.0 * (np.sqrt(1.0 + z) - 1.0),
        "huber": np.where(z <= 1.0, z, 2.0 * np.sqrt(z) - 1.0),
    }
    return float(0.5 * np.sum(rho[loss]))


@pytest.mark.parametrize("loss", ["linear", "soft_l1", "huber"])
def test_same_minimum_as_scipy(water: Run, loss: str) -> None:
    options = FitOptions(loss=loss)
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
