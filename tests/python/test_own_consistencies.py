"""Consistencies of the foods of a recipe file: read, refused, written, and in the JSON Schema."""

from pathlib import Path
from typing import Any, get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import kettlecast as kc
from kettlecast.consistencies import bundled_consistencies, consistency
from kettlecast.demo import demo_path
from kettlecast.errors import FileFormatError
from kettlecast.units import System

HEAD = (
    '[recipe]\nname = "test"\n[[phase]]\nname = "only"\nduration = "60 s"\n'
    '[[phase.add]]\nfood = "house sauce"\nmass = "5 kg"\ntemperature = "20 degC"\n'
    '[foods."house sauce"]\nwater = "90 %"\ncarbohydrate = "8 %"\nash = "2 %"\n'
)
SYSTEMS = get_args(System)


def written(folder: Path, text: str) -> Path:
    path = folder / "recipe.toml"
    path.write_text(HEAD + text, encoding="utf-8")
    return path


def own_food(folder: Path, text: str) -> kc.Food:
    return kc.read_recipe(written(folder, text)).phases[0].additions[0].food


def refusal(folder: Path, text: str) -> str:
    with pytest.raises(FileFormatError) as caught:
        kc.read_recipe(written(folder, text))
    return str(caught.value).removeprefix(f"{folder / 'recipe.toml'}: ")


# What the bundled rows say of thick foods, as their own tests check against the printed tables.
@pytest.mark.parametrize(
    ("food", "row"),
    [
        ("cream", "cream 40 % fat"),
        ("honey", "honey"),
        ("tomato paste", "tomato paste"),
        ("tomato puree", "tomato sauce"),
        ("tomato sauce", "tomato sauce"),
        ("apple sauce", "apple sauce"),
    ],
)
def test_thick_foods_are_thick_and_thin_ones_thin(food: str, row: str) -> None:
    assert kc.food(food).consistency == consistency(row)
    assert kc.food("water").consistency == kc.food("milk").consistency == kc.Consistency()


# Source: Steffe, Rheological Methods in Food Process Engineering (1996), appendix: cream of 40 %
# fat 6.90 mPa s at 40 degC; white clover honey 4.8 Pa s at 25 degC; both from memory.
@pytest.mark.parametrize(
    ("food", "celsius", "expected"), [("cream", 40, 6.9e-3), ("honey", 25, 4.8)]
)
def test_a_food_is_as_thick_as_printed(food: str, celsius: float, expected: float) -> None:
    liquid = kc.food(food).consistency
    found = kc.properties.consistency.apparent_viscosity(liquid, celsius + 273.15, 10.0, 0.0, 0.3)
    assert found == pytest.approx(expected, rel=0.01)


def test_a_consistency_by_name_is_that_row(tmp_path: Path) -> None:
    assert own_food(tmp_path, 'consistency = "White_Sauce"\n').consistency == consistency(
        "bechamel"
    )


def test_a_table_is_read_in_si(tmp_path: Path) -> None:
    table = (
        '[foods."house sauce".consistency]\nconsistency = 2\nflow_index = 0.43\n'
        'reference_temperature = "90 degF"\nactivation_energy = 12.2e3\nreference_solids = "10 %"\n'
        'solids_exponent = 14.9\nthickens_from = "140 degF"\nthickens_until = "95 degC"\n'
        'thickening_factor = 30.0\nthickening_rate = 0.01\nsource = "measured at noon"\n'
    )
    found = own_food(tmp_path, table).consistency.to_dict()
    assert found.pop("source") == "measured at noon"
    assert found == pytest.approx(
        {
            "consistency": 2.0,
            "flow_index": 0.43,
            "reference_temperature": 273.15 + 58.0 / 1.8,
            "activation_energy": 12200.0,
            "reference_solids": 0.1,
            "solids_exponent": 14.9,
            "thickens_from": 333.15,  # 140 degF are 60 degC
            "thickens_until": 368.15,
            "thickening_factor": 30.0,
            "thickening_rate": 0.01,
        },
        rel=1e-12,
    )


