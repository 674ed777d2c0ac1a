"""Which coefficients cannot be told apart: ridges of known direction, and a heat balance."""

import dataclasses

import numpy as np
import pytest
from made_logs import KETTLE, TRUTH, drive_runs, made_log

from kettlecast.fit_problem import CARDS
from kettlecast.fit_result import Fit
from kettlecast.fitting import fit
from kettlecast.known_combinations import determined_directions, inseparable

SCALES = ["floor.capacity_factor", "elements.heat_capacity", "floor.efficiency"]
OFFSETS = ["floor_sensor.offset", "floor_sensor.position"]


def ridge_fit(template: Fit, names: list[str], direction: list[float], strength: float) -> Fit:
    """A fit whose runs told one combination of scaled coefficients, with such information."""
    along = np.array(direction) / np.linalg.norm(direction)
    spread = np.linalg.inv(np.eye(len(names)) + strength * np.outer(along, along))
    one = next(iter(template.params.values()))
    params = {name: dataclasses.replace(one, name=name, run="", at_bound=False) for name in names}
    return dataclasses.replace(template, params=params, scaled_covar=spread)


@pytest.fixture(scope="module")
def template() -> Fit:
    return fit(KETTLE, made_log(drive_runs()["boil"], TRUTH, 1), vary=["floor.efficiency"])


def test_a_pair_on_a_ridge_is_known_as_a_product_of_powers(template: Fit) -> None:
    # Exact: with information k along v and priors of one, v x is known to 1 / sqrt(1 + k).
    ridge = ridge_fit(template, SCALES[:2], [0.8, 0.6], 400.0)
    (found,) = inseparable(ridge)
    (known,) = found.known
    spreads = [CARDS[name].spread for name in SCALES[:2]]
    exponent = (0.6 / spreads[1]) / (0.8 / spreads[0])
    assert known.weights[SCALES[0]] == pytest.approx(1.0)
    assert known.weights[SCALES[1]] == pytest.approx(exponent, rel=0.02)
    assert known.spread == pytest.approx(np.expm1(spreads[0] / 0.8 / 401.0**0.5), rel=0.02)
    assert str(found).startswith(
        "floor.capacity_factor and elements.heat_capacity cannot be told apart by these runs; "
        f"known is only floor.capacity_factor x elements.heat_capacity^{exponent:.2g}, to "
    )
    assert known.unit == ""


def test_three_on_one_ridge_are_one_group(template: Fit) -> None:
    # Correlations of the pairs are only -1/2; held still, each tells the others.
    ridge = ridge_fit(template, SCALES, [1.0, 1.0, 1.0], 1e4)
    assert not ridge.strong_pairs()
    (found,) = inseparable(ridge)
    assert found.names == tuple(SCALES)
    (known,) = found.known
    inverse = {name: 1.0 / CARDS[name].spread for name in SCALES}
    largest = max(inverse.values())
    for name in SCALES:
        assert known.weights[name] == pytest.approx(inverse[name] / largest)


def test_sums_keep_their_unit(template: Fit) -> None:
    ridge = ridge_fit(template, OFFSETS, [1.0, 1.0], 100.0)
    (found,) = inseparable(ridge)
    (known,) = found.known
    # A spread of 1 K weighs as much as one of 0.4 of the position.
    assert known.weights == pytest.approx({OFFSETS[0]: 1.0, OFFSETS[1]: 2.5})
    assert known.unit == "K"
    assert known.spread == pytest.approx((2.0 / 101.0) ** 0.5)
    assert "floor_sensor.offset + 2.5 x floor_sensor.position, to 0.14 K." in str(found)


def test_a_group_that_one_number_decides_is_known_in_pairs(template: Fit) -> None:
    # Correlations of 0.99 among all three: two combinations of two coefficients each.
    tied = ridge_fit(template, SCALES, [1.0, 1.0, 1.0], 0.0)
    tied = dataclasses.replace(tied, scaled_covar=0.01 * np.eye(3) + 0.99 * np.ones((3, 3)))
    (found,) = inseparable(tied)
    assert found.names == tuple(SCALES)
    assert [len(one.weights) for one in found.known] == [2, 2]
    assert {name for one in found.known for name in one.weights} == set(SCALES)
    for one in found.known:
        first, second = one.weights.values()
        assert first * second < 0.0
        assert " / " in one.formula


def test_what_is_told_apart_is_not_named(template: Fit) -> None:
    apart = ridge_fit(template, SCALES, [1.0, 0.0, 0.0], 1e4)
    assert inseparable(apart) == ()
    assert determined_directions(apart) == 1


def test_heat_and_mass_are_known_as_their_ratio() -> None:
    # Heat balance: water warms by efficiency x power / (mass x 4186 + the metal's heat capacity),
    # so that the exponent of the mass is the water's share of all heat capacity. Metal: plate of
    # 15 mm (7850 kg/m3, 490 J/(kg K)), wall of 3 mm (7900, 500), jacket and elements by their
    # cards. Left out are losses, a few per cent of the heat.
    metal = 0.5027 * 0.015 * 7850 * 490 + 1.131 * 0.003 * 7900 * 500 + 0.679 * 1e4 + 0.3 * 18e3
    water = 60.0 * 4186.0
    logs = [made_log(run, TRUTH, 1) for run in drive_runs().values()][1:2]
    found = fit(
        KETTLE,
        logs,
        vary=["floor.efficiency", "evaporation.factor", "wall.loss"],
        per_run=["addition.mass_factor"],
    )
    groups = [one for one in found.inseparable() if "floor.efficiency" in one.names]
    assert groups and "addition.mass_factor [steps]" in groups[0].names
    weights = groups[0].known[0].weights
    ratio = weights["addition.mass_factor [steps]"] / weights["floor.efficiency"]
    assert ratio == pytest.approx(-water / (water + metal), rel=0.05)
