"""Residuals of a fit to one run, written down a second time for other minimisers."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from kettlecast import _core
from kettlecast.demo import demo_path
from kettlecast.fit_problem import FitOptions, observe
from kettlecast.kettle_file import read_kettle
from kettlecast.recipe_file import read_recipe
from kettlecast.run_log import Run, read_run

KETTLE = read_kettle(demo_path("kettle.toml"))
NAMES = ["floor.efficiency", "floor.film_factor", "floor.loss", "probe.lag", "probe.offset"]
CARDS = {card.name: card for card in _core.coefficient_cards()}

Vector = NDArray[np.float64]


def water_run() -> Run:
    """Water heated to boiling in the demo kettle."""
    recipe = read_recipe(demo_path("water_boil.toml"))
    return read_run(demo_path("water_boil_60kg.csv"), recipe=recipe)


def values_at(point: Vector) -> dict[str, float]:
    """Coefficients in their own units, from multiples of their prior spreads."""
    found = {}
    for name, x in zip(NAMES, point, strict=True):
        card = CARDS[name]
        shift = x * card.spread
        found[name] = card.value * np.exp(shift) if card.positive else card.value + shift
        found[name] = min(max(found[name], card.lower), card.upper)
    return found


def residuals_of(run: Run, options: FitOptions) -> Callable[[Vector], Vector]:
    """Residuals of readings and priors as a function of the scaled coefficients."""
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