def test_what_is_wrong_in_a_consistency_is_told(tmp_path: Path) -> None:
    names = ", ".join(sorted(bundled_consistencies()))
    assert refusal(tmp_path, 'consistency = "gravey"\n') == (
        'foods.house sauce.consistency: consistency "gravey" is not known (did you mean "gravy"?); '
        f"there are: {names}"
    )
    assert refusal(tmp_path, "consistency = 3\n") == (
        'foods.house sauce.consistency: must be a name such as "custard", or a table; got 3'
    )


def test_every_problem_of_a_table_is_told(tmp_path: Path) -> None:
    table = (
        '[foods."house sauce".consistency]\nconsistency = "2 Pa s"\nflowindex = 0.4\n'
        "thickens_from = 60\nthickening_rate = true\n"
    )
    lines = [line.strip() for line in refusal(tmp_path, table).splitlines()]
    where = "foods.house sauce.consistency"
    assert lines == [
        "4 problems",
        f'{where}.consistency: "2 Pa s" is not a plain number in Pa s^n; write it without unit and '
        "quotes, for example 0.7",
        f'{where}.thickens_from: "60" is not a temperature: the unit is missing, '
        'for example "165 degF"',
        f'{where}.thickening_rate: "True" is not a plain number in 1/s; write it without unit and '
        "quotes, for example 0.01",
        f'{where}.flowindex: unknown key (did you mean "flow_index"?); allowed: consistency, '
        "flow_index, reference_temperature, activation_energy, reference_solids, solids_exponent, "
        "thickens_from, thickens_until, thickening_factor, thickening_rate, source",
    ]


def test_a_liquid_that_cannot_be_is_told(tmp_path: Path) -> None:
    table = "consistency = { consistency = 1.0, flow_index = 7.0 }\n"
    told = refusal(tmp_path, table)
    assert told == ("foods.house sauce: Consistency: flow_index must be between 0.05 and 2, got 7")


def test_sugar_and_salt_are_parts_of_their_components(tmp_path: Path) -> None:
    found = own_food(tmp_path, 'sugar = "8 %"\nsalt = "1.5 %"\n')
    assert (found.sugar, found.salt) == (pytest.approx(0.08), pytest.approx(0.015))
    assert refusal(tmp_path, 'sugar = "9 %"\n') == (
        'foods.house sauce: Food "house sauce": sugar (part of the carbohydrate) must be between '
        "0 and 0.08 kg/kg, got 0.09 kg/kg"
    )
    assert refusal(tmp_path, 'sugar = "8 g"\n') == (
        'foods.house sauce.sugar: "8 g" is not a share: unit "g" unknown; allowed: %'
    )


def recipe_of(food: kc.Food) -> kc.Recipe:
    pour = kc.Addition(name=food.name, food=food, mass=3.0)
    end = kc.EndRule(kind=kc.EndKind.elapsed, value=60.0)
    return kc.Recipe(name="r", phases=[kc.Phase(name="p", ends=[end], additions=[pour])])


def back(food: kc.Food, folder: Path, system: System) -> kc.Food:
    kc.write_recipe(recipe_of(food), folder / "r.toml", system)
    found = kc.read_recipe(folder / "r.toml")
    assert found == recipe_of(food)
    return found.phases[0].additions[0].food


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("name", sorted(bundled_consistencies()))
def test_a_bundled_row_is_written_by_its_name(tmp_path: Path, name: str, system: System) -> None:
    food = kc.food("stock").replace(name="my stock", consistency=consistency(name))
    back(food, tmp_path, system)
    text = (tmp_path / "r.toml").read_text(encoding="utf-8")
    assert [line for line in text.splitlines() if line.startswith("consistency = ")]
    assert ".consistency]" not in text


def floats(low: float, high: float) -> Any:
    return st.floats(low, high, allow_nan=False)


