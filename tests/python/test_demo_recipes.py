"""Every demo recipe, forecast on its kettle, against what physics or print says of it."""

import math
from pathlib import Path

import pytest

import kettlecast as kc
from kettlecast import candy
from kettlecast.demo import RECIPES, demo_path
from kettlecast.endings import ending_text

ICE = 273.15
FINE = kc.Options(output_interval=0.5)


def run(name: str) -> kc.Forecast:
    kettle = kc.read_kettle(demo_path(RECIPES[name]))
    return kc.forecast(kettle, kc.read_recipe(demo_path(name)), options=FINE)


@pytest.fixture(scope="module")
def forecasts() -> dict[str, kc.Forecast]:
    return {name: run(name) for name in RECIPES}


def test_every_recipe_of_the_folder_names_its_kettle() -> None:
    folder = Path(str(demo_path("kettle.toml"))).parent
    kettles = set(RECIPES.values())
    assert {path.name for path in folder.glob("*.toml")} == set(RECIPES) | kettles


@pytest.mark.parametrize("name", RECIPES)
def test_books_close_and_nothing_times_out(name: str, forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts[name]
    assert abs(found.balance.heat_residual) < 1e-8
    assert abs(found.balance.mass_residual) < 1e-8
    assert found.trace.notna().all(axis=None)
    assert kc.EndReason.timed_out not in {phase.ended for phase in found.result.phases}


# Source: heat in is at least what warms the product; specific heat by Siebel (1892),
# 0.837 + 3.349 w kJ/(kg K) with the share of water w, as in textbooks of food engineering.
@pytest.mark.parametrize("name", ["custard.toml", "reduce.toml", "water_boil.toml"])
def test_first_phase_takes_no_less_than_warming_takes(
    name: str, forecasts: dict[str, kc.Forecast]
) -> None:
    found = forecasts[name]
    (pour,) = found.recipe.phases[0].additions
    specific_heat = 837.0 + 3349.0 * pour.food.composition.water
    needed = pour.mass * specific_heat * (found.recipe.phases[0].set_point - pour.temperature)
    energy = found.result.phases[0].energy
    assert needed < energy < 2.0 * needed


# Source: McGee, On Food and Cooking (2004), table of sugar syrups: soft ball at 113 to 116 degC;
# teaching tables of the stages: 85 % sugar there.
def test_syrup_ends_at_soft_ball(forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts["syrup.toml"]
    stage = candy.stage("soft ball")
    sugar = sum(one.mass for one in found.recipe.phases[0].additions if one.name == "sugar")
    assert stage.sugar is not None
    assert sugar / found.result.product_mass == pytest.approx(stage.sugar, abs=0.02)
    assert "soft ball" in candy.stages_at(found.result.phases[1].peak_reading)
    assert ending_text(found, 1) == "probe 115 degC"
    # The floor coasts past the limit at which its heat goes off by the band and a little.
    limit = found.recipe.phases[1].floor_limit - ICE
    coasted = found.kettle.controller.dead_band + 2.0
    assert found.trace["floor_sensor.reading_C"].max() < limit + coasted


def difference_of(found: kc.Forecast) -> float:
    """Highest difference of floor and probe while steam was on [K]."""
    warm = found.trace[found.trace["phase"] == 1]
    return float((warm["floor_sensor.reading_C"] - warm["probe.reading_C"]).max())


def test_custard_keeps_its_difference_limit(forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts["custard.toml"]
    limit = found.recipe.phases[0].difference_limit
    band = found.kettle.controller.dead_band
    assert limit - band < difference_of(found) < limit + band + 2.0
    # Without the limit the floor gets hotter: the limit is what held it.
    free = found.recipe.phases[0].replace(difference_limit=math.inf)
    recipe = found.recipe.replace(phases=[free, found.recipe.phases[1]])
    assert difference_of(kc.forecast(found.kettle, recipe, options=FINE)) > limit + band + 2.0


# Source: lesson 19 of the IASRI course Food Science and Processing: yolk thickens from 65 degC;
# stirred custard is cooked at 82 to 85 degC and curdles above (common practice, no source).
def test_custard_thickens_does_not_curdle_and_is_cooled(forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts["custard.toml"]
    warm, cool = found.result.phases
    assert 82.0 < warm.peak - ICE < 85.0
    assert found.trace["probe.reading_C"].iloc[-1] == pytest.approx(40.0, abs=1e-3)
    assert ending_text(found, 1, "us") == "probe 104 degF"  # 40 degC
    assert cool.energy == pytest.approx(0.0, abs=1.0)
    # What the cold water takes warms it no more than to the product: m cp (T - T_in) t.
    cooling = found.kettle.jacket.cooling
    most = cooling.flow * 4190.0 * (warm.peak - cooling.inlet_temperature) * cool.duration
    assert 0.0 < found.balance.cooling_energy < most


# Source: steam tables, latent heat 2257 kJ/kg at 100 degC; saturation at 15 psig is 121 degC.
def test_reduced_sauce_has_lost_its_share(forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts["reduce.toml"]
    heat, reduce = found.result.phases
    held = found.recipe.phases[0].additions[0].mass - heat.evaporated
    assert reduce.evaporated == pytest.approx(0.12 * held, rel=1e-6)
    assert found.result.product_mass == pytest.approx(0.88 * held, rel=1e-6)
    assert reduce.energy > 2.257e6 * reduce.evaporated
    assert found.trace["jacket.temperature_C"].max() < 121.0
    assert ending_text(found, 1) == "12 % lost"


# Source: pieces thaw from the outside; in the same stock a larger one is always the colder.
def test_vegetables_end_when_the_coldest_is_done(forecasts: dict[str, kc.Forecast]) -> None:
    found = forecasts["vegetables.toml"]
    last = found.trace.iloc[-1]
    cores = [last[f"vegetables_frozen.{size}.core_temperature_C"] for size in ("small", "large")]
    assert cores[1] < cores[0]
    assert last["core_probe.reading_C"] == pytest.approx(75.0, abs=1e-3)
    assert cores[1] >= 75.0  # the probe lags behind a core that warms
    # Heat balance of mixing: 15 kg at -18 degC into 45 kg at 95 degC, ice melts at 334 kJ/kg.
    vegetables = found.recipe.phases[1].additions[0]
    water = vegetables.food.composition.water
    cold = vegetables.mass * (18.0 * 1.9e3 + water * 334e3)
    mixed = (45.0 * 4.18e3 * 95.0 - cold) / (45.0 * 4.18e3 + vegetables.mass * 3.7e3)
    second = found.trace[found.trace["phase"] == 2]
    assert second["liquid.temperature_C"].min() > mixed - 3.0
    assert second["liquid.temperature_C"].min() < 80.0
