"""What holds for every bundled food by definition, whatever its composition.

The other side of every comparison is a derivative, an integral or a bound of the same quantity, so
no expected value comes from the library.
"""

import numpy as np
import pytest

import kettlecast as kc

FOODS = kc.food_names()
WATERY = [
    name for name in FOODS if (parts := kc.food(name).composition).water > 0.7 and parts.fat < 0.05
]
COLD, HOT = 233.15, 413.15  # [K]

foods = kc.properties.foods


def slope(function, food: kc.Food, kelvin: float, step: float = 1e-3) -> float:
    """Central difference of a property over temperature."""
    return (function(food, kelvin + step) - function(food, kelvin - step)) / (2.0 * step)


def onset(food: kc.Food) -> float:
    """Freezing point of the model, which starts plain water 0.01 K below 0 degC [K]."""
    return min(food.freezing_point, 273.14)


@pytest.fixture(params=FOODS)
def food(request: pytest.FixtureRequest) -> kc.Food:
    return kc.food(request.param)


def test_there_are_enough_foods() -> None:
    assert len(FOODS) >= 70


def test_slope_of_the_enthalpy_is_the_apparent_specific_heat(food: kc.Food) -> None:
    for kelvin in np.linspace(COLD + 1.0, HOT, 60):
        if abs(kelvin - onset(food)) < 0.5:
            continue
        expected = slope(foods.specific_enthalpy, food, kelvin)
        assert foods.apparent_specific_heat(food, kelvin) == pytest.approx(expected, rel=2e-5)


def test_heating_to_boiling_takes_the_integral_of_the_specific_heat(food: kc.Food) -> None:
    # The model holds the specific heat at its value at 50 degC; of a quadratic over 0-100 degC that
    # is the mean less a third of the bend: 0.5 % at most, for dry starch.
    kelvin = np.linspace(273.15, 373.15, 201)
    values = np.array([foods.specific_heat(food, t) for t in kelvin])
    expected = np.sum(0.5 * (values[1:] + values[:-1]) * np.diff(kelvin))
    rise = foods.specific_enthalpy(food, 373.15) - foods.specific_enthalpy(food, 273.15)
    assert rise == pytest.approx(expected, rel=5e-3)


@pytest.mark.parametrize("name", ["chen", "schwartzberg"])
def test_slopes_of_the_estimates_are_their_specific_heats(food: kc.Food, name: str) -> None:
    enthalpy = getattr(foods, f"{name}_specific_enthalpy")
    heat = getattr(foods, f"{name}_specific_heat")
    for kelvin in np.linspace(COLD, 313.15, 40):
        if abs(kelvin - onset(food)) < 0.5:
            continue
        assert heat(food, kelvin) == pytest.approx(slope(enthalpy, food, kelvin), rel=2e-5)


def test_enthalpy_rises_through_freezing(food: kc.Food) -> None:
    kelvin = np.concatenate([np.linspace(COLD, 276.0, 800), np.linspace(276.1, HOT, 100)])
    values = [foods.specific_enthalpy(food, t) for t in kelvin]
    assert np.all(np.diff(values) > 0.0)


@pytest.mark.parametrize("name", ["ice_fraction", "tchigeov_ice_fraction"])
def test_ice_lies_between_nothing_and_the_water(food: kc.Food, name: str) -> None:
    ice = getattr(foods, name)
    values = np.array([ice(food, t) for t in np.linspace(228.15, 280.0, 300)])
    assert np.all(values >= 0.0)
    # Fractions are scaled to add up to 1, which the tables miss by up to 2 %.
    assert np.all(values <= food.composition.water * 1.02 + 1e-12)
    assert np.all(np.diff(values) <= 0.0)
    assert ice(food, food.freezing_point) == 0.0


def test_latent_heat_bounds_the_heat_of_the_ice(food: kc.Food) -> None:
    # 334 kJ/kg of all water, ASHRAE Table 3; ice up to 1 % more because fractions are scaled.
    most = 334e3 * 1.02 * food.composition.water
    assert 333.43e3 * foods.ice_fraction(food, COLD) <= most
    assert foods.latent_heat(food) <= most


def test_conductivity_lies_between_the_bounds_of_mixing(food: kc.Food) -> None:
    parts = kc.properties.components
    for kelvin in np.linspace(273.15, HOT, 15):
        least = foods.series_conductivity(food, kelvin)
        most = foods.conductivity(food, kelvin)
        assert 0.0 < least <= most * (1.0 + 1e-12)
        assert parts.fat.conductivity(kelvin) * (1.0 - 1e-12) <= least
        assert most <= parts.water.conductivity(kelvin) * (1.0 + 1e-12)


def test_freezing_keeps_to_the_bounds_of_mixing(food: kc.Food) -> None:
    for kelvin in np.linspace(COLD, onset(food) - 1e-3, 15):
        ice = min(foods.ice_fraction(food, kelvin), food.composition.water)
        least = foods.frozen_series_conductivity(food, kelvin, ice)
        most = foods.frozen_conductivity(food, kelvin, ice)
        assert 0.0 < least <= most * (1.0 + 1e-12)
        assert 850.0 < foods.frozen_density(food, kelvin, ice) < 2500.0


def test_density_and_specific_heat_are_those_of_matter(food: kc.Food) -> None:
    parts = kc.properties.components
    for kelvin in np.linspace(275.0, HOT, 15):
        assert parts.fat.density(kelvin) * (1.0 - 1e-12) <= foods.density(food, kelvin)
        assert foods.density(food, kelvin) <= parts.ash.density(kelvin) * (1.0 + 1e-12)
        heat = foods.specific_heat(food, kelvin)
        assert parts.ash.specific_heat(kelvin) * (1.0 - 1e-12) <= heat
        assert heat <= parts.water.specific_heat(kelvin) * (1.0 + 1e-12)


@pytest.mark.parametrize("name", WATERY)
def test_chen_and_choi_agree_for_watery_foods(name: str) -> None:
    # Chen (1985): 4.19 - 2.30 x_s - 0.628 x_s^3 knows no fat, so only watery, lean foods.
    found = kc.food(name)
    chen = foods.chen_specific_heat(found, 293.15)
    assert chen == pytest.approx(foods.specific_heat(found, 293.15), rel=0.04)


@pytest.mark.parametrize(
    ("call", "told"),
    [
        (lambda food: foods.chen_specific_heat(food, 100.0), "foods.chen_specific_heat"),
        (lambda food: foods.frozen_density(food, 263.15, 1.5), "ice_fraction"),
        (lambda food: foods.frozen_density(food, 300.0, 0.1), "temperature"),
    ],
)
def test_what_has_no_meaning_is_refused(call, told: str) -> None:
    with pytest.raises(kc.InvalidArgument, match=told):
        call(kc.food("carrot"))