def degrees(low: float, high: float) -> Any:
    """Temperatures [K] between two [degC], to the nanokelvin, as files are read."""
    return floats(low + 273.15, high + 273.15).map(lambda kelvin: round(kelvin, 9))


liquids = st.builds(
    kc.Consistency,
    consistency=floats(1e-6, 1e5),
    flow_index=floats(0.05, 2.0),
    reference_temperature=degrees(-10, 199),
    activation_energy=floats(0.0, 1.5e5),
    reference_solids=floats(0.0, 1.0),
    solids_exponent=floats(0.0, 40.0),
    thickens_from=degrees(0, 149),
    thickens_until=degrees(151, 199),
    thickening_factor=floats(1.0, 1e6),
    thickening_rate=floats(1e-9, 10.0),
    source=st.text(st.characters(codec="utf-8"), max_size=12),
)


@pytest.mark.parametrize("system", SYSTEMS)
@settings(deadline=None, max_examples=150)
@given(liquid=liquids, sugar=floats(0.0, 0.05), salt=floats(0.0, 0.01))
def test_any_food_reads_back_as_it_was_written(
    tmp_path_factory: pytest.TempPathFactory,
    system: System,
    liquid: kc.Consistency,
    sugar: float,
    salt: float,
) -> None:
    composition = kc.Composition(water=0.93, carbohydrate=0.05, ash=0.02)
    food = kc.Food(name="any", composition=composition, sugar=sugar, salt=salt, consistency=liquid)
    back(food, tmp_path_factory.getbasetemp(), system)


def resolved(schema: dict[str, Any], node: dict[str, Any]) -> list[dict[str, Any]]:
    """The schemas that a value may follow, references and choices taken apart."""
    if "$ref" in node:
        return resolved(schema, schema["$defs"][node["$ref"].rsplit("/", 1)[1]])
    if "anyOf" in node:
        return [one for part in node["anyOf"] for one in resolved(schema, part)]
    return [node]


def test_the_schema_allows_a_name_or_a_table() -> None:
    schema = kc.recipe_schema()
    food = schema["$defs"]["FoodTable"]["properties"]
    assert {"sugar", "salt", "consistency"} <= set(food)
    kinds = {one["type"]: one for one in resolved(schema, food["consistency"])}
    assert set(kinds) == {"object", "string", "null"}
    assert set(kinds["object"]["properties"]) == set(kc.Consistency().to_dict())
    assert kinds["object"]["properties"]["thickens_from"]["anyOf"][0]["examples"] == ["165 degF"]
    assert set(kinds["string"]["examples"]) <= set(bundled_consistencies())


def test_the_schema_allows_the_words_for_stir_and_jacket() -> None:
    schema = kc.recipe_schema()
    phase = schema["$defs"]["_Phase"]["properties"]
    jacket = {one["type"]: one for one in resolved(schema, phase["jacket"])}
    assert jacket["string"]["enum"] == ["off", "on", "cool"]
    assert jacket["object"]["properties"]["use"]["enum"] == ["heat", "cool"]
    assert "string" in {one["type"] for one in resolved(schema, phase["stir"])}


# A paste passes less heat than water: its film is thinner in no correlation of agitated vessels.
def test_a_thick_food_makes_the_floor_hotter() -> None:
    kettle = kc.read_kettle(demo_path("kettle.toml")).replace(agitator=kc.AgitatorKind.anchor)
    recipe = kc.read_recipe(demo_path("water_boil.toml"))
    phase = recipe.phases[0]
    paste = kc.food("water").replace(name="paste", consistency=consistency("tomato sauce"))
    pour = phase.additions[0].replace(food=paste)
    thick = kc.forecast(kettle, recipe.replace(phases=[phase.replace(additions=[pour])]))
    thin = kc.forecast(kettle, recipe)
    hottest = [one.trace["floor_sensor.reading_C"].max() for one in (thick, thin)]
    assert hottest[0] > hottest[1] + 1.0
