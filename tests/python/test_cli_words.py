"""Words of the command line for foods, and for how the phases of a forecast end."""

from pathlib import Path

import pytest
from cli_runs import KETTLE, plain, run

import kettlecast as kc
from kettlecast.demo import RECIPES, demo_path
from kettlecast.endings import ending_text, rule_text


def said_of(food: str, *more: object) -> str:
    result = run("foods", food, *more)
    assert result.exit_code == 0
    return " ".join(result.stdout.split())


# Source: USDA SR 28, no. 11546, tomato paste: water 73.5 %, sugars 12.18 %; Harper & El Sahrigi,
# J. Food Sci. 30 (1965) 470: K 18.7 Pa s^n and n 0.40 at 32.2 degC and 30 % solids, from memory.
def test_foods_tells_sugar_salt_and_consistency_of_one() -> None:
    said = said_of("Tomato_paste")
    for words in (
        "water 73.5 %",
        "of it sugar 12.2 %",
        "of it salt 0.1 %",
        "consistency tomato paste K = 18.7 Pa s^n, n = 0.4 at 32.2 degC and 30 % dry matter",
        "source: Harper & El Sahrigi",
        "source: USDA National Nutrient Database",
    ):
        assert words in said
    assert "begins to freeze at 28.4 degF" in said_of("tomato paste", "--us")  # -2 degC
    assert "consistency like water" in said_of("milk")
    assert said_of("carrots").startswith("carrot (also carrots)")


def test_foods_refuses_what_is_not_known() -> None:
    result = run("foods", "carot")
    assert result.exit_code == 1
    assert 'kettlecast: food "carot" is not known; nearest: carrot, apricot' in result.stderr


def test_foods_lists_all_with_sugar_and_salt() -> None:
    said = run("foods").stdout
    assert "(sugar)" in said
    assert "(salt)" in said
    found = plain("foods")
    assert [one["name"] for one in found] == kc.food_names()
    cream = plain("foods", "cream")
    assert cream["consistency"]["consistency"] == pytest.approx(6.9e-3)
    assert cream["composition"]["fat"] == pytest.approx(0.37)


@pytest.mark.parametrize(
    ("recipe", "ends"),
    [
        ("reduce.toml", "12 % lost"),
        ("syrup.toml", "probe 115 degC"),
        ("vegetables.toml", "core 75 degC"),
        ("custard.toml", "held 3:00 min"),
        ("stew.toml", "after 25:00 min"),
    ],
)
def test_forecast_says_how_a_phase_ended(recipe: str, ends: str) -> None:
    result = run("forecast", demo_path(RECIPES[recipe]), demo_path(recipe))
    assert result.exit_code == 0
    assert ends in result.stdout


def test_an_end_is_told_in_the_units_asked_for() -> None:
    rule = kc.EndRule(kind=kc.EndKind.above, signal=kc.Regulated.difference, value=20.0)
    assert rule_text(rule, "us") == "difference 36 degF"  # 20 K
    lost = kc.EndRule(kind=kc.EndKind.mass_lost, value=2.26796185)
    assert rule_text(lost, "us") == "5 lb lost"  # 5 times 0.45359237 kg
    assert rule_text(lost) == "2.268 kg lost"


def recipe_of(folder: Path, text: str) -> kc.Recipe:
    path = folder / "recipe.toml"
    path.write_text(
        f'[recipe]\nname = "r"\n[[phase]]\nname = "p"\n{text}\n[[phase.add]]\nfood = "water"\n'
        'mass = "40 kg"\ntemperature = "20 degC"\n',
        encoding="utf-8",
    )
    return kc.read_recipe(path)


def test_of_several_readings_the_one_that_was_met_is_told(tmp_path: Path) -> None:
    heat = 'regulate = "probe"\nset_point = "90 degC"\nstir = "20 rpm"\n'
    kettle = kc.read_kettle(KETTLE)
    first = recipe_of(tmp_path, heat + 'until = { probe_above = "60 degC", floor_above = "200 C" }')
    assert ending_text(kc.forecast(kettle, first), 0) == "probe 60 degC"
    other = recipe_of(tmp_path, heat + 'until = { probe_above = "89 degC", floor_above = "50 C" }')
    assert ending_text(kc.forecast(kettle, other), 0) == "floor 50 degC"


# A difference is no temperature: 20 K are neither -253 degC nor -424 degF.
def test_a_difference_is_not_shown_as_a_temperature(tmp_path: Path) -> None:
    heat = 'regulate = "difference"\nset_point = "20 K"\nduration = "10 min"\nstir = "20 rpm"'
    found = kc.forecast(kc.read_kettle(KETTLE), recipe_of(tmp_path, heat))
    for system, sign in (("metric", "C"), ("us", "F")):
        row = found.to_dataframe(system).iloc[0]
        assert row[[f"peak_{sign}", f"peak_reading_{sign}"]].isna().all()
    assert "-2" not in run("forecast", KETTLE, tmp_path / "recipe.toml").stdout
