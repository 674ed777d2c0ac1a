"""Bundled foods against their table, and foods that a recipe describes."""

import csv
from pathlib import Path

import pytest

from kettlecast import _core
from kettlecast.errors import UnknownName
from kettlecast.foods import bundled_foods, food, food_names

TABLE = (
    Path(__file__).resolve().parents[3]
    / "shared/checks/cases/tables/ashrae_table3_25_vegetables.csv"
)
OURS = {
    "broccoli": "Broccoli",
    "cabbage": "Cabbage",
    "carrot": "Carrots",
    "cauliflower": "Cauliflower",
    "celery": "Celery",
    "garlic": "Garlic",
    "green bean": "Beans snap",
    "kale": "Kale",
    "leek": "Leeks",
    "sweet corn": "Corn sweet yellow",
}


def parts(composition: _core.Composition) -> list[float]:
    names = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
    return [getattr(composition, name) for name in names]


# Source: ASHRAE Handbook Refrigeration, Thermal Properties of Foods, Table 3, carrots: water 87.79,
# protein 1.03, fat 0.19, total carbohydrate 10.14 with fibre 3.00, ash 0.87 %, freezing -1.4 degC
def test_a_carrot_is_as_in_the_handbook() -> None:
    carrot = food("carrot")
    expected = [0.8779, 0.0103, 0.0019, 0.1014 - 0.0300, 0.0300, 0.0087]
    assert parts(carrot.composition) == pytest.approx(expected, abs=1e-9)
    assert carrot.freezing_point == pytest.approx(273.15 - 1.4, abs=1e-9)


@pytest.mark.skipif(not TABLE.exists(), reason="the handbook table is not beside this project")
def test_every_row_from_the_handbook_table_agrees_with_it() -> None:
    text = [line for line in TABLE.read_text().splitlines() if not line.startswith("#")]
    rows = {row["food"]: row for row in csv.DictReader(text)}
    for name, key in OURS.items():
        row = {column: float(value) for column, value in rows[key].items() if column != "food"}
        starch = row["carbohydrate_total"] - row["fibre"]
        order = [row["water_pct"], row["protein"], row["fat"], starch, row["fibre"], row["ash"]]
        found = food(name)
        assert parts(found.composition) == pytest.approx([x / 100 for x in order], abs=1e-9), name
        assert found.freezing_point == pytest.approx(273.15 + row["freezing_point_C"], abs=1e-9)
        assert "from memory" not in found.source


@pytest.mark.parametrize("name", food_names())
def test_every_food_can_be_cooked_and_names_its_source(name: str) -> None:
    found = food(name)
    _core.check(found)
    assert sum(parts(found.composition)) == pytest.approx(1.0, abs=0.02)
    handbook = name in OURS or found.source == "definition"
    assert handbook or "from memory" in found.source


def test_names_do_not_depend_on_case_number_or_underscore() -> None:
    assert food("Cooking_Oil") == food("oil") == food("cooking oil")
    assert food("carrots").name == "carrot"
    assert food("spinach_frozen").name == "spinach"
    assert {"water", "onion", "lentil", "beef", "milk", "rice"} <= set(food_names())


def test_an_unknown_food_names_the_nearest() -> None:
    with pytest.raises(UnknownName) as caught:
        food("carot")
    assert str(caught.value) == (
        'food "carot" is not known; nearest: carrot; '
        'a recipe file can describe it under [foods."carot"]'
    )
    assert isinstance(caught.value, KeyError)


def test_a_name_like_no_other_lists_all() -> None:
    with pytest.raises(UnknownName, match='food "xyzzyq" is not known; there are: beef, broccoli'):
        food("xyzzyq")


def test_own_foods_come_first() -> None:
    own = food("carrot").replace(name="carrot", juice_fraction=0.5)
    assert food("Carrot", {"carrot": own}).juice_fraction == 0.5
    assert food("Carrot").juice_fraction != 0.5


def test_bundled_foods_cannot_be_changed() -> None:
    with pytest.raises(TypeError, match="does not support item assignment"):
        bundled_foods()["water"] = food("oil")  # type: ignore[index]
