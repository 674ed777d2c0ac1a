"""Stages of cooked sugar at sea level and at altitude."""

import pytest

import kettlecast as kc
from kettlecast import candy

ICE = 273.15


# Source: McGee, On Food and Cooking (2004), table of sugar syrups
@pytest.mark.parametrize(
    ("name", "celsius"),
    [
        ("thread", (102, 113)),
        ("Soft ball", (113, 116)),
        ("firm_ball", (118, 121)),
        ("hard ball", (121, 130)),
        ("soft crack", (132, 143)),
        ("hard crack", (149, 154)),
    ],
)
def test_both_columns_of_the_table_agree(name: str, celsius: tuple[float, float]) -> None:
    found = candy.stage_temperatures(name)
    assert [kelvin - ICE for kelvin in found] == pytest.approx(celsius, abs=1.0)


# Source: the same table: subtract 2 degF, rounded to whole ones, for each 305 m
@pytest.mark.parametrize("name", ["thread", "soft ball", "hard ball", "soft crack"])
def test_altitude_takes_two_degrees_fahrenheit_for_each_305_metres(name: str) -> None:
    high = float(kc.properties.pressure_at_altitude(5 * 305.0))
    for here, there in zip(
        candy.stage_temperatures(name), candy.stage_temperatures(name, high), strict=True
    ):
        assert 1.8 * (here - there) / 5.0 == pytest.approx(2.0, abs=0.5)


def test_caramel_browns_at_the_same_temperature_everywhere() -> None:
    here = candy.stage_temperatures("light caramel")
    assert candy.stage_temperatures("light caramel", 7e4) == here


# Source: the same water boils at another pressure; activity of the syrup model of the library
def test_water_left_at_a_stage_does_not_depend_on_the_place() -> None:
    sugar = kc.properties.sugar
    for name in ("soft ball", "hard ball"):
        low, _ = candy.stage_temperatures(name)
        high_up, _ = candy.stage_temperatures(name, 7e4)
        here = sugar.boiling_concentration(low, 101325.0)
        assert sugar.boiling_concentration(high_up, 7e4) == pytest.approx(here, abs=2e-3)


# Source: teaching tables of sugar in the stages, soft ball 85 % to hard crack 99 %
@pytest.mark.parametrize("stage", [one for one in candy.STAGES if one.sugar and one.sugar > 0.84])
def test_the_syrup_model_finds_the_printed_sugar(stage: candy.Stage) -> None:
    assert stage.sugar is not None
    low, high = (
        kc.properties.sugar.boiling_concentration(kelvin, 101325.0) for kelvin in stage.temperatures
    )
    assert low - 0.02 <= stage.sugar <= high + 0.02


def test_a_temperature_names_its_stage() -> None:
    assert candy.stages_at(ICE + 114.0) == ["soft ball"]
    assert candy.stages_at(ICE + 109.5, 84e3) == ["soft ball"]
    assert candy.stages_at(ICE + 145.0) == []


def test_unknown_stages_and_pressures_are_refused() -> None:
    with pytest.raises(kc.UnknownName, match="there are: thread, soft ball"):
        candy.stage("medium ball")
    with pytest.raises(kc.InvalidArgument, match="20000 to 200000 Pa"):
        candy.stage_temperatures("thread", 84.0)
