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
    "asparagus": "Asparagus",
    "beet": "Beets",
    "broccoli": "Broccoli",
    "brussels sprout": "Brussels sprouts",
    "cabbage": "Cabbage",
    "carrot": "Carrots",
    "cauliflower": "Cauliflower",
    "celeriac": "Celeriac",
    "celery": "Celery",
    "collard": "Collards",
    "cucumber": "Cucumbers",
    "eggplant": "Eggplant",
    "garlic": "Garlic",
    "green bean": "Beans snap",
    "kale": "Kale",
    "kohlrabi": "Kohlrabi",
    "leek": "Leeks",
    "lima bean": "Beans lima",
    "sweet corn": "Corn sweet yellow",
}
#: Foods without numbers of a handbook or of the USDA.
DEFINED = {"water", "cooking oil", "sugar", "salt"}


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
    if name in DEFINED:
        assert found.source == "definition"
    else:
        assert found.source.startswith(("ASHRAE Handbook Refrigeration", "USDA "))


# Source: USDA National Nutrient Database for Standard Reference 28, table of abbreviated data
@pytest.mark.parametrize(
    ("name", "number", "water", "protein", "fat", "total_carbohydrate", "fibre", "ash"),
    [
        ("black bean", "16014", 11.02, 21.60, 1.42, 62.36, 15.5, 3.60),
        ("brown rice", "20036", 10.37, 7.94, 2.92, 77.24, 3.5, 1.53),
        ("butter", "01001", 15.87, 0.85, 81.11, 0.06, 0.0, 2.11),
        ("cheddar", "01009", 36.75, 24.90, 33.14, 1.28, 0.0, 3.93),
        ("cod", "15015", 81.22, 17.81, 0.67, 0.0, 0.0, 1.16),
        ("corn starch", "20027", 8.32, 0.26, 0.05, 91.27, 0.9, 0.09),
        ("egg", "01123", 76.15, 12.56, 9.51, 0.72, 0.0, 1.06),
        ("lamb", "17230", 66.38, 18.47, 14.42, 0.0, 0.0, 0.97),
        ("pasta", "20120", 9.90, 13.04, 1.51, 74.67, 3.2, 0.88),
        ("sweet potato", "11507", 77.28, 1.57, 0.05, 20.12, 3.0, 0.99),
        ("tomato puree", "11547", 87.88, 1.65, 0.21, 8.98, 1.9, 1.28),
    ],
)
def test_foods_are_as_in_the_national_tables(
    name: str,
    number: str,
    water: float,
    protein: float,
    fat: float,
    total_carbohydrate: float,
    fibre: float,
    ash: float,
) -> None:
    found = food(name)
    percent = [water, protein, fat, total_carbohydrate - fibre, fibre, ash]
    assert parts(found.composition) == pytest.approx([x / 100 for x in percent], abs=1e-9)
    assert f"no. {number}" in found.source


def test_there_are_foods_of_every_kind() -> None:
    kinds = {"carrot", "apple", "beef", "cod", "chicken", "milk", "egg", "rice", "lentil"}
    kinds |= {"wheat flour", "corn starch", "sugar", "salt", "cooking oil", "tomato paste"}
    kinds |= {"stock", "cream", "butter", "cheddar", "pasta"}
    assert kinds <= set(food_names())
    assert len(food_names()) >= 70


def test_names_do_not_depend_on_case_number_or_underscore() -> None:
    assert food("Cooking_Oil") == food("oil") == food("cooking oil")
    assert food("carrots").name == "carrot"
    assert food("spinach_frozen").name == "spinach"
    assert {"water", "onion", "lentil", "beef", "milk", "rice"} <= set(food_names())


def test_an_unknown_food_names_the_nearest() -> None:
    with pytest.raises(UnknownName) as caught:
        food("carot")
    assert str(caught.value) == (
        'food "carot" is not known; nearest: carrot, apricot; '
        'a recipe file can describe it under [foods."carot"]'
    )
    assert isinstance(caught.value, KeyError)


def test_a_name_like_no_other_lists_all() -> None:
    with pytest.raises(
        UnknownName, match='food "xyzzyq" is not known; there are: apple, apple sauce'
    ):
        food("xyzzyq")


def test_own_foods_come_first() -> None:
    own = food("carrot").replace(name="carrot", juice_fraction=0.5)
    assert food("Carrot", {"carrot": own}).juice_fraction == 0.5
    assert food("Carrot").juice_fraction != 0.5


def test_bundled_foods_cannot_be_changed() -> None:
    with pytest.raises(TypeError, match="does not support item assignment"):
        bundled_foods()["water"] = food("oil")  # type: ignore[index]
